/** A chart as lines: the first input across, the value up, a line for each value of the second input. */
import { chartValue } from '../../day/chart.ts';
import { sayNumber } from '../../deck/say.ts';
import type { Chart } from '../../deck/types.ts';
import { sayRead } from './chart-words.ts';
import { roundStep } from './gauge-geometry.ts';
import { textWidthPx } from './text-width.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface PlotTick {
  readonly label: string;
  /** Across for the first input, down for the value. */
  readonly px: number;
}

export interface ChartLine {
  /** The second input's value; empty for a chart of one input. */
  readonly label: string;
  readonly points: readonly Point[];
  /** Where the label's middle stands, beside the line's end or as near as there is room. */
  readonly labelY: number;
}

export interface ChartReading {
  /** On the chart, to be led to both axes. */
  readonly at: Point;
  /** The line of the day's second input; empty where it is one of those drawn. */
  readonly line: readonly Point[];
  readonly label: string;
  /** The label's box. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

export interface ChartPlotLayout {
  /** Edges of the plot. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly xTicks: readonly PlotTick[];
  readonly yTicks: readonly PlotTick[];
  readonly lines: readonly ChartLine[];
  /** Null where the day's inputs aren't known or lie outside the chart. */
  readonly reading: ChartReading | null;
}

export interface ChartPlotWanted {
  readonly chart: Chart;
  /** The day's inputs in the chart's order; null when there are none. */
  readonly at: readonly number[] | null;
  /** To which the day's value is written; as fine as the chart's own numbers when left out. */
  readonly step?: number | undefined;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Of the type. */
  readonly sizePx: number;
}

/** More lines than these run into each other. */
const mostLines = 7;
const lineGapPx = 15;
const leastTickPx = { x: 22, y: 30 };

export function layoutChart({
  chart,
  at,
  step,
  widthPx,
  heightPx,
  sizePx,
}: ChartPlotWanted): ChartPlotLayout {
  const [first, second] = chart.inputs;
  const drawn = second ? spreadOver(second.at, mostLines) : [];
  const numbers = chart.values ?? chart.rows!.flat();
  const [lo, hi] = roomFor(Math.min(...numbers), Math.max(...numbers));
  const [xLo, xHi] = [first!.at[0]!, first!.at[first!.at.length - 1]!];

  const yLabels = roundValues(lo, hi, ((hi - lo) * leastTickPx.y) / heightPx);
  const labelsOf = (values: readonly number[]): string[] => values.map((value) => sayNumber(value));
  const lineLabels = second ? drawn.map((value) => sayNumber(value)) : [];
  const widest = (labels: readonly string[]): number =>
    Math.max(0, ...labels.map((label) => textWidthPx(label, sizePx)));
  const xWidest = widest(labelsOf(roundValues(xLo, xHi, (xHi - xLo) / 4)));
  const left = Math.max(xWidest / 2, widest(labelsOf(yLabels)) + 10);
  const right = Math.max(left + 60, widthPx - Math.max(xWidest / 2, second ? widest(lineLabels) + 12 : 8));
  const [top, bottom] = [sizePx / 2 + 2, heightPx - sizePx - 14];

  const xOf = (value: number): number => left + ((value - xLo) / (xHi - xLo)) * (right - left);
  const yOf = (value: number): number => bottom - ((value - lo) / (hi - lo)) * (bottom - top);
  const lineAt = (others: readonly number[]): Point[] =>
    first!.at.flatMap((value) => {
      const read = chartValue(chart, [value, ...others]);
      return read.ok ? [{ x: xOf(value), y: yOf(read.value) }] : [];
    });

  const points = second ? drawn.map((value) => lineAt([value])) : [lineAt([])];
  const labelYs = apart(
    points.map((line) => line[line.length - 1]!.y),
    lineGapPx,
    top,
    bottom,
  );
  const lines = points.map((line, i) => ({ label: lineLabels[i] ?? '', points: line, labelY: labelYs[i]! }));
  const xTickValues = roundValues(xLo, xHi, ((xHi - xLo) * (leastTickPx.x + xWidest)) / (right - left));
  return {
    left,
    right,
    top,
    bottom,
    xTicks: xTickValues.map((value) => ({ label: sayNumber(value), px: xOf(value) })),
    yTicks: yLabels.map((value) => ({ label: sayNumber(value), px: yOf(value) })),
    lines,
    reading: readingOf(),
  };

  function readingOf(): ChartReading | null {
    const read = at && chartValue(chart, at);
    if (!read?.ok) return null;
    const point = { x: xOf(at![0]!), y: yOf(read.value) };
    const label = sayRead(read.value, chart, step);
    const size = { width: textWidthPx(label, sizePx + 2) + 12, height: sizePx + 9 };
    const own = second && !drawn.includes(at![1]!) ? lineAt([at![1]!]) : [];
    const bounds = { left, right, top: 0, bottom };
    return { at: point, line: own, label, box: freeBox(point, size, bounds, [...points, own]) };
  }
}

