/** Where a band, its numbers and a call stand on a strip. */
import type { Band } from '../../deck/types.ts';
import { spread } from './spread.ts';
import { textWidthPx } from './text-width.ts';

export interface BandStripWanted {
  readonly band: Band;
  readonly value: number | null;
  readonly others: readonly number[];
  readonly widthPx: number;
  readonly labelSizePx: number;
  /** How a number is written. */
  readonly write: (value: number) => string;
}

export interface BandLabel {
  readonly kind: 'target' | 'floor' | 'ceiling' | 'desired' | 'adequate';
  readonly text: string;
  /** Middle of the label. */
  readonly x: number;
  /** Where on the strip it belongs. */
  readonly tickX: number;
  /** 0 right under the strip, 1 below that. */
  readonly row: 0 | 1;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A call beyond the strip's ends stands at the end, with an arrow that says so. */
export type Beyond = 'below' | 'above' | null;

export interface BandStripLayout {
  readonly desired: Stretch;
  readonly adequate: Stretch;
  readonly targetX: number;
  readonly floorX: number | null;
  readonly ceilingX: number | null;
  /** Where the strip is cut short. */
  readonly breaks: readonly number[];
  readonly labels: readonly BandLabel[];
  readonly rows: 1 | 2;
  readonly call: {
    readonly x: number;
    readonly labelX: number;
    readonly text: string;
    readonly beyond: Beyond;
  } | null;
  readonly others: readonly number[];
}

const inset = 10;
const leastStretchPx = 8;
const gap = 8;

type Edge = Omit<BandLabel, 'x' | 'row'>;

function edgesOf(wanted: BandStripWanted, toX: (value: number) => number): readonly Edge[] {
  const { band, write } = wanted;
  const edges = new Map<number, Edge>();
  const put = (value: number, kind: Edge['kind'], text = write(value)): void => {
    if (!edges.has(value)) edges.set(value, { kind, text, tickX: toX(value) });
  };
  // The first to claim a value names it.
  if (band.floor !== undefined) put(band.floor, 'floor', `${write(band.floor)} floor`);
  if (band.ceiling !== undefined) put(band.ceiling, 'ceiling', `${write(band.ceiling)} ceiling`);
  put(band.target, 'target');
  for (const value of band.desired) put(value, 'desired');
  for (const value of band.adequate) put(value, 'adequate');
  return [...edges.values()].sort((one, other) => one.tickX - other.tickX);
}

/** One row if all fit without wandering off; else the adequate edges, then the limits, go to a second. */
function rowsOf(edges: readonly Edge[], wanted: BandStripWanted): readonly BandLabel[] {
  const widthOf = (edge: Edge): number => textWidthPx(edge.text, wanted.labelSizePx);
  const row = (some: readonly Edge[]): readonly number[] | null =>
    spread(
      some.map((edge) => ({ at: edge.tickX, width: widthOf(edge) })),
      0,
      wanted.widthPx,
      gap,
    );
  const near = (some: readonly Edge[], xs: readonly number[] | null, allowedPx: number): boolean =>
    xs !== null && some.every((edge, i) => Math.abs(xs[i]! - edge.tickX) <= allowedPx);
  const splits: readonly (readonly Edge['kind'][])[] = [
    [],
    ['adequate'],
    ['floor', 'ceiling'],
    ['adequate', 'floor', 'ceiling'],
    ['desired', 'adequate'],
  ];
  for (const allowedPx of [14, 26, Infinity])
    for (const lower of splits) {
      const first = edges.filter((edge) => !lower.includes(edge.kind));
      const second = edges.filter((edge) => lower.includes(edge.kind));
      const [xs, ys] = [row(first), row(second)];
      if (!near(first, xs, allowedPx) || !near(second, ys, allowedPx)) continue;
      return [
        ...first.map((edge, i) => ({ ...edge, x: xs![i]!, row: 0 as const })),
        ...second.map((edge, i) => ({ ...edge, x: ys![i]!, row: 1 as const })),
      ];
    }
  // Not even two rows hold them: the target and the limits matter most.
  return edges
    .filter((edge) => edge.kind === 'target')
    .map((edge) => ({ ...edge, x: edge.tickX, row: 0 as const }));
}

interface Axis {
  /** Value to drawn units; rises with the value. */
  readonly at: (value: number) => number;
  /** Values between which the strip is drawn shorter than it is. */
  readonly breaks: readonly (readonly [number, number])[];
}

/** A limit further off than this many widths of the adequate stretch is brought nearer, with a break. */
const farLimit = 0.6;
const nearedLimit = 0.42;

function axisOf(band: Band): Axis {
  const lo = Math.min(band.adequate[0], band.target);
  const hi = Math.max(band.adequate[1], band.target);
  const width = hi - lo || Math.abs(band.target) || 1;
  const factor = (distance: number): number =>
    distance > farLimit * width ? (nearedLimit * width) / distance : 1;
  const below = band.floor === undefined ? 1 : factor(lo - band.floor);
  const above = band.ceiling === undefined ? 1 : factor(band.ceiling - hi);
  return {
    at: (value) => (value < lo ? lo - (lo - value) * below : value > hi ? hi + (value - hi) * above : value),
    breaks: [
      ...(below < 1 ? [[band.floor!, lo] as const] : []),
      ...(above < 1 ? [[hi, band.ceiling!] as const] : []),
    ],
  };
}

export function layoutBandStrip(wanted: BandStripWanted): BandStripLayout {
  const { band, value, widthPx } = wanted;
  const axis = axisOf(band);
  const marks = [...band.adequate, band.target, band.floor ?? band.target, band.ceiling ?? band.target];
  const drawn = marks.map(axis.at);
  const [lowest, highest] = [Math.min(...drawn), Math.max(...drawn)];
  const span = highest - lowest || Math.abs(band.target) || 1;
  // Calls a little beyond the band widen the strip; a wild one must not squeeze the band to a line.
  const calls = [value, ...wanted.others].filter((call): call is number => call !== null).map(axis.at);
  const reach = span * 0.75;
  const near = calls.filter((call) => call >= lowest - reach && call <= highest + reach);
  const from = Math.min(lowest - span * 0.18, ...near.map((call) => call - span * 0.06));
  const to = Math.max(highest + span * 0.18, ...near.map((call) => call + span * 0.06));
  const toX = (at: number): number =>
    inset + ((Math.min(Math.max(axis.at(at), from), to) - from) / (to - from)) * (widthPx - 2 * inset);
  // "Exactly 10" is a stretch without width: it still has to be seen.
  const stretch = ([lo, hi]: readonly [number, number], within?: Stretch): Stretch => {
    const width = Math.max(leastStretchPx, toX(hi) - toX(lo));
    const middle = (toX(lo) + toX(hi)) / 2;
    const start = within
      ? Math.min(Math.max(middle - width / 2, within.from), within.to - width)
      : middle - width / 2;
    return { from: start, to: start + width };
  };
  const adequate = stretch(band.adequate);
  const labels = rowsOf(edgesOf(wanted, toX), wanted);
  const text = value === null ? '' : wanted.write(value);
  const half = textWidthPx(text, wanted.labelSizePx + 3) / 2;
  return {
    desired: stretch(band.desired, adequate),
    adequate,
    targetX: toX(band.target),
    floorX: band.floor === undefined ? null : toX(band.floor),
    ceilingX: band.ceiling === undefined ? null : toX(band.ceiling),
    breaks: axis.breaks.map(([one, other]) => (toX(one) + toX(other)) / 2),
    labels,
    rows: labels.some((label) => label.row === 1) ? 2 : 1,
    call:
      value === null
        ? null
        : {
            x: toX(value),
            labelX: Math.min(Math.max(toX(value), half), widthPx - half),
            text,
            beyond: axis.at(value) < from ? 'below' : axis.at(value) > to ? 'above' : null,
          },
    others: wanted.others.map(toX),
  };
}
