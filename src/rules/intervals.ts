/**
 * Exact sets of numbers made of intervals with open or closed ends. Ends are compared, never computed
 * with, so that no rounding moves an edge.
 *
 * Inside, an end is a *cut*: a place just before or just after a value. `[3..5)` runs from the cut before
 * 3 to the cut before 5; `(3..5]` from the cut after 3 to the cut after 5. With cuts every operation is a
 * merge of sorted lists without cases for open and closed.
 */
import type { Interval, IntervalSet } from './types.ts';

/** An interval; both ends belong to it unless said to be open. May be empty: `normalise` drops those. */
export function interval(lo: number, hi: number, loOpen = false, hiOpen = false): Interval {
  // Adding 0 turns -0 into 0: one number, one form.
  return { lo: lo + 0, hi: hi + 0, loOpen, hiOpen };
}

export const nothing: IntervalSet = [];

const holdsNothing = ({ lo, hi, loOpen, hiOpen }: Interval): boolean =>
  !(lo < hi || (lo === hi && !loOpen && !hiOpen));

/** Order of the cuts at which two intervals begin. */
const compareStarts = (a: Interval, b: Interval): number =>
  a.lo - b.lo || Number(a.loOpen) - Number(b.loOpen);

/** Order of the cuts at which two intervals end. */
const compareEnds = (a: Interval, b: Interval): number => a.hi - b.hi || Number(b.hiOpen) - Number(a.hiOpen);

/** True when nothing lies between the end of one and the start of the other: they touch or overlap. */
const reaches = (a: Interval, b: Interval): boolean =>
  a.hi > b.lo || (a.hi === b.lo && !(a.hiOpen && b.loOpen));

/** Any intervals, in any order, as a set: sorted, disjoint, never touching, without empty pieces. */
export function normalise(intervals: readonly Interval[]): IntervalSet {
  const sorted = intervals.filter((piece) => !holdsNothing(piece)).sort(compareStarts);
  const result: Interval[] = [];
  for (const piece of sorted) {
    const last = result[result.length - 1];
    if (!last || !reaches(last, piece)) result.push(piece);
    else if (compareEnds(last, piece) < 0)
      result[result.length - 1] = { ...last, hi: piece.hi, hiOpen: piece.hiOpen };
  }
  return result;
}

export function union(a: IntervalSet, b: IntervalSet): IntervalSet {
  return normalise([...a, ...b]);
}

export function intersect(a: IntervalSet, b: IntervalSet): IntervalSet {
  const result: Interval[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    const one = a[i]!;
    const other = b[j]!;
    const start = compareStarts(one, other) >= 0 ? one : other;
    const end = compareEnds(one, other) <= 0 ? one : other;
    const piece = { lo: start.lo, loOpen: start.loOpen, hi: end.hi, hiOpen: end.hiOpen };
    if (!holdsNothing(piece)) result.push(piece);
    if (end === one) i++;
    else j++;
  }
  return result;
}

/** What of `within` the set leaves out. */
export function complement(set: IntervalSet, within: Interval): IntervalSet {
  const result: Interval[] = [];
  let { lo, loOpen } = within;
  for (const piece of set) {
    result.push({ lo, loOpen, hi: piece.lo, hiOpen: !piece.loOpen });
    lo = piece.hi;
    loOpen = !piece.hiOpen;
  }
  result.push({ lo, loOpen, hi: within.hi, hiOpen: within.hiOpen });
  return intersect(
    result.filter((piece) => !holdsNothing(piece)),
    normalise([within]),
  );
}

/** What of `a` is not in `b`. */
export function subtract(a: IntervalSet, b: IntervalSet): IntervalSet {
  return intersect(a, complement(b, interval(-Infinity, Infinity)));
}

export function contains(set: IntervalSet, value: number): boolean {
  return set.some((piece) => holds(piece, value));
}

/** Membership in one interval; false for NaN. */
export function holds({ lo, hi, loOpen, hiOpen }: Interval, value: number): boolean {
  return (loOpen ? value > lo : value >= lo) && (hiOpen ? value < hi : value <= hi);
}

/** True when two intervals, neither empty, have a member in common. */
export const doOverlap = (a: Interval, b: Interval): boolean =>
  (a.lo < b.hi || (a.lo === b.hi && !a.loOpen && !b.hiOpen)) &&
  (b.lo < a.hi || (b.lo === a.hi && !b.loOpen && !a.hiOpen));

export const isEmpty = (set: IntervalSet): boolean => set.length === 0;

/** Total length; 0 for nothing and for single points. */
export const measure = (set: IntervalSet): number => set.reduce((sum, { lo, hi }) => sum + (hi - lo), 0);

/** The ends of all pieces, ascending, each once. */
export function edges(set: IntervalSet): number[] {
  return [...new Set(set.flatMap(({ lo, hi }) => [lo, hi]))].sort((a, b) => a - b);
}

export function equals(a: IntervalSet, b: IntervalSet): boolean {
  return (
    a.length === b.length &&
    a.every((piece, i) => compareStarts(piece, b[i]!) === 0 && compareEnds(piece, b[i]!) === 0)
  );
}

/** True when every member of `inner` is one of `outer`. */
export const isWithin = (inner: IntervalSet, outer: IntervalSet): boolean =>
  equals(intersect(inner, outer), inner);
