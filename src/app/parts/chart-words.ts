/** What a chart says, in words. */
import { chartStep, chartValue, sayChartNumber } from '../../day/chart.ts';
import { uncapitalised } from '../../deck/quoting.ts';
import { sayList, sayNumber, unitSuffix } from '../../deck/say.ts';
import type { Chart, ChartInput } from '../../deck/types.ts';

/** "Temperature, °C" */
export function axisWords({ label, unit }: Pick<ChartInput, 'label' | 'unit'>): string {
  const suffix = unitSuffix({ unit }).trim();
  return suffix === '' ? label : `${label}, ${suffix}`;
}

/** "Vertical lift by pressure altitude and temperature" */
export const chartName = ({ label, inputs }: Chart): string =>
  `${label} by ${sayList(inputs.map((input) => uncapitalised(input.label)))}`;

/** "From 7,300 to 9,000 kg, for pressure altitude 0 to 3,000 ft and temperature −10 to 45 °C; it falls with temperature." */
export function sayExtent(chart: Chart): string {
  const numbers = chart.values ?? chart.rows!.flat();
  const span = (lo: number, hi: number, unit: Chart['unit']): string =>
    `${sayNumber(lo)} to ${sayNumber(hi)}${unitSuffix({ unit })}`;
  const inputs = chart.inputs.map(
    ({ label, unit, at }) => `${uncapitalised(label)} ${span(at[0]!, at[at.length - 1]!, unit)}`,
  );
  const ways = (['rising', 'falling'] as const).flatMap((way) => {
    const named = chart.inputs.filter(({ trend }) => trend === way);
    const names = sayList(named.map(({ label }) => uncapitalised(label)));
    return named.length > 0 ? [`${way === 'rising' ? 'rises' : 'falls'} with ${names}`] : [];
  });
  const trend = ways.length > 0 ? `; it ${sayList(ways)}` : '';
  return `From ${span(Math.min(...numbers), Math.max(...numbers), chart.unit)}, for ${sayList(inputs)}${trend}.`;
}

export interface SaidReading {
  readonly ok: boolean;
  readonly text: string;
}

/** A value that was read, "8,425 kg", to a step or as fine as the chart's own numbers. */
export function sayRead(value: number, chart: Chart, step = chartStep(chart)): string {
  return sayChartNumber(Number((Math.round(value / step) * step).toPrecision(12)), step, chart.unit);
}

/** "At pressure altitude 300 ft and temperature 30 °C: 8,425 kg.", or why there is no value. */
export function sayReading(chart: Chart, at: readonly number[], step?: number): SaidReading {
  const read = chartValue(chart, at);
  if (!read.ok) return { ok: false, text: `No value today: ${read.why}.` };
  const inputs = chart.inputs.map(
    ({ label, unit }, index) => `${uncapitalised(label)} ${sayChartNumber(at[index]!, 1, unit)}`,
  );
  return { ok: true, text: `At ${sayList(inputs)}: ${sayRead(read.value, chart, step)}.` };
}
