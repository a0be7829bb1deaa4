/**
 * What the tool works out against what others published. Each row of shared/reference/published-values.json
 * holds its source, its status (printed, from memory, derived, common practice without a source), the
 * tolerance that the source's own rounding asks for, and the formula that works it out.
 */
import { describe, expect, test } from 'vitest';
import { z } from 'zod/mini';
import table from '../../shared/reference/published-values.json' with { type: 'json' };
import { computedFor, formulaOf } from '../../src/reference/computed.ts';
import { formulas } from '../../src/reference/formulas.ts';
import { publishedValues } from './published-values.ts';

const computed = publishedValues.filter(({ compute }) => compute);
const facts = publishedValues.filter(({ compute }) => !compute);

const row = z.strictObject({
  id: z.string().check(z.regex(/^[a-z0-9.-]+$/)),
  topic: z.string().check(z.minLength(1)),
  what: z.string().check(z.minLength(1)),
  value: z.number(),
  unit: z.string().check(z.minLength(1)),
  tolerance: z.number().check(z.nonnegative()),
  source: z.string().check(z.minLength(1)),
  status: z.enum(['printed', 'from memory', 'derived', 'common practice']),
  compute: z.optional(
    z.strictObject({
      formula: z.string(),
      with: z.record(z.string(), z.number().check(z.refine(Number.isFinite))),
    }),
  ),
});

describe('a formula gives the published value', () => {
  test.each(computed.map((one) => [one.id, one] as const))('%s', (id, { value, tolerance }) => {
    const found = computedFor(id);
    expect(found).not.toBeNull();
    expect(Math.abs(found! - value)).toBeLessThanOrEqual(tolerance + 1e-9 * Math.max(1, Math.abs(value)));
  });

  test('for at least 60 rows, 60 of them printed by somebody', () => {
    expect(computed.length).toBeGreaterThanOrEqual(120);
    expect(computed.filter(({ status }) => status === 'printed').length).toBeGreaterThanOrEqual(60);
  });

  test('and no tolerance is so wide that it would let a wrong formula pass', () => {
    const wide = computed.filter(
      ({ value, tolerance, status }) => status !== 'common practice' && tolerance > 0.035 * Math.abs(value),
    );
    // Read off at a glance or printed with two digits: 5, 13, 14 and 15 kt of wind.
    expect(wide.map(({ id }) => id).sort()).toEqual([
      'crab-thumb-120',
      'wind-070-15-on-09-cross',
      'wind-070-15-on-09-head',
      'wind-180-20-on-14-cross',
    ]);
  });
});

describe('the table of published values', () => {
  test.each(table.values.map((one) => [one.id, one] as const))('%s is whole', (_, one) => {
    expect(row.safeParse(one).error).toBeUndefined();
  });

  test('names each value once', () => {
    const ids = publishedValues.map(({ id }) => id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    const same = publishedValues.map(({ topic, what, status }) => `${topic}: ${what}, ${status}`);
    expect(same.filter((words, i) => same.indexOf(words) !== i)).toEqual([]);
  });

  test('names formulas that are there, with all of their arguments and no others', () => {
    for (const { id, compute } of computed)
      expect(Object.keys(compute!.with).sort(), id).toEqual(
        [...(formulas[compute!.formula]?.takes ?? ['no such formula'])].sort(),
      );
  });

  test('uses every formula that it could', () => {
    const used = new Set(computed.map(({ compute }) => compute!.formula));
    expect(Object.keys(formulas).filter((name) => !used.has(name))).toEqual([]);
  });

  test('names no source just where it is common practice', () => {
    for (const { id, source, status } of publishedValues)
      expect(source === 'none', id).toBe(status === 'common practice');
  });

  test('works out nothing for a fact, and says so', () => {
    expect(facts.length).toBeGreaterThan(0);
    for (const { id } of facts) expect([computedFor(id), formulaOf(id)], id).toEqual([null, null]);
    expect(computedFor('no-such-row')).toBeNull();
  });

  test('says each formula in words', () => {
    for (const { id } of computed) expect(formulaOf(id), id).toMatch(/./);
    expect(formulaOf('turn-rate-120-30')).toBe('g tan(bank) / airspeed');
  });
});
