/**
 * The heights flown, gate by gate, along the way. Both axes are compressed: a leg of miles gets more
 * width than one of a wingspan, but not a thousand times as much, and height grows as its root, so that
 * the last hundred feet can be read beside the first thousand.
 */
import type { Band, Gate } from '../../deck/types.ts';
import type { Point } from './flown-path.ts';
import { textWidthPx } from './text-width.ts';

export interface ProfileWanted {
  readonly gates: readonly Pick<Gate, 'id' | 'position'>[];
  /** Gate id -> the band of height there. Gates without one are passed over. */
  readonly heights: ReadonlyMap<string, Band>;
  /** Gate id -> the number as written. */
  readonly written: ReadonlyMap<string, string>;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly labelSizePx: number;
}

export interface ProfileGate extends Point {
  readonly id: string;
  readonly number: number;
  readonly label: { readonly text: string; readonly x: number; readonly y: number } | null;
  readonly floorY: number | null;
}

export interface ProfileLayout {
  readonly gates: readonly ProfileGate[];
  readonly line: string;
  /** Closed shapes between the lower and the upper bounds. */
  readonly desired: string;
  readonly adequate: string;
  readonly baseY: number;
  /** Of every gate, also of those without a height. */
  readonly xs: readonly number[];
  /** Where a height stands. */
  readonly yOf: (height: number) => number;
  /** Where the gates' numbers stand, under the base line. */
  readonly numbersY: number;
  readonly inset: number;
}

/** A leg is drawn as the power of its length, and never less wide than a share of the widest. */
const legPower = 0.3;
const heightPower = 0.6;

function legLengthsFt(gates: ProfileWanted['gates']): readonly number[] {
  return gates.slice(1).map((gate, i) => {
    const before = gates[i]!.position;
    return Math.hypot(gate.position.aheadFt - before.aheadFt, gate.position.rightFt - before.rightFt);
  });
}

/** Widths that add up to the room there is, each at least `leastPx` if all can be. */
function shareOut(weights: readonly number[], roomPx: number, leastPx: number): readonly number[] {
  const floorPx = Math.min(leastPx, roomPx / Math.max(1, weights.length));
  const spare = roomPx - floorPx * weights.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0) || 1;
  return weights.map((weight) => floorPx + (weight / total) * spare);
}

const short = (value: number): string => String(Math.round(value * 10) / 10);

function ribbon(upper: readonly Point[], lower: readonly Point[]): string {
  const way = [...upper, ...[...lower].reverse()];
  return way.length < 3 ? '' : `M${way.map((p) => `${short(p.x)} ${short(p.y)}`).join('L')}Z`;
}

interface Written {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** Above its point if that is free, else below, else higher up. */
function labelY(
  x: number,
  width: number,
  pointY: number,
  size: number,
  lowestY: number,
  placed: readonly Written[],
): number {
  const clear = (y: number): boolean =>
    y <= lowestY &&
    placed.every(
      (other) => Math.abs(other.x - x) >= (other.width + width) / 2 + 3 || Math.abs(other.y - y) >= size + 1,
    );
  const tries = [-12, -12 - size, size + 12, -12 - 2 * size, 2 * size + 12, -12 - 3 * size];
  return pointY + (tries.find((offset) => clear(pointY + offset)) ?? tries[0]!);
}

export function layoutProfile(wanted: ProfileWanted): ProfileLayout {
  const size = wanted.labelSizePx;
  const inset = 16;
  const numbersY = wanted.heightPx - 6;
  const baseY = wanted.heightPx - size - 16;
  const top = size * 2 + 10;
  const widths = shareOut(
    legLengthsFt(wanted.gates).map((ft) => ft ** legPower),
    wanted.widthPx - 2 * inset,
    size * 1.7,
  );
  const xs = wanted.gates.map((_, i) => inset + widths.slice(0, i).reduce((sum, width) => sum + width, 0));
  const highest = Math.max(1, ...[...wanted.heights.values()].map((band) => band.adequate[1]));
  const yOf = (height: number): number =>
    baseY - (Math.max(0, height) / highest) ** heightPower * (baseY - top);
  const at = wanted.gates.flatMap((gate, i) => {
    const band = wanted.heights.get(gate.id);
    return band ? [{ gate, band, number: i + 1, x: xs[i]!, y: yOf(band.target) }] : [];
  });
  const edge = (of: 'desired' | 'adequate', end: 0 | 1): readonly Point[] =>
    at.map(({ band, x }) => ({ x, y: yOf(band[of][end]) }));
  const placed: Written[] = [];
  const gates = at.map(({ gate, band, number, x, y }): ProfileGate => {
    const text = wanted.written.get(gate.id);
    let label: ProfileGate['label'] = null;
    if (text !== undefined) {
      const width = textWidthPx(text, size);
      const middle = Math.min(Math.max(x, width / 2 + 1), wanted.widthPx - width / 2 - 1);
      const written = { x: middle, y: labelY(middle, width, y, size, baseY - size / 2, placed), width };
      placed.push(written);
      label = { text, x: written.x, y: written.y };
    }
    return { id: gate.id, number, x, y, label, floorY: band.floor === undefined ? null : yOf(band.floor) };
  });
  return {
    gates,
    line: at.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join(''),
    desired: ribbon(edge('desired', 1), edge('desired', 0)),
    adequate: ribbon(edge('adequate', 1), edge('adequate', 0)),
    baseY,
    xs,
    yOf,
    numbersY,
    inset,
  };
}
