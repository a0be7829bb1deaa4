import { describe, expect, it } from 'vitest';
import {
  checkValues,
  sayComputed,
  sayPublished,
  sayStatus,
  sayTolerance,
  sayVerdict,
  topicsOf,
} from '../../../../src/app/pages/sources/checked-values.ts';
import { computedFor, formulaOf } from '../../../../src/reference/computed.ts';
import { publishedValues } from '../../../../src/reference/published.ts';
import type { PublishedValue } from '../../../../src/reference/types.ts';

const row = (change: Partial<PublishedValue> = {}): PublishedValue => ({
  id: 'descent',
  topic: 'descent',
  what: 'rate of descent',
  value: 480,
  unit: 'ft/min',
  tolerance: 5,
  source: 'Charts',
  status: 'printed',
  ...change,
});
const checked = (change: Partial<PublishedValue>, computed: number | null) =>
  checkValues([row(change)], { computedFor: () => computed, formulaOf: () => 'speed × sin(angle)' })[0]!;

describe('the verdict on a published value', () => {
  it.each([
    ['at the tolerance', {}, 485, 'agrees'],
    ['just over it', {}, 485.01, 'differs'],
    ['under it', {}, 474.9, 'differs'],
    ['the same to the last bit but one', { value: 0.3, tolerance: 0 }, 0.1 + 0.2, 'agrees'],
    ['another number where none may differ', { tolerance: 0 }, 480.1, 'differs'],
    ['nothing worked out', {}, null, 'as it stands'],
  ] as const)('%s', (_, change, computed, verdict) => {
    expect(checked(change, computed).verdict).toBe(verdict);
  });

  it.each([
    [{}, 478.2, 'agrees'],
    [{}, 488.2, 'differs by 8.2 ft/min'],
    [{ unit: 'deg', value: 3, tolerance: 0.05 }, 3.4, 'differs by 0.4°'],
    [{}, null, 'as it stands'],
  ])('is said in plain words: %o, %s', (change, computed, words) => {
    expect(sayVerdict(checked(change, computed)).replaceAll('\u00a0', ' ')).toBe(words);
  });

  it('names the formula only where something was worked out', () => {
    expect(checked({}, 478).formula).toBe('speed × sin(angle)');
    expect(checked({}, null).formula).toBeNull();
  });
});

describe('a published value is written', () => {
  it.each([
    [{ value: 1000, unit: 'ft' }, '1,000 ft', '± 5'],
    [{ value: 0.25, unit: 'mile', tolerance: 0 }, '0.25 miles', 'exactly'],
    [{ value: 1, unit: 'mile' }, '1 mile', '± 5'],
    [{ value: -56.5, unit: 'degC', tolerance: 0.05 }, '−56.5 °C', '± 0.05'],
    [{ value: 5.25, unit: 'deg/s', tolerance: 0.008 }, '5.25 °/s', '± 0.008'],
    [{ value: 45, unit: 'deg' }, '45°', '± 5'],
    [{ value: 0.166667, unit: 'share', tolerance: 1e-6 }, '0.166667 of the wind', '± 0.000001'],
  ])('%o as “%s”, %s', (change, published, tolerance) => {
    expect(sayPublished(row(change)).replaceAll('\u00a0', ' ')).toBe(published);
    expect(sayTolerance(row(change)).replaceAll('\u00a0', ' ')).toBe(tolerance);
  });

  it('beside what was worked out, to one decimal more', () => {
    expect(sayComputed(row(), 477.0345)).toBe('477\u00a0ft/min');
    expect(sayComputed(row({ tolerance: 0.5 }), 477.0345)).toBe('477.03\u00a0ft/min');
    expect(sayComputed(row(), -0.01)).toBe('0\u00a0ft/min');
  });

  it.each([
    [{}, 'Charts'],
    [{ status: 'from memory' }, 'Charts, from memory'],
    [{ status: 'common practice', source: 'none' }, 'common practice, no source'],
    [{ status: 'derived', source: 'Derived: 1 ft = 0.3048 m' }, 'Derived: 1 ft = 0.3048 m'],
  ] as const)('with where it is from: %o', (change, words) => {
    expect(sayStatus(row(change))).toBe(words);
  });
});

describe('the published values that come with the program', () => {
  const all = checkValues(publishedValues, { computedFor, formulaOf });

  it('all agree within their tolerance where they can be worked out', () => {
    expect(all.filter(({ verdict }) => verdict === 'agrees').length).toBeGreaterThan(100);
    expect(all.filter(({ verdict }) => verdict === 'differs').map(({ id }) => id)).toEqual([]);
  });

  it('are each under one topic', () => {
    const topics = topicsOf(all);
    expect(new Set(topics.map(({ topic }) => topic)).size).toBe(topics.length);
    expect(topics.flatMap(({ values }) => values)).toHaveLength(all.length);
  });
});
