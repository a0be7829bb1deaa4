/** Charts to test with: two worked out by hand, and random ones. */
import fc from 'fast-check';
import type { Chart } from '../../../src/deck/types.ts';

/** Round numbers, so that a value between them can be worked out in the head. */
export const brakeChart: Chart = {
  id: 'stopping-way',
  label: 'Stopping way',
  unit: 'ft',
  inputs: [{ label: 'Speed', unit: 'kt', at: [0, 20, 60], trend: 'rising' }],
  values: [0, 100, 700],
};

/** In kilograms over pressure altitude by temperature. */
export const liftChart: Chart = {
  id: 'lift',
  label: 'Vertical lift',
  unit: 'kg',
  inputs: [
    { label: 'Pressure altitude', unit: 'ft', at: [0, 1000, 3000], trend: 'falling' },
    { label: 'Temperature', unit: 'degC', at: [-10, 15, 45], trend: 'falling' },
  ],
  rows: [
    [9000, 8800, 8200],
    [8900, 8600, 7900],
    [8500, 8200, 7300],
  ],
};

/** Ascending, no two closer than 0.01: as an author writes them. */
const breakPoints = fc
  .uniqueArray(fc.integer({ min: -100_000, max: 100_000 }), { minLength: 2, maxLength: 8 })
  .map((at) => at.sort((one, other) => one - other).map((value) => value / 100));
const number = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((value) => value / 10);

export const chartsWithOneInput: fc.Arbitrary<Chart> = breakPoints.chain((at) =>
  fc.array(number, { minLength: at.length, maxLength: at.length }).map((values) => ({
    id: 'any',
    label: 'Any',
    unit: 'kg',
    inputs: [{ label: 'First', unit: 'ft', at }],
    values,
  })),
);

export const chartsWithTwoInputs: fc.Arbitrary<Chart> = fc
  .tuple(breakPoints, breakPoints)
  .chain(([first, second]) =>
    fc
      .array(fc.array(number, { minLength: second.length, maxLength: second.length }), {
        minLength: first.length,
        maxLength: first.length,
      })
      .map((rows) => ({
        id: 'any',
        label: 'Any',
        unit: 'kg',
        inputs: [
          { label: 'First', unit: 'ft', at: first },
          { label: 'Second', unit: 'degC', at: second },
        ],
        rows,
      })),
  );

/** The same with numbers that rise, or stay, along both inputs. */
export const risingCharts: fc.Arbitrary<Chart> = chartsWithTwoInputs.map((chart) => {
  const rows = chart.rows!.map((row) => [...row].map(Math.abs));
  for (const [i, row] of rows.entries())
    for (const j of row.keys()) row[j]! += Math.max(rows[i - 1]?.[j] ?? 0, row[j - 1] ?? 0);
  return { ...chart, rows };
});

/** Charts with a share of the way along each of their inputs. */
export const anyChart = fc.oneof(chartsWithOneInput, chartsWithTwoInputs);
export const share = fc.double({ min: 0, max: 1, noNaN: true });

/** A value inside an input, at a share of its span. */
export function along(at: readonly number[], part: number): number {
  const [first, last] = [at[0]!, at[at.length - 1]!];
  return Math.min(last, first + part * (last - first));
}
