import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, type Surroundings } from '../../../src/day/evaluate.ts';
import type { Quantity } from '../../../src/deck/types.ts';
import type { UnitId } from '../../../src/deck/units.ts';
import { compileFormula, type Compiled } from '../../../src/formulas/compile.ts';
import { areAlike, ratioOf, sayUnit, unitSymbols, type Unit } from '../../../src/formulas/formula-units.ts';
import { namesIn, type Scope } from '../../../src/formulas/scope.ts';
import { evaluated, inSi, isOfKind, ratio, sizeOf, type Result } from './other-library.ts';
import { formula, quantities, Tape, type Kind } from './random-formula.ts';

const scope: Scope = {
  quantityNamed: (name) => {
    const [, unit] = quantities[name] ?? [];
    return unit === undefined ? undefined : ({ id: name, unit: unit as UnitId } as Quantity);
  },
  isOfDay: () => true,
  chartNamed: () => null,
  known: new Set(Object.keys(quantities)),
};
const surroundings: Surroundings = {
  quantity: (id) => ({ ok: true, value: quantities[id]![0] }),
  chart: () => ({ ok: false, why: 'none' }),
};
const withUnits = Object.fromEntries(
  Object.entries(quantities).map(([name, [value, unit]]) => [
    name,
    unit === 'count' ? value : `${value} ${unit}`,
  ]),
);

const ours = (text: string): Compiled => compileFormula(text, namesIn(scope, text));

/** As the other library writes it. */
const written = (unit: Unit): string =>
  Object.entries(unit)
    .map(([symbol, exponent]) => `${symbol}^${exponent}`)
    .join(' ');

/** What the other library makes of it; null where it refuses the units. */
function theirs(text: string): Result | null {
  try {
    return evaluated(text, withUnits);
  } catch {
    return null;
  }
}

const tapes = fc.array(fc.nat(10_000), { minLength: 12, maxLength: 60 });
const anyKind = fc.constantFrom<Kind[]>('speed', 'length', 'time', 'mass', 'angle', 'pressure', 'plain');

describe('a formula that passes the check of its units', () => {
  it('is one whose units fit together when they are carried along, and comes to the same', () => {
    let compiled = 0;
    let refused = 0;
    fc.assert(
      fc.property(anyKind, tapes, fc.integer({ min: 1, max: 4 }), (kind, tape, depth) => {
        const text = formula(kind, new Tape(tape), depth, 14);
        const made = text.length <= 500 ? ours(text) : null;
        if (made === null) return;
        if (!made.ok) return void refused++;
        const result = theirs(text);
        const worked = evaluate(made.expression, surroundings);
        // Without a result (a square root below zero, a division by zero) there is nothing to compare.
        if (!worked.ok) return;
        compiled++;
        expect(result, `${text}: let through`).not.toBeNull();
        expect(isOfKind(result!, written(made.unit)), `${text}: ${sayUnit(made.unit)}`).toBe(true);
        const size = sizeOf(written(made.unit));
        const [one, other] = [worked.value * size, inSi(result!)];
        // Divided by what should have been nothing: the last bits decide.
        if (Math.abs(one) > 1e12) return;
        expect(Math.abs(one - other), `${text}: ${one}, ${other}`).toBeLessThanOrEqual(
          1e-7 * Math.max(1, Math.abs(one), Math.abs(other)),
        );
      }),
      { numRuns: 1500 },
    );
    expect(compiled).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(200);
  });

  it('is every one that was drawn without a slip', () => {
    fc.assert(
      fc.property(anyKind, tapes, fc.integer({ min: 1, max: 3 }), (kind, tape, depth) => {
        const text = formula(kind, new Tape(tape), depth, 0);
        if (text.length > 500) return;
        const made = ours(text);
        expect(made.ok ? '' : `${text}: ${made.why}`).toBe('');
      }),
      { numRuns: 500 },
    );
  });
});

describe('a unit', () => {
  const named = unitSymbols.filter((symbol) => !['g', 'percent', 'degC'].includes(symbol));
  const pairs = named.flatMap((one) => named.map((other) => [one, other] as const));

  it.each(pairs.filter(([one, other]) => areAlike({ [one]: 1 }, { [other]: 1 })))(
    '%s is so many %s, there and back, as the other library has it',
    (one, other) => {
      const there = ratioOf({ [one]: 1 }, { [other]: 1 });
      const back = ratioOf({ [other]: 1 }, { [one]: 1 });
      expect(there * back).toBeCloseTo(1, 12);
      expect(there / ratio(one, other)).toBeCloseTo(1, 12);
    },
  );

  it('is never taken for one of another kind', () => {
    for (const [one, other] of pairs) {
      const alike = areAlike({ [one]: 1 }, { [other]: 1 });
      const theirs = () => ratio(one, other);
      if (alike) expect(theirs).not.toThrow();
      else expect(theirs).toThrow();
    }
  });

  it.each([
    // Exact by definition: NIST Special Publication 811, appendix B.8.
    [{ nm: 1 }, { m: 1 }, 1852],
    [{ ft: 1 }, { m: 1 }, 0.3048],
    [{ kt: 1 }, { m: 1, s: -1 }, 1852 / 3600],
    [{ lb: 1 }, { kg: 1 }, 0.45359237],
    [{ ft: 1, min: -1 }, { m: 1, s: -1 }, 0.3048 / 60],
    [{ l: 1 }, { m: 3 }, 0.001],
    // ICAO Doc 7488: the standard atmosphere at sea level, 1013.25 hPa or 29.92 inHg to a hundredth.
    [{ inHg: 29.92 / 29.92 }, { hPa: 1 }, 33.86389],
    [{ deg: 1 }, { rad: 1 }, Math.PI / 180],
    [{ percent: 1 }, {}, 0.01],
    [{ g: 1 }, {}, 1],
  ] as [Unit, Unit, number][])('%o in %o is %d', (one, other, expected) => {
    expect(ratioOf(one, other)).toBeCloseTo(expected, 12);
  });
});

describe('a plain number', () => {
  it.each([
    ['share + 5', true],
    ['1 - height / spacing', true],
    ['max(fuel / weight, 2)', true],
    ['20 percent + 5 percent', true],
    ['20 percent + 0', true],
    ['(20 percent + 5 percent) * 2', true],
    // Meant as 5 %, it would be taken for 500 %.
    ['20 percent + 5', false],
    ['wind + 0', false],
  ])('beside another: %s, fits %s', (text, fits) => {
    expect(ours(text).ok).toBe(fits);
  });
});
