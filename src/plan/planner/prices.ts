/**
 * Prices of a second in each session, close to where the bound is lowest, and what the cards would do.
 *
 * First one price for all sessions, by halving. Then block by block (Gauss-Seidel on the augmented
 * Lagrangian, see Bertsekas, Constrained Optimization and Lagrange Multiplier Methods, 1982, from
 * memory): a block of like cards is planned anew at prices that are raised where a session is more than full
 * and lowered where it isn't, and its seconds are taken over before the next block's turn. All
 * cards at once would flock to the session that is cheapest by a hair: two evenings in succession are
 * nearly as good as each other.
 */
import type { CostClass, Costs, Dual } from './dual.ts';

/** Like cards that are planned together. */
export interface Block {
  readonly costClass: CostClass;
  readonly cards: readonly number[];
  /** Expected seconds by session. */
  readonly usedSeconds: Float64Array;
}

export interface Watch {
  /** How much is done, 0 to 1. */
  onProgress?(done: number): void;
  /** Asked now and then; true ends the search with what there is by then. */
  shouldStop?(): boolean;
}

const HALVINGS = 14;
/** Fewer cards make rougher steps, and have time for more of them. */
const passesFor = (cards: number, sessions: number): number => (cards > 500 ? 8 : sessions > 20 ? 16 : 28);
const MOST_BLOCKS = 72;
/** How much dearer a session is that is filled twice over, as a power of e. */
const STIFFNESS = 0.1;

/** Raised where there is more load than room, at most threefold load counts. */
export function pricesUnderLoad(
  prices: Float64Array,
  load: Float64Array,
  room: Float64Array,
  stiffness = STIFFNESS,
): Float64Array {
  return prices.map((price, k) => price * Math.exp(stiffness * excess(load[k]!, room[k]!)));
}

const excess = (load: number, room: number): number => Math.max(-2, Math.min(2, load / room - 1));
const sum = (numbers: Float64Array): number => numbers.reduce((one, other) => one + other, 0);

/** @param room seconds there are, by session, each above 0 */
export function findPrices(
  dual: Dual,
  costs: Costs,
  room: Float64Array,
  watch: Watch,
): { readonly prices: Float64Array; readonly blocks: readonly Block[] } {
  const free = dual.at(new Float64Array(room.length));
  let prices = free.prices;
  const blocks = blocksOf(costs, room);
  if (free.usedSeconds.every((used, k) => used <= room[k]!)) return { prices, blocks };
  prices = evenPrices(dual, room, costs);
  let best = dual.at(prices);
  const load = room.slice();
  const passes = passesFor(costs.weights.length, room.length);
  for (let pass = 0; pass < passes; pass++) {
    for (const block of blocks) {
      if (watch.shouldStop?.()) return { prices: best.prices, blocks };
      takeOff(load, block.usedSeconds);
      block.usedSeconds.fill(0);
      dual.ofClass(block.costClass, block.cards, pricesUnderLoad(prices, load, room), block.usedSeconds);
      putOn(load, block.usedSeconds);
    }
    const overall = (sum(load) / sum(room)) ** 0.7;
    prices = pricesUnderLoad(prices, load, room, STIFFNESS / 2).map((price) => price * overall);
    const point = dual.at(prices);
    if (point.value < best.value) best = point;
    watch.onProgress?.((pass + 1) / passes);
  }
  return { prices: best.prices, blocks };
}

/** One price for all sessions, at which about as many seconds are used as there are. */
function evenPrices(dual: Dual, room: Float64Array, costs: Costs): Float64Array {
  const even = (price: number): Float64Array => new Float64Array(room.length).fill(price);
  // No card is worth more than its weight for one showing.
  let dear = costs.weights.reduce((most, weight, c) => Math.max(most, weight / costs.seconds[c]!), 0);
  let cheap = dear * 1e-6;
  for (let i = 0; i < HALVINGS; i++) {
    const price = Math.sqrt(cheap * dear);
    if (sum(dual.at(even(price)).usedSeconds) > sum(room)) cheap = price;
    else dear = price;
  }
  return even(dear);
}

/** Blocks of about equal size, those of a class spread over the whole; each begins with its share of the room. */
function blocksOf({ classes, weights }: Costs, room: Float64Array): Block[] {
  const size = Math.ceil(weights.length / MOST_BLOCKS);
  const found: { readonly block: Block; readonly place: number }[] = [];
  for (const costClass of classes) {
    const count = Math.ceil(costClass.cards.length / size);
    for (let part = 0; part < count; part++) {
      const cards = costClass.cards.filter((_, i) => i % count === part);
      const usedSeconds = room.map((seconds) => (seconds * cards.length) / weights.length);
      found.push({ block: { costClass, cards, usedSeconds }, place: (part + 0.5) / count });
    }
  }
  return found.sort((one, other) => one.place - other.place).map(({ block }) => block);
}

export function takeOff(load: Float64Array, used: Float64Array): void {
  for (let k = 0; k < load.length; k++) load[k]! -= used[k]!;
}

export function putOn(load: Float64Array, used: Float64Array): void {
  for (let k = 0; k < load.length; k++) load[k]! += used[k]!;
}
