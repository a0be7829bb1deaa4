/** A quantity over the time of a pass, against the bands of the gates it went through. */
import type { Trace } from '../../motion/types.ts';
import { roundStep } from './gauge-geometry.ts';

export interface TimeScale {
  readonly widthPx: number;
  /** Of the plot: what stands before it is for the numbers of the scale. */
  readonly fromPx: number;
  readonly toPx: number;
  xOf(tMs: number): number;
}

/** Shared by all charts of a pass, so that what happened at once stands under each other. */
export function timeScale(endMs: number, widthPx: number, beforePx: number, afterPx: number): TimeScale {
  const [fromPx, toPx] = [beforePx, Math.max(beforePx + 1, widthPx - afterPx)];
  const span = Math.max(1, endMs);
  return {
    widthPx,
    fromPx,
    toPx,
    xOf: (tMs) => fromPx + (Math.min(span, Math.max(0, tMs)) / span) * (toPx - fromPx),
  };
}

/** Round times for the axis, at least so far apart. Milliseconds. */
export function timeTicks(endMs: number, scale: TimeScale, leastPx: number): number[] {
  const leastS = (leastPx / (scale.toPx - scale.fromPx)) * (endMs / 1000);
  const stepS = [5, 10, 15, 20, 30, 60, 120, 300, 600].find((step) => step >= leastS) ?? 600;
  const count = Math.floor(endMs / 1000 / stepS + 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => i * stepS * 1000);
}

/** Which of some labels can be written, each so wide, without touching: the first and last before those between. */
export function fittingLabels(xs: readonly number[], widthPx: number): boolean[] {
  const shown = xs.map(() => false);
  const placed: number[] = [];
  const order = xs.map((_, i) => i).sort((a, b) => rank(a) - rank(b) || a - b);
  function rank(i: number): number {
    return i === 0 ? 0 : i === xs.length - 1 ? 1 : 2;
  }
  for (const i of order)
    if (placed.every((x) => Math.abs(x - xs[i]!) >= widthPx)) {
      placed.push(xs[i]!);
      shown[i] = true;
    }
  return shown;
}

interface Stretch {
  readonly y: number;
  readonly heightPx: number;
}

export interface ChartBand {
  readonly gate: string;
  /** Of the gate, and of the band: where what comes in with the gate is there. */
  readonly gateX: number;
  readonly x: number;
  /** Of the value that was graded. */
  readonly y: number;
  readonly adequate: Stretch;
  readonly desired: Stretch;
  readonly targetY: number;
  readonly floorY: number | null;
  readonly ceilingY: number | null;
}

export interface ChartAction {
  readonly x: number;
  readonly raises: boolean;
}

export interface StripLayout {
  readonly line: string;
  readonly bands: readonly ChartBand[];
  /** Where the pilot did something to the quantity, in the lane under the plot. */
  readonly actions: readonly ChartAction[];
  readonly ticks: readonly { readonly value: number; readonly y: number }[];
  readonly lo: number;
  readonly hi: number;
}

export interface StripWanted {
  readonly trace: Trace & { readonly raises: readonly boolean[] };
  readonly time: TimeScale;
  readonly topPx: number;
  readonly bottomPx: number;
  /** The precision the quantity is called in: a line that hardly moved is not blown up to less. */
  readonly step?: number;
}

/** The least that a plot spans, in steps. */
const leastSteps = 8;
/** Air above and below the highest and the lowest, as a share of what is between. */
const airShare = 0.08;

/** @param wanted.topPx, wanted.bottomPx upper and lower edge of the plot. */
export function layoutStrip({ trace, time, topPx, bottomPx, step = 0 }: StripWanted): StripLayout {
  const values = trace.stretches.flat().map(({ value }) => value);
  const bounds = trace.bands.flatMap(({ band, value }) => [...band.adequate, value]);
  const all = [...values, ...bounds];
  const [least, greatest] = [Math.min(...all), Math.max(...all)];
  const [low, high] = all.length === 0 ? [0, 1] : [least, greatest];
  const span = high - low;
  const air = Math.max((span || 1) * airShare, (leastSteps * step - span) / 2);
  const [lo, hi] = [low - air, high + air];
  const yOf = (value: number): number =>
    bottomPx - ((Math.min(hi, Math.max(lo, value)) - lo) / (hi - lo)) * (bottomPx - topPx);
  const stretch = ([from, to]: readonly [number, number]): Stretch => ({
    y: yOf(to),
    heightPx: Math.max(2, yOf(from) - yOf(to)),
  });
  const inside = (value: number | undefined): number | null =>
    value === undefined || value < lo || value > hi ? null : yOf(value);
  return {
    lo,
    hi,
    line: trace.stretches.map((points) => lineOf(points, time, yOf)).join(''),
    bands: trace.bands.map(({ gate, tMs, thereMs, value, band }) => ({
      gate,
      gateX: time.xOf(tMs),
      x: time.xOf(thereMs),
      y: yOf(value),
      adequate: stretch(band.adequate),
      desired: stretch(band.desired),
      targetY: yOf(band.target),
      floorY: inside(band.floor),
      ceilingY: inside(band.ceiling),
    })),
    actions: trace.actions.map(({ fromMs }, i) => ({
      x: time.xOf(fromMs),
      raises: trace.raises[i] ?? false,
    })),
    ticks: ticksBetween(lo, hi, bottomPx - topPx).map((value) => ({ value, y: yOf(value) })),
  };
}

/** Points closer than half a pixel would say nothing. */
const leastPx = 0.5;

function lineOf(points: Trace['stretches'][number], time: TimeScale, yOf: (value: number) => number): string {
  let path = '';
  let lastX = -Infinity;
  points.forEach(({ tMs, value }, i) => {
    const x = time.xOf(tMs);
    if (path !== '' && x - lastX < leastPx && i < points.length - 1) return;
    path += `${path === '' ? 'M' : 'L'}${x.toFixed(1)} ${yOf(value).toFixed(1)}`;
    lastX = x;
  });
  return path;
}

/** Between two numbers of the scale. */
const leastTickPx = 19;

/** A few round numbers. */
function ticksBetween(lo: number, hi: number, heightPx: number): number[] {
  const step = roundStep(((hi - lo) * leastTickPx) / Math.max(leastTickPx, heightPx));
  const first = Math.ceil(lo / step - 1e-9);
  const last = Math.floor(hi / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
}
