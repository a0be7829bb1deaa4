/** Charts: break points in order, a number for each of them, and the trend that was promised. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure } from '../quoting.ts';
import type { Chart, ChartInput } from '../types.ts';

export function* checkCharts(parts: DeckParts): Generator<Draft> {
  for (const chart of parts.charts) {
    const faults = [...checkChart(parts, chart)];
    yield* faults;
    if (faults.length === 0 && !parts.isBroken(chart)) yield* checkTrends(parts, chart);
  }
}

function* checkChart(parts: DeckParts, chart: Chart): Generator<Draft> {
  for (const input of chart.inputs) yield* checkBreakPoints(input, parts.pathOf(input, 'at'));
  // What a broken chart lacks may have been among the pieces taken out.
  if (!parts.isBroken(chart)) yield* checkCells(parts, chart);
}

/** The first pair out of order: a list written from the highest to the lowest has as many as it is long. */
function* checkBreakPoints({ at }: ChartInput, path: DocumentPath): Generator<Draft> {
  const index = at.findIndex((value, i) => i > 0 && value <= at[i - 1]!);
  if (index < 0) return;
  const [before, value] = [at[index - 1]!, at[index]!];
  yield {
    code: 'chart-not-ascending',
    message: `The values of a chart’s input go up, each above the one before, found ${sayFigure(value)} after ${sayFigure(before)}; ${value === before ? 'take one of the two out, with its numbers' : 'put them in order, with their numbers'}.`,
    path: [...path, index],
  };
}

function* checkCells(parts: DeckParts, chart: Chart): Generator<Draft> {
  const [first, second] = chart.inputs;
  const needed = second ? 'rows' : 'values';
  const other = second ? 'values' : 'rows';
  const count = second ? 'two inputs' : 'one input';
  const shape = second ? 'a list for each value of the first input' : 'one list of numbers';
  if (chart[other] !== undefined) {
    yield incomplete(
      `A chart with ${count} has its numbers in ${quoted(needed)}, found ${quoted(other)}; write ${shape} under ${quoted(needed)} instead.`,
      parts.pathOf(chart, other),
    );
    return;
  }
  const list = chart[needed];
  if (list === undefined) {
    yield incomplete(
      `A chart with ${count} needs its numbers in ${quoted(needed)}, it has none; add ${shape}.`,
      parts.pathOf(chart),
    );
    return;
  }
  const what = second ? 'a row' : 'a number';
  yield* ifIncomplete(first!, list.length, `${quoted(needed)} holds ${what}`, parts.pathOf(chart, needed));
  if (!second) return;
  for (const [index, row] of (chart.rows ?? []).entries())
    yield* ifIncomplete(second, row.length, 'Each row holds a number', parts.pathOf(chart, 'rows', index));
}

function* ifIncomplete(
  { label, at }: ChartInput,
  found: number,
  holds: string,
  path: DocumentPath,
): Generator<Draft> {
  const lacking = at.length - found;
  if (lacking === 0) return;
  yield incomplete(
    `${holds} for each of the ${at.length} values of ${quoted(label)}, found ${found}; ${lacking > 0 ? `add the ${lacking} missing` : `take ${-lacking} out`}.`,
    path,
  );
}

const incomplete = (message: string, path: DocumentPath): Draft => ({
  code: 'chart-incomplete',
  message,
  path,
});

/** Two neighbouring cells, the second further along an input; `beside` is the value of the other input. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly at: readonly [number, number];
  readonly beside: string;
  readonly path: DocumentPath;
}

function* checkTrends(parts: DeckParts, chart: Chart): Generator<Draft> {
  for (const [index, { label, trend }] of chart.inputs.entries()) {
    if (trend === undefined) continue;
    const sign = trend === 'rising' ? 1 : -1;
    const breaches = [...stepsAlong(parts, chart, index)].filter(({ from, to }) => sign * (to - from) < 0);
    const [breach, ...others] = breaches;
    if (!breach) continue;
    const more = others.length > 0 ? `, and ${others.length} more like it` : '';
    yield {
      code: 'chart-against-trend',
      message: `A chart said to be ${trend} with ${quoted(label)} must not ${trend === 'rising' ? 'fall' : 'rise'} as it rises, found ${sayFigure(breach.from)} at ${sayFigure(breach.at[0])} and ${sayFigure(breach.to)} at ${sayFigure(breach.at[1])}${breach.beside}${more}; correct one of the two or take “trend” away.`,
      path: breach.path,
    };
  }
}

function* stepsAlong(parts: DeckParts, chart: Chart, index: number): Generator<Step> {
  const [first, second] = chart.inputs;
  const { at } = chart.inputs[index]!;
  const lines = second ? (index === 0 ? second.at.length : first!.at.length) : 1;
  for (let line = 0; line < lines; line++)
    for (let i = 1; i < at.length; i++) {
      const cell = (place: number): readonly [string, ...number[]] =>
        !second ? ['values', place] : index === 0 ? ['rows', place, line] : ['rows', line, place];
      const path = parts.pathOf(chart, ...cell(i));
      const other = index === 0 ? second : first;
      yield {
        from: valueOf(chart, cell(i - 1)),
        to: valueOf(chart, cell(i)),
        at: [at[i - 1]!, at[i]!],
        beside: second && other ? `, with ${quoted(other.label)} at ${sayFigure(other.at[line]!)}` : '',
        path,
      };
    }
}

function valueOf({ values, rows }: Chart, [, place, within]: readonly [string, ...number[]]): number {
  return (within === undefined ? values?.[place!] : rows?.[place!]?.[within])!;
}
