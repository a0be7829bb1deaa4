import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, interval } from '../../../src/rules/intervals.ts';
import { seeded } from '../../../src/rules/random.ts';
import { sample, typical } from '../../../src/rules/sample.ts';
import { multipleOf, multiplesIn, nearestMultiple } from '../../../src/rules/steps.ts';
import { anySet } from './arbitrary.ts';

const step = fc.constantFrom(0.1, 0.25, 0.5, 1, 5, 4);

describe('multiples of a step', () => {
  it.each([
    [0.1, 3, 0.3],
    [0.1, -7, -0.7],
    [0.01, 29, 0.29],
    [0.5, 21, 10.5],
    [5, 28, 140],
    [10, 0, 0],
  ])('of %d: number %d is %d, as written', (size, count, value) => {
    expect(multipleOf(size, count)).toBe(value);
  });

  it('counts those that belong to an interval, ends as they are', () => {
    expect(multiplesIn(interval(0.1, 0.3), 0.1)).toEqual({ first: 1, count: 3 });
    expect(multiplesIn(interval(0.1, 0.3, true, true), 0.1)).toEqual({ first: 2, count: 1 });
    expect(multiplesIn(interval(3, 4, true, true), 1).count).toBe(0);
    expect(multiplesIn(interval(-1000, 20000), 0.001)).toEqual({ first: -1000000, count: 21000001 });
  });

  it('takes the upper of two equally near', () => {
    expect(nearestMultiple(12.5, 5)).toBe(15);
    expect(nearestMultiple(-12.5, 5)).toBe(-10);
  });
});

describe('a sample', () => {
  it('is a member, and a multiple of the step wherever the set has one', () => {
    fc.assert(
      fc.property(anySet, step, fc.integer(), (set, size, seed) => {
        const value = sample(set, size, seeded(seed));
        if (set.length === 0) {
          expect(value).toBeNull();
          return;
        }
        expect(contains(set, value!)).toBe(true);
        if (set.some((piece) => multiplesIn(piece, size).count > 0))
          expect(nearestMultiple(value!, size)).toBe(value);
      }),
    );
  });

  it('draws every multiple about equally often, in short pieces as in long ones', () => {
    const random = seeded(7);
    const counts = new Map<number, number>();
    for (let i = 0; i < 4000; i++) {
      const value = sample([interval(0, 2), interval(5, 5)], 1, random)!;
      counts.set(value, (counts.get(value) ?? 0) + 1);
    }
    expect([...counts.keys()].sort()).toEqual([0, 1, 2, 5]);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
  });

  it('has none where the machine has no number', () => {
    const least = Number.MIN_VALUE;
    expect(sample([interval(0, least, true, true)], 1, seeded(1))).toBeNull();
    expect(typical([interval(0, least, true, true)], 1)).toBeNull();
  });
});

describe('a typical member', () => {
  it('belongs to the set, and is a multiple of the step wherever the set has one', () => {
    fc.assert(
      fc.property(anySet, step, (set, size) => {
        const value = typical(set, size);
        if (set.length === 0) {
          expect(value).toBeNull();
          return;
        }
        expect(contains(set, value!)).toBe(true);
        if (set.some((piece) => multiplesIn(piece, size).count > 0))
          expect(nearestMultiple(value!, size)).toBe(value);
      }),
    );
  });

  it('lies in the middle of the longest piece that has a multiple', () => {
    expect(typical([interval(0, 100), interval(200, 210)], 10)).toBe(50);
    expect(typical([interval(0.1, 9.9), interval(10, 11)], 10)).toBe(10);
  });
});
