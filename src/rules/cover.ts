/**
 * What of a block others leave uncovered: the one question behind gaps, conflicts, masked rules and
 * regions. Exact, by divide and conquer: blocks that cut the cell along one input only are taken off at
 * once, the cell that remains is halved where the fewest blocks are cut, and so on (the idea of
 * "simplify, and cut" in T. M. Chan, Klee's measure problem made easy, FOCS 2013).
 */
import type { Block, Space } from './space.ts';

/** Work that may be done, in words of blocks looked at; shared by all questions of one analysis. */
export interface Budget {
  left: number;
}

export interface Uncovered {
  /** Disjoint. */
  readonly blocks: readonly Block[];
  /** `limit`: as many blocks as asked for, maybe not all. `budget`: the work allowed was done. */
  readonly stopped: 'limit' | 'budget' | null;
}

/**
 * The states of `start` that none of `covers` holds, as disjoint blocks.
 * @param most how many blocks at most; 1 asks only whether there are any.
 */
export function uncovered(
  space: Space,
  start: Block,
  covers: readonly Block[],
  most: number,
  budget: Budget,
): Uncovered {
  const search = new Search(space, most, budget);
  search.walk(start.slice(), covers);
  return { blocks: search.found, stopped: search.stopped };
}

/** How a block lies to a cell. */
const apart = -1;
const covering = 0;

class Search {
  readonly found: Block[] = [];
  stopped: Uncovered['stopped'] = null;
  readonly #space: Space;
  readonly #most: number;
  readonly #budget: Budget;
  /** Of the block looked at last: the axis along which it cuts the cell. */
  #cutAxis = 0;

  constructor(space: Space, most: number, budget: Budget) {
    this.#space = space;
    this.#most = most;
    this.#budget = budget;
  }

  /** `cell` is this call's own and is changed. */
  walk(cell: Block, covers: readonly Block[]): void {
    const cutting = this.#simplify(cell, covers);
    if (cutting === null || this.stopped !== null) return;
    if (cutting.length === 0) {
      this.found.push(cell);
      if (this.found.length === this.#most) this.stopped = 'limit';
      return;
    }
    const { axis, atom } = this.#bestCut(cell, cutting);
    const [low, high] = this.#halves(cell, axis, atom);
    this.walk(low, cutting);
    this.walk(high, cutting);
  }

  /**
   * Takes off the cell what blocks cover that cut it along one axis only, until none does.
   * @returns the blocks left that cut the cell; null when it is covered.
   */
  #simplify(cell: Block, covers: readonly Block[]): Block[] | null {
    let left: readonly Block[] = covers;
    for (;;) {
      const still: Block[] = [];
      let shrunk = false;
      this.#budget.left -= left.length * this.#space.words;
      if (this.#budget.left < 0) {
        this.stopped = 'budget';
        return null;
      }
      for (const block of left) {
        const cuts = this.#cuts(cell, block);
        if (cuts === apart) continue;
        if (cuts === covering) return null;
        if (cuts > 1) {
          still.push(block);
          continue;
        }
        const { firstWord, words } = this.#space.axes[this.#cutAxis]!;
        for (let w = firstWord; w < firstWord + words; w++) cell[w]! &= ~block[w]!;
        shrunk = true;
      }
      if (!shrunk) return still;
      left = still;
    }
  }

  /** Number of axes along which the block holds only a part of the cell; `apart` when they don't meet. */
  #cuts(cell: Block, block: Block): number {
    const { axes } = this.#space;
    let cuts = 0;
    for (let a = 0; a < axes.length; a++) {
      const { firstWord, words } = axes[a]!;
      let inside = 0;
      let outside = 0;
      for (let w = firstWord; w < firstWord + words; w++) {
        inside |= cell[w]! & block[w]!;
        outside |= cell[w]! & ~block[w]!;
      }
      if (inside === 0) return apart;
      if (outside !== 0) {
        cuts++;
        this.#cutAxis = a;
      }
    }
    return cuts;
  }

  /** The axis and the atom up to which a half reaches, so that the fuller half has the fewest blocks. */
  #bestCut(cell: Block, cutting: readonly Block[]): { axis: number; atom: number } {
    let best = { axis: 0, atom: 0, most: Infinity, sum: Infinity };
    this.#budget.left -= cutting.length * this.#space.words;
    for (const [axis, { atoms, firstWord, words }] of this.#space.axes.entries()) {
      const last = lastBit(cell, cell, firstWord, words);
      const first = firstBit(cell, cell, firstWord, words);
      if (first === last) continue;
      // Blocks that begin at an atom, and that end at one; the others reach over the whole axis.
      const begins = new Int32Array(atoms.length + 1);
      const ends = new Int32Array(atoms.length + 1);
      for (const block of cutting) {
        begins[firstBit(cell, block, firstWord, words)]!++;
        ends[lastBit(cell, block, firstWord, words)]!++;
      }
      let low = 0;
      let high = cutting.length;
      for (let atom = first; atom < last; atom++) {
        low += begins[atom]!;
        high -= ends[atom]!;
        if (((cell[firstWord + (atom >> 5)]! >>> (atom & 31)) & 1) === 0) continue;
        const most = Math.max(low, high);
        const sum = low + high;
        if (most < best.most || (most === best.most && sum < best.sum)) best = { axis, atom, most, sum };
      }
    }
    return best;
  }

  #halves(cell: Block, axis: number, atom: number): [Block, Block] {
    const { firstWord, words } = this.#space.axes[axis]!;
    const low = cell.slice();
    const high = cell.slice();
    for (let w = 0; w < words; w++) {
      const upTo = atom - 32 * w;
      const mask = upTo < 0 ? 0 : upTo >= 31 ? -1 : (2 << upTo) - 1;
      low[firstWord + w]! &= mask;
      high[firstWord + w]! &= ~mask;
    }
    return [low, high];
  }
}

/** The lowest atom common to both; they have one. */
function firstBit(one: Block, other: Block, firstWord: number, words: number): number {
  for (let w = 0; w < words; w++) {
    const bits = one[firstWord + w]! & other[firstWord + w]!;
    if (bits !== 0) return 32 * w + 31 - Math.clz32(bits & -bits);
  }
  return 0;
}

/** The highest atom common to both; they have one. */
function lastBit(one: Block, other: Block, firstWord: number, words: number): number {
  for (let w = words - 1; w >= 0; w--) {
    const bits = one[firstWord + w]! & other[firstWord + w]!;
    if (bits !== 0) return 32 * w + 31 - Math.clz32(bits);
  }
  return 0;
}
