/**
 * The bound on every plan. Put a price on the seconds of each session, take away the limits on them,
 * and each card can be planned by itself; what the limits are worth at these prices comes on top:
 *
 *   D(prices) = sum over cards of max over its policies of ( weight * chance at the event - price of its seconds )
 *             + sum over sessions of price * seconds there are
 *
 * For prices of 0 or more, a plan within its limits has value <= value + sum price (seconds there
 * are - seconds used) <= D (Lagrange; weak duality). A policy says for every course of the answers in
 * which session the card is rehearsed next; so D bounds all plans that may react to answers, and with
 * them those that fix sessions in advance. The maximum over policies is read from a table of
 * values; with optimistic transitions it is at least the true one, and so D stays a bound.
 */
import { expectedShowings } from '../../memory/worth.ts';
import type { Prospects } from './prospects.ts';
import { NEVER, type ValueTable } from './value-table.ts';

export interface DualPoint {
  readonly prices: Float64Array;
  /** D(prices), in units of weight. */
  readonly value: number;
  /** Expected seconds by session of the policies that attain it; the slope of D is seconds there are minus these. */
  readonly usedSeconds: Float64Array;
}

/** Cards whose seconds per unit of weight are the same, or nearly. */
export interface CostClass {
  /** The least seconds per unit of weight among them. */
  readonly secondsPerWeight: number;
  /** Their places in the list of cards. */
  readonly cards: readonly number[];
}

export interface Costs {
  readonly seconds: Float64Array;
  readonly weights: Float64Array;
  readonly classes: readonly CostClass[];
}

export class Dual {
  readonly table: ValueTable;
  readonly #prospects: Prospects;
  readonly #costs: Costs;
  readonly #secondsThere: Float64Array;
  /** Places on the table after the first rehearsal, numbered like the prospects. */
  readonly recalledNode: Int32Array;
  readonly relearnedNode: Int32Array;
  /** Chance by session and state that a card is there, over the cards of one class, in units of their seconds. */
  readonly #mass: readonly Float64Array[];

  constructor(table: ValueTable, prospects: Prospects, costs: Costs, secondsThere: Float64Array) {
    this.table = table;
    this.#prospects = prospects;
    this.#costs = costs;
    this.#secondsThere = secondsThere;
    const { nodeOf } = table.transitions;
    this.recalledNode = Int32Array.from(prospects.recalledStability, (stability, at) =>
      nodeOf(stability, prospects.recalledDifficulty[at]!),
    );
    this.relearnedNode = Int32Array.from(prospects.relearnedStability, (stability, at) =>
      nodeOf(stability, prospects.relearnedDifficulty[at]!),
    );
    this.#mass = table.values.map((values) => new Float64Array(values.length));
  }

  /** D at some prices of a second, by session, each 0 or more. */
  at(prices: Float64Array): DualPoint {
    const usedSeconds = new Float64Array(prices.length);
    let value = 0;
    prices.forEach((price, k) => (value += price * this.#secondsThere[k]!));
    for (const costClass of this.#costs.classes)
      value += this.ofClass(costClass, costClass.cards, prices, usedSeconds);
    return { prices, value, usedSeconds };
  }

  /**
   * The part of D that belongs to some cards of a class; fills the table for it.
   * @param usedSeconds gets the expected seconds of these cards added, by session
   */
  ofClass(
    { secondsPerWeight }: CostClass,
    cards: readonly number[],
    prices: Float64Array,
    usedSeconds: Float64Array,
  ): number {
    this.table.fill(prices.map((price) => price * secondsPerWeight));
    let value = 0;
    for (const card of cards) {
      const { gain, first } = this.#best(card, prices);
      value += gain;
      if (first !== NEVER) this.#use(card, first, usedSeconds);
    }
    this.#passOn(usedSeconds);
    return value;
  }

  /** What a card is worth at the prices for which the table was filled, and in which session it comes first. */
  #best(card: number, prices: Float64Array): { readonly gain: number; readonly first: number } {
    const { sessions, untouched, chance, showings } = this.#prospects;
    const weight = this.#costs.weights[card]!;
    const seconds = this.#costs.seconds[card]!;
    let gain = weight * untouched[card]!;
    let first = NEVER;
    for (let k = 0, at = card * sessions; k < sessions; k++, at++) {
      const values = this.table.values[k]!;
      const recall = chance[at]!;
      const after =
        recall * values[this.recalledNode[at]!]! + (1 - recall) * values[this.relearnedNode[at]!]!;
      const net = weight * after - prices[k]! * seconds * showings[at]!;
      if (net > gain) {
        gain = net;
        first = k;
      }
    }
    return { gain, first };
  }

  #use(card: number, first: number, usedSeconds: Float64Array): void {
    const at = card * this.#prospects.sessions + first;
    const seconds = this.#costs.seconds[card]!;
    const recall = this.#prospects.chance[at]!;
    usedSeconds[first]! += seconds * this.#prospects.showings[at]!;
    this.#mass[first]![this.recalledNode[at]!]! += seconds * recall;
    this.#mass[first]![this.relearnedNode[at]!]! += seconds * (1 - recall);
  }

  /** Follows the choices of the table from where the cards are, adds up the seconds, and clears the mass. */
  #passOn(usedSeconds: Float64Array): void {
    const { choices, transitions, sittings } = this.table;
    const width = transitions.grid.stabilities.length;
    this.#mass.forEach((masses, last) => {
      for (let node = 0; node < masses.length; node++) {
        const mass = masses[node]!;
        if (mass === 0) continue;
        masses[node] = 0;
        const next = choices[last]![node]!;
        if (next === NEVER) continue;
        const gap = sittings.gapBetween(last, next);
        const recall = this.table.chances(last, next)[node % width]!;
        usedSeconds[next]! += mass * expectedShowings(recall);
        this.#mass[next]![transitions.recalled[gap]![node]!]! += mass * recall;
        this.#mass[next]![transitions.relearned[gap]![node]!]! += mass * (1 - recall);
      }
    });
  }
}
