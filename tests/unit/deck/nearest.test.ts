import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestOf, suggester } from '../../../src/deck/nearest.ts';

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', '-'), maxLength: 9 });

describe('the edit distance', () => {
  it.each([
    ['', '', 0],
    ['altitude', 'altitude', 0],
    ['altitud', 'altitude', 1],
    ['altitudes', 'altitude', 1],
    ['altitode', 'altitude', 1],
    ['atlitude', 'altitude', 1],
    ['sink', 'drift', 4],
    ['', 'aoa', 3],
  ])('from “%s” to “%s” is %s', (one, other, distance) => {
    expect(editDistance(one, other)).toBe(distance);
  });

  it('is the same both ways, zero for the same text only, and never more than the longer text', () => {
    fc.assert(
      fc.property(word, word, (one, other) => {
        const distance = editDistance(one, other);
        expect(editDistance(other, one)).toBe(distance);
        expect(distance === 0).toBe(one === other);
        expect(distance).toBeLessThanOrEqual(Math.max(one.length, other.length));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(one.length - other.length));
      }),
    );
  });

  it('stops at its limit', () => {
    fc.assert(
      fc.property(word, word, fc.integer({ min: 1, max: 6 }), (one, other, limit) => {
        expect(editDistance(one, other, limit)).toBe(Math.min(editDistance(one, other), limit));
      }),
    );
  });
});

describe('the nearest name', () => {
  const known = ['altitude', 'airspeed', 'aoa', 'sink', 'closure'];

  it.each([
    ['altitud', 'altitude'],
    ['Altitude', 'altitude'],
    ['air-speed', 'airspeed'],
    ['clousre', 'closure'],
    ['aao', 'aoa'],
  ])('to “%s” is “%s”', (name, near) => {
    expect(nearestOf(name, known)).toBe(near);
  });

  it.each(['flaps', 'range', 'x', 'speed-of-the-air'])('is none for “%s”', (name) => {
    expect(nearestOf(name, known)).toBeNull();
  });
});

describe('a suggester', () => {
  const known = new Set(['altitude', 'closure']);

  it('answers the same name again without counting it', () => {
    const suggest = suggester(1);
    expect(suggest('altitud', known)).toBe('altitude');
    expect(suggest('altitud', known)).toBe('altitude');
  });

  it('stops looking after so many names', () => {
    const suggest = suggester(1);
    suggest('altitud', known);
    expect(suggest('closur', known)).toBeNull();
  });
});
