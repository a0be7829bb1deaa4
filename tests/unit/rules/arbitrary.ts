/** Random intervals, sets and values that meet each other's ends often. */
import fc from 'fast-check';
import { interval, normalise } from '../../../src/rules/intervals.ts';
import type { Interval, IntervalSet } from '../../../src/rules/types.ts';

export const domain: Interval = interval(-6, 6);

/** Few different ends, so that pieces touch, overlap and coincide. */
export const end = fc.integer({ min: -6, max: 6 });

export const anyInterval: fc.Arbitrary<Interval> = fc
  .tuple(end, end, fc.boolean(), fc.boolean())
  .map(([lo, hi, loOpen, hiOpen]) => interval(lo, hi, loOpen, hiOpen));

export const intervals: fc.Arbitrary<Interval[]> = fc.array(anyInterval, { maxLength: 5 });

export const anySet: fc.Arbitrary<IntervalSet> = intervals.map(normalise);

/** Every end, every point half way between two, and one beyond each side: what tells any two sets apart. */
export const probes: readonly number[] = Array.from({ length: 27 }, (_, i) => -6.5 + i * 0.5);
