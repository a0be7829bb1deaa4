/**
 * From prices to a plan that keeps within each session's seconds.
 *
 * 1. Card by card, the best course at prices that follow the load, played through exactly.
 * 2. Repair: where a session is still overfull, what gives up least value per second is moved or dropped.
 * 3. Filling up: what gains most per second and fits is taken in, until nothing does.
 */
import { Columns, choicesOf } from './columns.ts';
import type { CardPlan, Choosing } from './course.ts';
import type { Costs, Dual } from './dual.ts';
import type { Draft } from './draft.ts';
import { pricesUnderLoad, putOn, takeOff, type Block, type Watch } from './prices.ts';
import type { Prospects } from './prospects.ts';
import { NEVER } from './value-table.ts';

const PASSES = 2;
const ROUNDS = 6;
/** Relief counts for something in a session that costs nothing, too. */
const LEAST_PRICE = 1e-12;
/** How stiffly prices follow the load of single cards. Which is best differs from task to task; few cards leave time to try several. */
export const stiffnessesFor = (cards: number): readonly number[] => (cards > 500 ? [0.3] : [0.3, 0.1, 1]);

export class Assigner {
  readonly #dual: Dual;
  readonly #columns: Columns;
  readonly #draft: Draft;
  readonly #prices: Float64Array;
  readonly #blocks: readonly Block[];
  readonly #stiffness: number;
  /** How each card goes on after its first rehearsal. */
  readonly #next: Choosing['next'][] = [];

  constructor(
    dual: Dual,
    prospects: Prospects,
    costs: Costs,
    draft: Draft,
    { prices, blocks }: { readonly prices: Float64Array; readonly blocks: readonly Block[] },
    stiffness: number,
  ) {
    this.#dual = dual;
    this.#columns = new Columns(dual, prospects, costs);
    this.#draft = draft;
    this.#prices = prices;
    this.#blocks = blocks;
    this.#stiffness = stiffness;
  }

