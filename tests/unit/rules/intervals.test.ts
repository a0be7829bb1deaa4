import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  complement,
  contains,
  edges,
  equals,
  interval,
  intersect,
  isEmpty,
  isWithin,
  measure,
  normalise,
  subtract,
  union,
} from '../../../src/rules/intervals.ts';
import type { IntervalSet } from '../../../src/rules/types.ts';
import { anySet, domain, intervals, probes } from './arbitrary.ts';

const membersOf = (set: IntervalSet) => probes.filter((value) => contains(set, value));
const forAll = (test: (set: IntervalSet) => void) => fc.assert(fc.property(anySet, test));
const forAllPairs = (test: (a: IntervalSet, b: IntervalSet) => void) =>
  fc.assert(fc.property(anySet, anySet, test));

describe('a set of intervals', () => {
  it('keeps the members of the intervals it is made of, and no others', () => {
    fc.assert(
      fc.property(intervals, (pieces) => {
        const members = probes.filter((value) => pieces.some((piece) => contains([piece], value)));
        expect(membersOf(normalise(pieces))).toEqual(members);
      }),
    );
  });

  it('has sorted pieces that are never empty and never touch', () => {
    forAll((set) => {
      for (const [i, piece] of set.entries()) {
        expect(piece.lo < piece.hi || (piece.lo === piece.hi && !piece.loOpen && !piece.hiOpen)).toBe(true);
        const next = set[i + 1];
        if (next)
          expect(piece.hi < next.lo || (piece.hi === next.lo && piece.hiOpen && next.loOpen)).toBe(true);
      }
    });
  });

  it('has one form: the same members mean the same pieces', () => {
    forAllPairs((a, b) => {
      const same = membersOf(a).join() === membersOf(b).join();
      expect(equals(a, b)).toBe(same);
      if (same) expect(a).toEqual(b);
    });
  });

  it.each([
    ['joins what touches', [interval(1, 2, false, true), interval(2, 3)], [interval(1, 3)]],
    ['keeps a hole of one point', [interval(1, 2, false, true), interval(2, 3, true)], null],
    ['drops an interval without members', [interval(2, 2, true), interval(3, 1)], []],
    ['knows no minus zero', [interval(-0, -0)], [interval(0, 0)]],
  ])('%s', (_, pieces, expected) => {
    expect(normalise(pieces)).toEqual(expected ?? pieces);
  });
});

describe('union, intersection, complement', () => {
  it('work on members', () => {
    forAllPairs((a, b) => {
      const inBoth = (value: number) => contains(a, value) && contains(b, value);
      expect(membersOf(intersect(a, b))).toEqual(probes.filter(inBoth));
      expect(membersOf(union(a, b))).toEqual(probes.filter((v) => contains(a, v) || contains(b, v)));
      expect(membersOf(subtract(a, b))).toEqual(probes.filter((v) => contains(a, v) && !contains(b, v)));
      const inside = probes.filter((value) => contains([domain], value));
      expect(membersOf(complement(a, domain))).toEqual(inside.filter((v) => !contains(a, v)));
    });
  });

  it('give sets in their one form', () => {
    forAllPairs((a, b) => {
      for (const set of [union(a, b), intersect(a, b), subtract(a, b), complement(a, domain)])
        expect(normalise(set)).toEqual(set);
    });
  });

  it('keep the laws of De Morgan', () => {
    forAllPairs((a, b) => {
      const not = (set: IntervalSet) => complement(set, domain);
      expect(not(union(a, b))).toEqual(intersect(not(a), not(b)));
      expect(not(intersect(a, b))).toEqual(union(not(a), not(b)));
    });
  });

  it('undo a complement by another', () => {
    forAll((a) => {
      expect(complement(complement(a, domain), domain)).toEqual(a);
    });
  });

  it('complement within a domain whose ends are left out', () => {
    expect(complement([interval(-1, 0)], interval(0, 4, true, true))).toEqual([interval(0, 4, true, true)]);
    expect(complement([], interval(0, 4, true))).toEqual([interval(0, 4, true)]);
    expect(complement([interval(0, 4, true, true)], interval(0, 4))).toEqual([
      interval(0, 0),
      interval(4, 4),
    ]);
  });

  it('know what lies within what', () => {
    forAllPairs((a, b) => {
      expect(isWithin(a, b)).toBe(isEmpty(subtract(a, b)));
      expect(isWithin(intersect(a, b), a)).toBe(true);
    });
  });
});

describe('measure and edges', () => {
  it('measure adds up over a set and its complement', () => {
    forAll((a) => {
      expect(measure(a) + measure(complement(a, domain))).toBe(measure([domain]));
    });
  });

  it('edges are the ends, ascending, each once', () => {
    expect(edges([interval(0, 2, false, true), interval(2, 5, true)])).toEqual([0, 2, 5]);
  });

  it('membership changes only at edges', () => {
    forAll((a) => {
      const ends = edges(a);
      for (const [i, value] of probes.entries()) {
        const next = probes[i + 1];
        if (next === undefined || ends.includes(value) || ends.includes(next)) continue;
        expect(contains(a, value)).toBe(contains(a, next));
      }
    });
  });

  it('nothing contains NaN', () => {
    expect(contains([interval(-Infinity, Infinity)], NaN)).toBe(false);
  });
});
