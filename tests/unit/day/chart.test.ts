import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartStep, chartValue } from '../../../src/day/chart.ts';
import type { Chart } from '../../../src/deck/types.ts';
import {
  along,
  anyChart,
  brakeChart,
  chartsWithTwoInputs,
  liftChart,
  risingCharts,
  share,
} from './charts.ts';

const read = (chart: Chart, ...inputs: readonly number[]): number => {
  const result = chartValue(chart, inputs);
  if (!result.ok) throw new Error(result.why);
  return result.value;
};
const numberAt = (chart: Chart, i: number, j: number): number =>
  chart.rows ? chart.rows[i]![j]! : chart.values![i]!;
/** The cell that holds a value: its break points, from 0. */
const cellOf = (at: readonly number[], value: number): number =>
  Math.max(
    0,
    Math.min(
      at.length - 2,
      at.findLastIndex((edge) => edge <= value),
    ),
  );
const least = (numbers: readonly number[]): number => Math.min(...numbers);
const most = (numbers: readonly number[]): number => Math.max(...numbers);

describe('a chart with one input', () => {
  it.each([
    ['at a break point', 20, 100],
    ['at its first break point', 0, 0],
    ['at its last break point', 60, 700],
    ['half way', 10, 50],
    ['a quarter of the way: 100 + 600 × 10/40', 30, 250],
  ])('is read %s', (_, input, value) => expect(read(brakeChart, input)).toBe(value));

  it.each([
    [-0.5, 'speed −0.5\u00a0kt; the chart begins at 0\u00a0kt'],
    [61, 'speed 61\u00a0kt; the chart ends at 60\u00a0kt'],
    [Infinity, 'speed has no value'],
    [NaN, 'speed has no value'],
  ])('is not read at %d, and says why', (input, why) =>
    expect(chartValue(brakeChart, [input])).toEqual({ ok: false, why, input: 0 }),
  );

  it('is still read where rounding carried a value past its end by a hair', () => {
    expect(read(brakeChart, 60 + 1e-9)).toBe(700);
    expect(read(brakeChart, -1e-9)).toBe(0);
  });
});

describe('a chart with two inputs', () => {
  it.each([
    ['at a corner', 1000, 15, 8600],
    ['at its last corner', 3000, 45, 7300],
    ['along a row: 8600 − 700 × 10/30', 1000, 25, 8600 - 700 / 3],
    ['along a column: 8800 − 200 × 500/1000', 500, 15, 8700],
    // Rows at 30 °C: 8500 at 0 ft, 8250 at 1000 ft; 300/1000 of the way between them.
    ['inside a cell', 300, 30, 8425],
    // Rows at 0 °C: 8900 − 300 × 10/25 = 8780 and 8500 − 300 × 10/25 = 8380; half way.
    ['inside another', 2000, 0, 8580],
  ])('is read %s', (_, altitude, temperature, value) =>
    expect(read(liftChart, altitude, temperature)).toBeCloseTo(value, 9),
  );

  it('says which input lies outside, the first of them when both do', () => {
    expect(chartValue(liftChart, [500, 52])).toEqual({
      ok: false,
      why: 'temperature 52\u00a0°C; the chart ends at 45\u00a0°C',
      input: 1,
    });
    expect(chartValue(liftChart, [3200, 52])).toMatchObject({
      why: 'pressure altitude 3,200\u00a0ft; the chart ends at 3,000\u00a0ft',
      input: 0,
    });
  });

  it('is not read with another number of inputs than it has', () => {
    expect(() => chartValue(liftChart, [500])).toThrow('has 2 inputs, not 1');
  });
});

describe('the place to which a chart is read', () => {
  it.each([
    ['whole numbers', brakeChart, 1],
    ['half numbers', { ...brakeChart, values: [0, 0.5, 2] }, 0.1],
    [
      'the finest of its numbers',
      {
        ...liftChart,
        rows: [
          [1, 2.25],
          [3, 4.5],
        ],
      },
      0.01,
    ],
  ] as const)('comes from %s', (_, chart, step) => expect(chartStep(chart)).toBe(step));
});

