/**
 * The order within a session: neighbours differ in group and in kind wherever they can, so that each
 * answer has to be fetched and not carried over from the card before. Rehearsals may go anywhere; new
 * cards keep the procedure's order among themselves, and are spread between the rehearsals.
 *
 * A clash is a pair of neighbours of one group or of one kind; of both, two. To find an order with the
 * fewest is a search: depth first, at each place the card with the best outlook, cut off by a bound
 * on the clashes still to come, until the bound of the whole is reached or the steps are used up.
 * The first descent is already a good order, so the steps limit only how long is spent on
 * perfecting it. All of it is deterministic.
 */

export interface Placed {
  readonly group: string;
  readonly kind: string;
}

/** Enough to be exact for up to seven cards, a few milliseconds for a hundred. */
const MOST_STEPS = 3_000;

/** Clashes between neighbours in an order. */
export function clashes(order: readonly Placed[]): number {
  let count = 0;
  for (let i = 1; i < order.length; i++) count += clash(order[i - 1]!, order[i]!);
  return count;
}

/** Fewer clashes than this are impossible, in whatever order. */
export function fewestClashes(cards: readonly Placed[]): number {
  const groups = new Tally(cards.map((card) => card.group));
  const kinds = new Tally(cards.map((card) => card.kind));
  return groups.fewestMeetings(null) + kinds.fewestMeetings(null);
}

/**
 * @param rehearsals in the order in which they are wanted when nothing else decides
 * @param fresh new cards, in the order in which they must stay
 */
export function interleaved<T extends Placed>(rehearsals: readonly T[], fresh: readonly T[]): T[] {
  return new Search(rehearsals, fresh).best();
}

class Search<T extends Placed> {
  readonly #groups: Tally;
  readonly #kinds: Tally;
  /** Rehearsals that are alike: which of them comes first makes no difference to clashes. */
  readonly #alike: T[][];
  readonly #taken: number[];
  readonly #rehearsals: readonly T[];
  readonly #fresh: readonly T[];
  #freshTaken = 0;
  readonly #rank: ReadonlyMap<T, number>;
  readonly #order: T[] = [];
  #best: readonly T[] = [];
  #bestClashes = Infinity;
  #steps = 0;
  readonly #bound: number;

  constructor(rehearsals: readonly T[], fresh: readonly T[]) {
    const all = [...rehearsals, ...fresh];
    this.#groups = new Tally(all.map((card) => card.group));
    this.#kinds = new Tally(all.map((card) => card.kind));
    const alike = new Map<string, T[]>();
    for (const card of rehearsals) {
      const key = JSON.stringify([card.group, card.kind]);
      const others = alike.get(key);
      if (others) others.push(card);
      else alike.set(key, [card]);
    }
    this.#alike = [...alike.values()];
    this.#taken = this.#alike.map(() => 0);
    this.#rehearsals = rehearsals;
    this.#fresh = fresh;
    this.#rank = new Map(rehearsals.map((card, rank) => [card, rank]));
    this.#bound = fewestClashes(all);
  }

  best(): T[] {
    this.#descend(0);
    return [...this.#best];
  }

  #descend(soFar: number): void {
    if (this.#order.length === this.#rehearsals.length + this.#fresh.length) {
      if (soFar < this.#bestClashes) {
        this.#best = [...this.#order];
        this.#bestClashes = soFar;
      }
      return;
    }
    const before = this.#order[this.#order.length - 1];
    for (const { card, from, outlook } of this.#candidates(before, soFar)) {
      // The first descent always goes through: there is an order whatever happens.
      const done = this.#bestClashes === this.#bound || this.#steps >= MOST_STEPS;
      if (outlook >= this.#bestClashes || (done && this.#best.length > 0)) return;
      this.#steps += 1;
      this.#take(card, from, 1);
      this.#descend(soFar + (before ? clash(before, card) : 0));
      this.#take(card, from, -1);
    }
  }

  /** What may come next, best outlook first; among equals, new cards when they lag behind, then rehearsals as wanted. */
  #candidates(before: T | undefined, soFar: number): { card: T; from: number; outlook: number }[] {
    const found: { card: T; from: number; outlook: number; rank: number }[] = [];
    const consider = (card: T, from: number, rank: number): void => {
      this.#take(card, from, 1);
      const toCome = this.#groups.fewestMeetings(card.group) + this.#kinds.fewestMeetings(card.kind);
      this.#take(card, from, -1);
      found.push({ card, from, rank, outlook: soFar + (before ? clash(before, card) : 0) + toCome });
    };
    this.#alike.forEach((cards, from) => {
      const card = cards[this.#taken[from]!];
      if (card !== undefined) consider(card, from, this.#rank.get(card)!);
    });
    const fresh = this.#fresh[this.#freshTaken];
    if (fresh !== undefined) consider(fresh, FRESH, this.#freshLags() ? -1 : Infinity);
    return found.sort((one, other) => one.outlook - other.outlook || one.rank - other.rank);
  }

  /** Whether a smaller share of the new cards than of the rehearsals has been placed. */
  #freshLags(): boolean {
    const rehearsalsTaken = this.#order.length - this.#freshTaken;
    return this.#freshTaken * this.#rehearsals.length < rehearsalsTaken * this.#fresh.length;
  }

  #take(card: T, from: number, sign: 1 | -1): void {
    if (from === FRESH) this.#freshTaken += sign;
    else this.#taken[from]! += sign;
    this.#groups.change(card.group, -sign);
    this.#kinds.change(card.kind, -sign);
    if (sign === 1) this.#order.push(card);
    else this.#order.pop();
  }
}

const FRESH = -1;

const clash = (one: Placed, other: Placed): number =>
  Number(one.group === other.group) + Number(one.kind === other.kind);

/** How many cards of each sort are left to place. */
class Tally {
  readonly #left = new Map<string, number>();
  #total = 0;

  constructor(sorts: readonly string[]) {
    for (const sort of sorts) this.change(sort, 1);
  }

  change(sort: string, by: number): void {
    this.#left.set(sort, (this.#left.get(sort) ?? 0) + by);
    this.#total += by;
  }

  /**
   * Neighbours of one sort that the rest can't do without, after a card of sort `before`. The others of
   * a sort's n cards each part two of them, and one more stands free at the start, unless after
   * its own sort. At most one sort can be in such a majority.
   */
  fewestMeetings(before: string | null): number {
    let fewest = 0;
    for (const [sort, count] of this.#left)
      fewest = Math.max(fewest, count - (this.#total - count) - (sort === before ? 0 : 1));
    return fewest;
  }
}
