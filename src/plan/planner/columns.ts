/**
 * What becomes of a card for each session in which it may come first, when it then goes on by the choices
 * of a table: estimates on the grid, cheap enough to have them for every card and session.
 */
import { expectedShowings } from '../../memory/worth.ts';
import type { CardMemory } from '../../memory/types.ts';
import type { Costs, Dual } from './dual.ts';
import type { Prospects } from './prospects.ts';
import { NEVER, type ValueTable } from './value-table.ts';

export class Columns {
  /** Weighted chance at the event, by card and first session. */
  readonly values: Float64Array;
  /** Seconds, by card, first session and session. */
  readonly seconds: Float32Array;
  readonly #dual: Dual;
  readonly #prospects: Prospects;
  readonly #costs: Costs;
  /** By session and state: chance at the event; then showings to come by session. */
  readonly #chances: readonly Float64Array[];
  readonly #showings: readonly Float64Array[];

  constructor(dual: Dual, prospects: Prospects, costs: Costs) {
    const { cards, sessions } = prospects;
    this.values = new Float64Array(cards * sessions);
    this.seconds = new Float32Array(cards * sessions * sessions);
    this.#dual = dual;
    this.#prospects = prospects;
    this.#costs = costs;
    this.#chances = dual.table.values.map((values) => new Float64Array(values.length));
    this.#showings = dual.table.values.map((values) => new Float64Array(values.length * sessions));
  }

  /** Estimates for some cards by the choices that the table holds now. */
  estimate(cards: readonly number[]): void {
    const { table } = this.#dual;
    for (let last = this.#prospects.sessions - 1; last >= 0; last--) this.#followChoices(table, last);
    for (const card of cards)
      for (let first = 0; first < this.#prospects.sessions; first++) this.#estimateOne(card, first);
  }

  /** Value of a card that comes first in a session, or `NEVER`, less the price of its seconds. */
  net(card: number, first: number, prices: Float64Array): number {
    if (first === NEVER) return this.#costs.weights[card]! * this.#prospects.untouched[card]!;
    const { sessions } = this.#prospects;
    const at = card * sessions + first;
    let net = this.values[at]!;
    for (let k = first; k < sessions; k++) net -= prices[k]! * this.seconds[at * sessions + k]!;
    return net;
  }

  #followChoices(table: ValueTable, last: number): void {
    const { sessions } = this.#prospects;
    const { recalled, relearned, grid } = table.transitions;
    const width = grid.stabilities.length;
    const choices = table.choices[last]!;
    const chances = this.#chances[last]!;
    const showings = this.#showings[last]!;
    showings.fill(0);
    for (let node = 0; node < choices.length; node++) {
      const next = choices[node]!;
      if (next === NEVER) {
        chances[node] = table.values[last]![node]!;
        continue;
      }
      const gap = table.sittings.gapBetween(last, next);
      const recall = table.chances(last, next)[node % width]!;
      const afterRecall = recalled[gap]![node]!;
      const afterMiss = relearned[gap]![node]!;
      chances[node] =
        recall * this.#chances[next]![afterRecall]! + (1 - recall) * this.#chances[next]![afterMiss]!;
      const later = this.#showings[next]!;
      showings[node * sessions + next] = expectedShowings(recall);
      for (let k = next + 1; k < sessions; k++)
        showings[node * sessions + k] =
          recall * later[afterRecall * sessions + k]! + (1 - recall) * later[afterMiss * sessions + k]!;
    }
  }

  #estimateOne(card: number, first: number): void {
    const { sessions, chance, showings } = this.#prospects;
    const at = card * sessions + first;
    const recall = chance[at]!;
    const afterRecall = this.#dual.recalledNode[at]!;
    const afterMiss = this.#dual.relearnedNode[at]!;
    const chances = this.#chances[first]!;
    const later = this.#showings[first]!;
    this.values[at] =
      this.#costs.weights[card]! * (recall * chances[afterRecall]! + (1 - recall) * chances[afterMiss]!);
    const seconds = this.#costs.seconds[card]!;
    this.seconds[at * sessions + first] = seconds * showings[at]!;
    for (let k = first + 1; k < sessions; k++)
      this.seconds[at * sessions + k] =
        seconds *
        (recall * later[afterRecall * sessions + k]! + (1 - recall) * later[afterMiss * sessions + k]!);
  }
}

/** The choices of a table as they are now, as a rule for cards with any memory. */
export function choicesOf(table: ValueTable): (session: number, memory: CardMemory) => number {
  const choices = table.choices.map((row) => row.slice());
  const { nodeOf } = table.transitions;
  return (session, { stability, difficulty }) => choices[session]![nodeOf(stability, difficulty)]!;
}
