/** Where the last calls and their band stand in a picture of a word's size. */
import type { Band } from '../../deck/types.ts';

export interface SparkLayout {
  readonly adequate: { readonly y: number; readonly height: number };
  readonly desired: { readonly y: number; readonly height: number };
  readonly targetY: number;
  /** `beyond` is 1 above the picture, -1 below it, 0 inside. */
  readonly points: readonly { readonly x: number; readonly y: number; readonly beyond: -1 | 0 | 1 }[];
  readonly line: string;
}

/** How far beyond the adequate stretch the picture reaches, as a share of that stretch. */
const margin = 0.5;

export function layoutSpark(
  calls: readonly number[],
  band: Band,
  widthPx: number,
  heightPx: number,
): SparkLayout {
  const width = band.adequate[1] - band.adequate[0] || 1;
  const [from, to] = [band.adequate[0] - width * margin, band.adequate[1] + width * margin];
  const pad = 5;
  const yOf = (value: number): number =>
    pad + (1 - (Math.min(Math.max(value, from), to) - from) / (to - from)) * (heightPx - 2 * pad);
  const stretch = ([lo, hi]: readonly [number, number]): { y: number; height: number } => ({
    y: yOf(hi),
    height: Math.max(1, yOf(lo) - yOf(hi)),
  });
  const stepPx = calls.length > 1 ? (widthPx - 2 * pad) / (calls.length - 1) : 0;
  const points = calls.map((call, i) => ({
    x: calls.length > 1 ? pad + i * stepPx : widthPx / 2,
    y: yOf(call),
    beyond: call > to ? (1 as const) : call < from ? (-1 as const) : (0 as const),
  }));
  return {
    adequate: stretch(band.adequate),
    desired: stretch(band.desired),
    targetY: yOf(band.target),
    points,
    line: points.map((p, i) => `${i === 0 ? 'M' : 'L'}${p.x.toFixed(1)} ${p.y.toFixed(1)}`).join(''),
  };
}