describe('any chart', () => {
  it('is exact at each of its break points', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const [first, second] = chart.inputs;
        for (const [i, a] of first!.at.entries())
          for (const [j, b] of (second?.at ?? [0]).entries())
            expect(read(chart, ...(second ? [a, b] : [a]))).toBe(numberAt(chart, i, j));
      }),
    );
  });

  it('stays between the corners of the cell it is read in', () => {
    fc.assert(
      fc.property(anyChart, share, share, (chart, p, q) => {
        const inputs = chart.inputs.map(({ at }, index) => along(at, index === 0 ? p : q));
        const [i, j] = chart.inputs.map(({ at }, index) => cellOf(at, inputs[index]!));
        const corners = [0, 1].flatMap((di) =>
          [0, 1].map((dj) => numberAt(chart, i! + di, j === undefined ? 0 : j + dj)),
        );
        const value = read(chart, ...inputs);
        expect(value).toBeGreaterThanOrEqual(least(corners));
        expect(value).toBeLessThanOrEqual(most(corners));
      }),
    );
  });

  it('is refused outside, by however little a pilot could write', () => {
    fc.assert(
      fc.property(
        anyChart,
        share,
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        fc.boolean(),
        (chart, p, by, below) => {
          const inputs = chart.inputs.map(({ at }) => along(at, p));
          const { at } = chart.inputs[inputs.length - 1]!;
          inputs[inputs.length - 1] = below ? at[0]! - by : at[at.length - 1]! + by;
          expect(chartValue(chart, inputs)).toMatchObject({ ok: false, input: inputs.length - 1 });
        },
      ),
    );
  });

  it('runs on across the border of two cells', () => {
    fc.assert(
      fc.property(anyChart, fc.nat(), share, (chart, which, q) => {
        const { at } = chart.inputs[0]!;
        const border = 1 + (which % Math.max(1, at.length - 2));
        fc.pre(at.length > 2);
        const here = at[border]!;
        const hair = 1e-7 * Math.min(here - at[border - 1]!, at[border + 1]! - here);
        const others = chart.inputs.slice(1).map((input) => along(input.at, q));
        const span = most((chart.values ?? chart.rows!.flat()).map(Math.abs));
        const on = read(chart, here, ...others);
        for (const side of [here - hair, here + hair])
          expect(Math.abs(read(chart, side, ...others) - on)).toBeLessThanOrEqual(1e-6 * span + 1e-9);
      }),
    );
  });

  it('never falls where its numbers never fall', () => {
    fc.assert(
      fc.property(risingCharts, share, share, share, share, (chart, a, b, c, d) => {
        const [first, second] = chart.inputs;
        const low = [along(first!.at, Math.min(a, b)), along(second!.at, Math.min(c, d))];
        const high = [along(first!.at, Math.max(a, b)), along(second!.at, Math.max(c, d))];
        const [from, to] = [read(chart, ...low), read(chart, ...high)];
        // A last digit may turn when two rows are mixed.
        expect(to - from).toBeGreaterThanOrEqual(-1e-12 * Math.abs(from));
      }),
    );
  });

  // Press et al., Numerical Recipes, 3rd ed., eq. 3.6.4: each corner by the area of the opposite part of the cell.
  it('agrees with the textbook’s sum of the four corners', () => {
    fc.assert(
      fc.property(chartsWithTwoInputs, share, share, (chart, p, q) => {
        const [first, second] = chart.inputs;
        const [x, y] = [along(first!.at, p), along(second!.at, q)];
        const [i, j] = [cellOf(first!.at, x), cellOf(second!.at, y)];
        const t = (x - first!.at[i]!) / (first!.at[i + 1]! - first!.at[i]!);
        const u = (y - second!.at[j]!) / (second!.at[j + 1]! - second!.at[j]!);
        const sum =
          (1 - t) * (1 - u) * numberAt(chart, i, j) +
          t * (1 - u) * numberAt(chart, i + 1, j) +
          t * u * numberAt(chart, i + 1, j + 1) +
          (1 - t) * u * numberAt(chart, i, j + 1);
        expect(Math.abs(read(chart, x, y) - sum)).toBeLessThanOrEqual(1e-6);
      }),
    );
  });
});
