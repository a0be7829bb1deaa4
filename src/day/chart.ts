/** Reads a chart: exactly at its break points, in straight lines between them, and never outside. */
import { uncapitalised } from '../deck/quoting.ts';
import { decimalsOf, sayNumber, unitSuffix } from '../deck/say.ts';
import type { Chart, ChartInput } from '../deck/types.ts';

export type ChartValue =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false;
      /** "temperature 52 °C; the chart ends at 45 °C" */
      readonly why: string;
      /** Which input lies outside, from 0. */
      readonly input: number;
    };

/**
 * The chart's value, in its unit. With one input by linear, with two by bilinear interpolation (Press et
 * al., Numerical Recipes, 3rd ed., 3.1 and 3.6.1), so it stays between the corners of its cell,
 * runs on across the borders of cells, and keeps every trend that the chart's own numbers have.
 * Outside of the first and last break points there is no value: a chart says nothing there.
 * @param inputs in the chart's order, in the units of its inputs; as many as it has.
 */
export function chartValue(chart: Chart, inputs: readonly number[]): ChartValue {
  if (inputs.length !== chart.inputs.length)
    throw new Error(`Chart “${chart.id}” has ${chart.inputs.length} inputs, not ${inputs.length}.`);
  for (const [index, input] of chart.inputs.entries()) {
    const why = whyOutside(input, inputs[index]!);
    if (why !== null) return { ok: false, why, input: index };
  }
  const [first, second] = chart.inputs;
  const across = placeIn(first!.at, inputs[0]!);
  if (!second)
    return { ok: true, value: between(chart.values![across.from]!, chart.values![across.to]!, across.share) };
  const within = placeIn(second.at, inputs[1]!);
  const inRow = (row: number): number => {
    const numbers = chart.rows![row]!;
    return between(numbers[within.from]!, numbers[within.to]!, within.share);
  };
  return { ok: true, value: between(inRow(across.from), inRow(across.to), across.share) };
}

/** The finest place among the chart's own numbers: a chart in steps of 50 kg is read to 1 kg, one in 0.5 to 0.1. */
export function chartStep({ values, rows }: Chart): number {
  const finest = Math.max(...(values ?? rows!.flat()).map(decimalsOf));
  return 10 ** -finest;
}

/** "28.5 °C", in the unit of an input or of the chart. */
export const sayChartNumber = (value: number, step: number, unit: Chart['unit']): string =>
  sayNumber(value, step) + unitSuffix({ unit });

function whyOutside({ label, unit, at }: ChartInput, value: number): string | null {
  const [first, last] = [at[0]!, at[at.length - 1]!];
  const hair = hairOf(at);
  if (value >= first - hair && value <= last + hair) return null;
  const name = uncapitalised(label);
  if (!Number.isFinite(value)) return `${name} has no value`;
  const say = (number: number): string => sayChartNumber(number, 1, unit);
  return value < first
    ? `${name} ${say(value)}; the chart begins at ${say(first)}`
    : `${name} ${say(value)}; the chart ends at ${say(last)}`;
}

/** What doubles add to a number that was worked out: 300.0000001 ft is still on a chart that ends at 300. */
const hairOf = (at: readonly number[]): number => 1e-9 * (at[at.length - 1]! - at[0]!);

interface Place {
  readonly from: number;
  readonly to: number;
  /** 0 at `from`, less than 1 at `to`. */
  readonly share: number;
}

/** By bisection. A break point is the start of its cell, the last one a cell of its own: shares of 0 are exact. */
function placeIn(at: readonly number[], value: number): Place {
  let [from, to] = [0, at.length - 1];
  if (value <= at[from]!) return { from, to: from, share: 0 };
  if (value >= at[to]!) return { from: to, to, share: 0 };
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (value < at[middle]!) to = middle;
    else from = middle;
  }
  return { from, to, share: (value - at[from]!) / (at[to]! - at[from]!) };
}

/** Rounding may not carry it past either end. */
function between(from: number, to: number, share: number): number {
  const value = from + (to - from) * share;
  return Math.min(Math.max(from, to), Math.max(Math.min(from, to), value));
}