/** Of a long list as many as can be drawn, evenly, with the first and the last. */
export function spreadOver(values: readonly number[], most: number): readonly number[] {
  if (values.length <= most) return values;
  return Array.from({ length: most }, (_, i) => values[Math.round((i * (values.length - 1)) / (most - 1))]!);
}

/** A chart of one and the same value still needs a height. */
function roomFor(least: number, greatest: number): readonly [number, number] {
  const span = greatest - least || Math.max(1, Math.abs(greatest) * 0.1);
  const air = span * 0.06;
  return [least - air, greatest + air];
}

/** Multiples of a round number, at least so far apart. */
function roundValues(lo: number, hi: number, atLeast: number): readonly number[] {
  const step = roundStep(atLeast);
  const [from, to] = [Math.ceil(lo / step - 1e-9), Math.floor(hi / step + 1e-9)];
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) =>
    Number(((from + i) * step).toPrecision(12)),
  );
}

/** The same heights, moved as little as it takes to be a gap apart; in the order given. */
export function apart(ys: readonly number[], gapPx: number, top: number, bottom: number): readonly number[] {
  const order = ys.map((_, i) => i).sort((one, other) => ys[one]! - ys[other]!);
  const placed = [...ys];
  let least = top;
  for (const i of order) {
    placed[i] = Math.max(placed[i]!, least);
    least = placed[i]! + gapPx;
  }
  let most = bottom;
  for (const i of [...order].reverse()) {
    placed[i] = Math.min(placed[i]!, most);
    most = placed[i]! - gapPx;
  }
  return placed;
}

/** Beside the point, where it covers least of the lines. */
function freeBox(
  { x, y }: Point,
  { width, height }: { readonly width: number; readonly height: number },
  bounds: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
  lines: readonly (readonly Point[])[],
): ChartReading['box'] {
  const away = 10;
  const places = [
    { x: x + away, y: y - away - height },
    { x: x + away, y: y + away },
    { x: x - away - width, y: y - away - height },
    { x: x - away - width, y: y + away },
  ].map((place) => ({
    x: Math.min(Math.max(place.x, bounds.left + 2), bounds.right - width - 2),
    y: Math.min(Math.max(place.y, bounds.top), bounds.bottom - height - 2),
    width,
    height,
  }));
  const ink = lines.flatMap(sampled);
  const covered = (box: (typeof places)[number]): number =>
    ink.filter((point) => inside(point, box)).length + (inside({ x, y }, box) ? 1000 : 0);
  const costs = places.map(covered);
  return places[costs.indexOf(Math.min(...costs))]!;
}

const inside = ({ x, y }: Point, box: ChartReading['box']): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

function sampled(line: readonly Point[]): Point[] {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i]!;
    const count = Math.max(1, Math.round(Math.hypot(to.x - from.x, to.y - from.y) / 4));
    return Array.from({ length: count }, (_, n) => ({
      x: from.x + ((to.x - from.x) * n) / count,
      y: from.y + ((to.y - from.y) * n) / count,
    }));
  });
}
