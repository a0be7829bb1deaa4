import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalsOf,
  sayError,
  sayList,
  sayNumber,
  sayRange,
  sayValue,
  unitSuffix,
} from '../../../src/deck/say.ts';
import type { Quantity } from '../../../src/deck/types.ts';
import { unitIds, units } from '../../../src/deck/units.ts';

const quantity = (changes: Partial<Quantity> = {}): Quantity => ({
  id: 'altitude',
  label: 'Altitude',
  unit: 'ft',
  range: [0, 2000],
  step: 5,
  above: 'high',
  below: 'low',
  ...changes,
});

const space = '\u00a0';

describe('a number', () => {
  it.each([
    [140, 1, '140'],
    [1000, 1, '1,000'],
    [1234567, 1, '1,234,567'],
    [-250, 10, '−250'],
    [0, 1, '0'],
    [-0, 1, '0'],
    [10, 0.5, '10.0'],
    [9.5, 0.5, '9.5'],
    [2.5, 0.05, '2.50'],
    [142.5, 1, '142.5'],
    [0.1 + 0.2, 0.1, '0.3'],
    [20 / 3, 1, '6.667'],
    [20 / 3, 0.1, '6.667'],
    [-0.0001, 1, '0'],
    [0.25, 0.0001, '0.2500'],
    [-1e9, 1, '−1,000,000,000'],
  ])('%s with a step of %s is said %s', (value, step, said) => {
    expect(sayNumber(value, step)).toBe(said);
  });

  it('reads back as itself, to a thousandth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1, 5, 100),
        (value, step) => {
          const read = Number(sayNumber(value, step).replace('−', '-').replaceAll(',', ''));
          expect(Math.abs(read - value)).toBeLessThanOrEqual(0.0005 + 1e-9);
        },
      ),
    );
  });
});

describe('the decimals of a step', () => {
  it.each([
    [10, 0],
    [1, 0],
    [0.5, 1],
    [0.1, 1],
    [0.25, 2],
    [0.05, 2],
    [0.001, 3],
    [1 / 3, 6],
  ])('%s has %s', (step, decimals) => {
    expect(decimalsOf(step)).toBe(decimals);
  });
});

describe('a value with its unit', () => {
  it.each([
    ['ft', `140${space}ft`],
    ['deg', '140°'],
    ['percent', `140${space}%`],
    ['degC', `140${space}°C`],
    ['aoa', `140${space}units`],
    ['count', '140'],
  ] as const)('in %s is said %s', (unit, said) => {
    expect(sayValue(140, quantity({ unit, step: 1 }))).toBe(said);
  });

  it.each(unitIds)('has the symbol of %s, and no other unit is written like it', (unit) => {
    expect(unitSuffix({ unit }).trim()).toBe(units[unit].symbol);
    expect(unitIds.filter((other) => units[other].symbol === units[unit].symbol)).toEqual([unit]);
  });
});

describe('an error', () => {
  it.each([
    [20, `20${space}ft high`],
    [-35, `35${space}ft low`],
    [0, 'on target'],
    [1e-12, 'on target'],
    [-0.0002, 'on target'],
    [0.5, `0.5${space}ft high`],
    [1200, `1,200${space}ft high`],
  ])('of %s ft is said %s', (error, said) => {
    expect(sayError(error, quantity())).toBe(said);
  });

  it('is over or under when the deck has no words for it', () => {
    const { above: _above, below: _below, ...plain } = quantity();
    expect(sayError(20, plain)).toBe(`20${space}ft over`);
    expect(sayError(-20, plain)).toBe(`20${space}ft under`);
  });
});

describe('a range', () => {
  it('names its unit once', () => {
    expect(sayRange([130, 150], quantity())).toBe(`130 to 150${space}ft`);
    expect(sayRange([-50, 1000], quantity())).toBe(`−50 to 1,000${space}ft`);
    expect(sayRange([9.5, 10], quantity({ unit: 'deg', step: 0.5 }))).toBe('9.5 to 10.0°');
  });

  it('of one value is that value', () => {
    expect(sayRange([140, 140], quantity())).toBe(`140${space}ft`);
  });
});

describe('a list', () => {
  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
  ])('%j is said “%s”', (items, said) => {
    expect(sayList(items)).toBe(said);
  });

  it('takes another word before its last item', () => {
    expect(sayList(['a', 'b', 'c'], 'or')).toBe('a, b or c');
  });
});
