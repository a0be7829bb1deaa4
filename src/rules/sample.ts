/** Values out of interval sets: drawn, or picked to stand for the set. */
import { contains, holds, measure } from './intervals.ts';
import type { Random } from './random.ts';
import { multipleOf, multiplesIn, nearestMultiple } from './steps.ts';
import type { Interval, IntervalSet } from './types.ts';

/**
 * A member of the set, drawn evenly from the multiples of the step that belong to it (checked exactly,
 * after rounding). Only a set without any multiple gives another member: then a point of a piece drawn
 * by length. Null for the empty set, and where no number of the machine lies between two open ends.
 */
export function sample(set: IntervalSet, step: number, random: Random): number | null {
  const runs = set.map((piece) => multiplesIn(piece, step));
  let pick = Math.floor(random() * runs.reduce((sum, { count }) => sum + count, 0));
  for (const { first, count } of runs) {
    if (pick < count) return multipleOf(step, first + pick);
    pick -= count;
  }
  return sampleBetween(set, random);
}

function sampleBetween(set: IntervalSet, random: Random): number | null {
  let rest = random() * measure(set);
  const drawn = set.find(({ lo, hi }) => (rest -= hi - lo) < 0) ?? set[set.length - 1];
  if (!drawn) return null;
  const value = drawn.lo + random() * (drawn.hi - drawn.lo);
  return holds(drawn, value) ? value : inside(drawn);
}

/** A number inside an interval, in its middle if the machine has one there; null when it has none. */
export function inside(piece: Interval): number | null {
  const middle = piece.lo + (piece.hi - piece.lo) / 2;
  return [middle, piece.lo, piece.hi].find((value) => holds(piece, value)) ?? null;
}

/**
 * The member that stands best for the set: a multiple of the step near the middle of its longest piece
 * that holds one, else the middle of its longest piece. Null as for `sample`.
 */
export function typical(set: IntervalSet, step: number): number | null {
  const longestFirst = [...set].sort((a, b) => b.hi - b.lo - (a.hi - a.lo));
  for (const piece of longestFirst) {
    const { first, count } = multiplesIn(piece, step);
    if (count === 0) continue;
    const nearest = nearestMultiple(piece.lo + (piece.hi - piece.lo) / 2, step);
    return holds(piece, nearest) ? nearest : multipleOf(step, first + Math.floor((count - 1) / 2));
  }
  for (const piece of longestFirst) {
    const value = inside(piece);
    if (value !== null && contains(set, value)) return value;
  }
  return null;
}
