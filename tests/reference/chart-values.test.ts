/**
 * Charts read by another program: `chart-values.json` holds what SciPy's `RegularGridInterpolator`
 * makes of random charts, 12 places each. Its source stands in it.
 */
import { describe, expect, it } from 'vitest';
import { chartValue } from '../../src/day/chart.ts';
import type { Chart } from '../../src/deck/types.ts';
import reference from './chart-values.json' with { type: 'json' };

const chartOf = ({ at, numbers }: (typeof reference.charts)[number]): Chart => ({
  id: 'reference',
  label: 'Reference',
  unit: 'kg',
  inputs: at.map((values, index) => ({ label: `Input ${index + 1}`, unit: 'ft', at: values })),
  ...(at.length === 2 ? { rows: numbers as number[][] } : { values: numbers as number[] }),
});

describe(`a chart is read as by ${reference.source}`, () => {
  it.each(reference.charts.map((one, index) => [index + 1, one] as const))('chart %d', (_, one) => {
    for (const { inputs, value } of one.points) {
      const result = chartValue(chartOf(one), inputs);
      expect(result.ok && Math.abs(result.value - value)).toBeLessThanOrEqual(1e-9 * Math.abs(value) + 1e-9);
    }
  });
});
