/**
 * The best that can be made of one card at given prices, from each state of the grid and session in
 * which it was last rehearsed: backward induction over "in which session next, or not again".
 *
 *   V(k, s, d) = max( R(event), max over later sessions m of
 *                     R V(m, after a recall) + (1 - R) V(m, after a miss) - price(m) showings(R) )
 *
 * with R the chance of recall then. All per unit of weight; one table serves all cards whose seconds
 * and weight are in the same ratio.
 *
 * With optimistic transitions each value is at least the true one of every state it stands for: by induction
 * from the last session, R at its highest of these states (it rises with stability), and the
 * expression linear in R, so that its greatest value is at R or at 0.
 */
import { expectedShowings } from '../../memory/worth.ts';
import type { Scheduler } from '../../memory/types.ts';
import { chancesOnGrid, type Sittings } from './sittings.ts';
import type { Transitions } from './transitions.ts';

/** In place of a session: not again. */
export const NEVER = 255;

export class ValueTable {
  readonly transitions: Transitions;
  /** By session of the last rehearsal, by state. */
  readonly values: readonly Float64Array[];
  /** In which session next, for the values. */
  readonly choices: readonly Uint8Array[];
  readonly sittings: Sittings;
  /** By session: chance at the event when last rehearsed then, by stability. */
  readonly #atEvent: readonly Float64Array[];
  /** By session and earlier session: chance of recall by stability. */
  readonly #chances: readonly (readonly Float64Array[])[];

  constructor(transitions: Transitions, scheduler: Scheduler, sittings: Sittings) {
    const { grid } = transitions;
    const { atMs, eventMs } = sittings;
    this.transitions = transitions;
    this.sittings = sittings;
    this.values = atMs.map(() => new Float64Array(grid.size));
    this.choices = atMs.map(() => new Uint8Array(grid.size).fill(NEVER));
    this.#atEvent = atMs.map((lastMs) => chancesOnGrid(scheduler, grid, lastMs, eventMs));
    this.#chances = atMs.map((laterMs, later) =>
      atMs.slice(0, later).map((lastMs) => chancesOnGrid(scheduler, grid, lastMs, laterMs)),
    );
  }

  /** Chance of recall in a session, last rehearsed in an earlier one, by stability of the grid. */
  chances(earlier: number, later: number): Float64Array {
    return this.#chances[later]![earlier]!;
  }

  /** @param prices of one showing, by session */
  fill(prices: Float64Array): void {
    const { count } = this.sittings;
    for (let last = count - 1; last >= 0; last--) {
      this.#fillWithNever(last);
      for (let next = last + 1; next < count; next++) this.#considerNext(last, next, prices[next]!);
    }
  }

  #fillWithNever(last: number): void {
    const values = this.values[last]!;
    const atEvent = this.#atEvent[last]!;
    for (let from = 0; from < values.length; from += atEvent.length) values.set(atEvent, from);
    this.choices[last]!.fill(NEVER);
  }

  #considerNext(last: number, next: number, price: number): void {
    const { transitions, sittings } = this;
    const gap = sittings.gapBetween(last, next);
    const recalled = transitions.recalled[gap]!;
    const relearned = transitions.relearned[gap]!;
    const chances = this.#chances[next]![last]!;
    const later = this.values[next]!;
    const values = this.values[last]!;
    const choices = this.choices[last]!;
    const optimistic = transitions.rounding === 'optimistic';
    const missedCost = price * expectedShowings(0);
    const recalledCost = price * expectedShowings(1);
    const width = chances.length;
    for (let row = 0; row < values.length; row += width)
      for (let i = 0; i < width; i++) {
        const node = row + i;
        const chance = chances[i]!;
        const afterMiss = later[relearned[node]!]! - missedCost;
        let value = chance * (later[recalled[node]!]! - recalledCost) + (1 - chance) * afterMiss;
        if (optimistic && afterMiss > value) value = afterMiss;
        if (value > values[node]!) {
          values[node] = value;
          choices[node] = next;
        }
      }
  }
}