  run(watch: Watch): void {
    for (let pass = 0; pass < PASSES; pass++) this.#assign(pass === 0);
    for (let round = 0; round < ROUNDS; round++) {
      if (!this.#draft.isFeasible()) this.#relieve(round);
      if (watch.shouldStop?.()) break;
      if (!this.#fillUp()) break;
    }
    if (!this.#draft.isFeasible()) this.#relieve(ROUNDS);
  }

  #assign(isFirst: boolean): void {
    const draft = this.#draft;
    // At first the blocks' loads stand for the cards that haven't had their turn.
    if (isFirst) for (const block of this.#blocks) putOn(draft.load, block.usedSeconds);
    for (const block of this.#blocks) {
      const prices = pricesUnderLoad(this.#prices, draft.load, draft.room);
      if (isFirst) takeOff(draft.load, block.usedSeconds);
      this.#dual.ofClass(block.costClass, [], prices, new Float64Array(prices.length));
      this.#columns.estimate(block.cards);
      const next = choicesOf(this.#dual.table);
      for (const card of block.cards) {
        this.#next[card] = next;
        const now = pricesUnderLoad(this.#prices, draft.load, draft.room, this.#stiffness);
        draft.set(card, this.#planFor(card, this.#bestFirst(card, now)));
      }
    }
  }

  #bestFirst(card: number, prices: Float64Array): number {
    let best = NEVER;
    let most = this.#columns.net(card, NEVER, prices);
    for (let first = 0; first < prices.length; first++) {
      const net = this.#columns.net(card, first, prices);
      if (net > most) {
        most = net;
        best = first;
      }
    }
    return best;
  }

  #planFor(card: number, first: number): CardPlan {
    return this.#draft.planFor(card, { first, next: this.#next[card]! });
  }

  /** Value less the price of the seconds. */
  #net(card: number, plan: CardPlan): number {
    let net = this.#draft.worth(card, plan);
    for (let k = 0; k < this.#prices.length; k++) net -= this.#prices[k]! * plan.usedSeconds[k]!;
    return net;
  }

  /** Makes the draft feasible; each card has the plan of never being rehearsed to fall back on. */
  #relieve(round: number): void {
    const draft = this.#draft;
    const moves: { card: number; plan: CardPlan; loss: number }[] = [];
    draft.plans.forEach((now, card) => {
      if (!now.usedSeconds.some((seconds, k) => seconds > 0 && draft.isOverfull(k))) return;
      for (const plan of this.#alternatives(card, round)) {
        const relief = now.usedSeconds.reduce(
          (sum, seconds, k) =>
            sum +
            (draft.isOverfull(k) ? (this.#prices[k]! + LEAST_PRICE) * (seconds - plan.usedSeconds[k]!) : 0),
          0,
        );
        if (relief <= 0) continue;
        const loss = (this.#net(card, now) - this.#net(card, plan)) / relief;
        moves.push({ card, plan, loss });
      }
    });
    moves.sort((one, other) => one.loss - other.loss);
    for (const { card, plan } of moves) {
      const now = draft.plans[card]!;
      const helps = now.usedSeconds.some(
        (seconds, k) => seconds > plan.usedSeconds[k]! && draft.isOverfull(k),
      );
      if (helps && draft.fits(card, plan)) draft.set(card, plan);
    }
  }

  /** Other plans for a card: the best other first sessions, its own without the overfull ones, none at all. */
  #alternatives(card: number, round: number): CardPlan[] {
    const draft = this.#draft;
    const { course } = draft.plans[card]!;
    const next = this.#next[card]!;
    const allowed = (session: number): number =>
      session !== NEVER && draft.isOverfull(session) ? NEVER : session;
    const firsts = [...draft.room.keys()]
      .filter((first) => !draft.isOverfull(first))
      .map((first) => ({ first, net: this.#columns.net(card, first, this.#prices) }))
      .sort((one, other) => other.net - one.net)
      .slice(0, 2 + round);
    const plans = firsts.map(({ first }) => this.#planFor(card, first));
    for (const first of [course?.session ?? NEVER, ...firsts.map((option) => option.first)])
      plans.push(
        draft.planFor(card, {
          first: allowed(first),
          next: (session, memory) => allowed(next(session, memory)),
        }),
      );
    plans.push(draft.planFor(card, { first: NEVER, next }));
    return plans;
  }

  /** Takes in what fits; false when nothing did. */
  #fillUp(): boolean {
    const draft = this.#draft;
    const spare = draft.room.map((seconds, k) => seconds - draft.load[k]!);
    const prices = pricesUnderLoad(this.#prices, draft.load, draft.room, this.#stiffness);
    const wishes: { card: number; first: number; gain: number }[] = [];
    draft.plans.forEach((now, card) => {
      const worth = draft.worth(card, now);
      for (let first = 0; first < spare.length; first++) {
        const at = card * spare.length + first;
        const value = this.#columns.values[at]!;
        if (value <= worth) continue;
        let cost = 0;
        let fits = true;
        for (let k = 0; k < spare.length && fits; k++) {
          const more = this.#columns.seconds[at * spare.length + k]! - now.usedSeconds[k]!;
          cost += prices[k]! * more;
          // Estimates are a little off; what fits is decided exactly, below.
          fits = more <= spare[k]! * 1.05;
        }
        if (fits) wishes.push({ card, first, gain: (value - worth) / Math.max(cost, 1e-12) });
      }
    });
    wishes.sort((one, other) => other.gain - one.gain);
    let taken = false;
    for (const { card, first } of wishes) {
      if ((draft.plans[card]!.course?.session ?? NEVER) === first) continue;
      const plan = this.#planFor(card, first);
      if (draft.worth(card, plan) <= draft.worth(card) || !draft.fits(card, plan)) continue;
      draft.set(card, plan);
      taken = true;
    }
    return taken;
  }
}
