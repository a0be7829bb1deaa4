/**
 * The states of a phase as a finite space, exactly: each input's range is cut into *atoms*, sets of
 * values that no condition in question tells apart. A *block* is a product of one set of atoms per
 * input, so conditions of rules, gaps and overlaps are all blocks, and what holds for blocks holds for
 * the real states.
 */
import { doOverlap, intersect, interval, normalise } from './intervals.ts';
import type { Interval, IntervalSet, Rule } from './types.ts';

/** A product of one interval set for each input; inputs it doesn't name may have any value. */
export type Box = ReadonlyMap<string, IntervalSet>;

export interface Axis {
  readonly quantity: string;
  /** What can occur in the phase. */
  readonly range: Interval;
  /** By their lowest value, ascending. */
  readonly atoms: readonly IntervalSet[];
  /** Where its bits begin in a block, and how many words they take. */
  readonly firstWord: number;
  readonly words: number;
}

export interface Space {
  readonly axes: readonly Axis[];
  readonly words: number;
}

/** One bit for each atom of each axis. */
export type Block = Uint32Array;

type Conditions = Pick<Rule, 'when'>;

/**
 * The space in which all these rules are blocks.
 * @param box what can occur in the phase; its inputs that no rule tests have no axis.
 */
export function spaceFor(box: ReadonlyMap<string, Interval>, rules: readonly Conditions[]): Space {
  const axes: Axis[] = [];
  let firstWord = 0;
  for (const [quantity, range] of box) {
    const conditions = rules.flatMap(({ when }) => {
      const set = when.get(quantity);
      return set ? [intersect(set, [range])] : [];
    });
    if (conditions.length === 0) continue;
    const atoms = atomsOf(range, conditions);
    const words = Math.ceil(atoms.length / 32);
    axes.push({ quantity, range, atoms, firstWord, words });
    firstWord += words;
  }
  return { axes, words: firstWord };
}

/** Groups the stretches between edges by the conditions that hold there. */
function atomsOf(range: Interval, conditions: readonly IntervalSet[]): IntervalSet[] {
  const ends = [...new Set([range, ...conditions.flat()].flatMap(({ lo, hi }) => [lo, hi]))].sort(
    (a, b) => a - b,
  );
  const place = new Map(ends.map((end, i) => [end, i]));
  // Stretch 2i is the point ends[i], stretch 2i + 1 the open interval to the next end.
  const signatures = Array.from({ length: 2 * ends.length - 1 }, () => '');
  conditions.forEach((set, number) => {
    for (const { lo, hi, loOpen, hiOpen } of set) {
      const last = 2 * place.get(hi)! - Number(hiOpen);
      for (let stretch = 2 * place.get(lo)! + Number(loOpen); stretch <= last; stretch++)
        signatures[stretch] += `${number},`;
    }
  });
  const groups = new Map<string, Interval[]>();
  signatures.forEach((signature, stretch) => {
    const lo = ends[stretch >> 1]!;
    const piece = stretch % 2 === 0 ? interval(lo, lo) : interval(lo, ends[(stretch + 1) >> 1]!, true, true);
    const group = groups.get(signature);
    if (group) group.push(piece);
    else groups.set(signature, [piece]);
  });
  return [...groups.values()].map(normalise);
}

/** The block of all states of the phase. */
export function wholeOf(space: Space): Block {
  const block = new Uint32Array(space.words);
  for (const { atoms, firstWord } of space.axes) fill(block, firstWord, atoms.length);
  return block;
}

function fill(block: Block, firstWord: number, count: number): void {
  for (let i = 0; i < count; i++) block[firstWord + (i >> 5)]! |= 1 << (i & 31);
}

/** The states that a rule of the space fits; null when there are none in the phase. */
export function blockOf(space: Space, { when }: Conditions): Block | null {
  const block = wholeOf(space);
  for (const { quantity, atoms, firstWord, words } of space.axes) {
    const set = when.get(quantity);
    if (!set) continue;
    block.fill(0, firstWord, firstWord + words);
    let some = false;
    atoms.forEach((atom, i) => {
      // No condition cuts through an atom: what holds for its first piece holds for all of it.
      if (!set.some((piece) => doOverlap(piece, atom[0]!))) return;
      block[firstWord + (i >> 5)]! |= 1 << (i & 31);
      some = true;
    });
    if (!some) return null;
  }
  return block;
}

/** True when two blocks have a state in common. */
export function doMeet({ axes }: Space, one: Block, other: Block): boolean {
  for (const { firstWord, words } of axes) {
    let common = 0;
    for (let w = firstWord; w < firstWord + words; w++) common |= one[w]! & other[w]!;
    if (common === 0) return false;
  }
  return true;
}

/** Common states of two blocks; null when there are none. */
export function meet(space: Space, one: Block, other: Block): Block | null {
  return doMeet(space, one, other) ? one.map((word, w) => word & other[w]!) : null;
}

/** The atoms of one axis that belong to a block, as numbers into `axis.atoms`. */
export function atomsIn(block: Block, { atoms, firstWord }: Axis): number[] {
  return [...atoms.keys()].filter((i) => (block[firstWord + (i >> 5)]! >>> (i & 31)) & 1);
}

/** A block as interval sets, leaving out the inputs of which it holds the whole range. */
export function boxOf(space: Space, block: Block): Box {
  const box = new Map<string, IntervalSet>();
  for (const axis of space.axes) {
    const members = atomsIn(block, axis);
    if (members.length < axis.atoms.length)
      box.set(axis.quantity, normalise(members.flatMap((i) => axis.atoms[i]!)));
  }
  return box;
}
