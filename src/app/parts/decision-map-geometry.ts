/** The decision map as shapes: rectangles to fill, the lines between regions, and where each region's word stands. */
import type { DecisionMap } from '../../drill/types.ts';
import type { Interval } from '../../rules/types.ts';
import { textWidthPx } from './text-width.ts';

export interface MapSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface MapFill extends Rect {
  readonly outcome: number;
}

export interface MapLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export interface MapWord {
  readonly outcome: number;
  /** Of its middle. */
  readonly x: number;
  readonly y: number;
  /** The words, line by line; the outcome's letter where there is no room for them. */
  readonly lines: readonly string[];
  readonly isLetter: boolean;
  /** Of the plate under the words. */
  readonly width: number;
  readonly height: number;
}

export interface MapShapes {
  readonly fills: readonly MapFill[];
  readonly lines: readonly MapLine[];
  readonly words: readonly MapWord[];
}

export const wordSizePx = 13;
export const wordLinePx = 16;
const paddingPx = 4;
/** Half the side of the square that a mark needs for itself. */
const markPx = 13;

/** Where a value stands along an axis of a length, from the low end. */
export const along = (value: number, { lo, hi }: Interval, lengthPx: number): number =>
  hi > lo ? ((value - lo) / (hi - lo)) * lengthPx : lengthPx / 2;

/** A letter for each outcome: "A", "B". */
export const letterOf = (outcome: number): string => String.fromCharCode(65 + (outcome % 26));

/** The finest grid of a map: which outcome holds in each rectangle between neighbouring edges. */
interface Grid {
  /** Pixels from the left and from the top, ascending, ends included. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly at: (column: number, row: number) => number;
}

/**
 * @param words the phrases of each outcome's word; a line is broken only between them.
 * @param marks in pixels: words keep off them.
 */
export function mapShapes(
  map: DecisionMap,
  size: MapSize,
  words: readonly (readonly string[])[],
  marks: readonly { readonly x: number; readonly y: number }[] = [],
): MapShapes {
  const fills = map.cells
    .map(({ x, y, outcome }) => ({ ...rectOf(map, size, x, y), outcome }))
    // Single values are lines without width: the side that they belong to is said in words.
    .filter(({ width, height }) => width > 0 && height > 0);
  const grid = gridOf(fills);
  return { fills, lines: borders(grid), words: placedWords(grid, words, marks) };
}

function rectOf({ xRange, yRange }: DecisionMap, size: MapSize, x: Interval, y: Interval): Rect {
  const left = along(x.lo, xRange, size.widthPx);
  const top = size.heightPx - along(y.hi, yRange, size.heightPx);
  return {
    x: left,
    y: top,
    width: along(x.hi, xRange, size.widthPx) - left,
    height: size.heightPx - along(y.lo, yRange, size.heightPx) - top,
  };
}

function gridOf(fills: readonly MapFill[]): Grid {
  const xs = ends(fills.flatMap(({ x, width }) => [x, x + width]));
  const ys = ends(fills.flatMap(({ y, height }) => [y, y + height]));
  const columns = xs.length - 1;
  const outcomes: number[] = Array.from({ length: Math.max(0, columns * (ys.length - 1)) }, () => -1);
  for (const { x, y, width, height, outcome } of fills)
    for (let row = indexOf(ys, y); row < indexOf(ys, y + height); row++)
      for (let column = indexOf(xs, x); column < indexOf(xs, x + width); column++)
        outcomes[row * columns + column] = outcome;
  return { xs, ys, at: (column, row) => outcomes[row * columns + column] ?? -1 };
}

/** Sums of floats that mean the same end differ in their last digits. */
const samePx = 1e-6;

function ends(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((value, i) => i === 0 || value - sorted[i - 1]! > samePx);
}

const indexOf = (list: readonly number[], value: number): number =>
  list.findIndex((one) => Math.abs(one - value) <= 2 * samePx);

/** Where two neighbours ask for different things. */
function borders({ xs, ys, at }: Grid): MapLine[] {
  const lines: MapLine[] = [];
  for (let column = 1; column < xs.length - 1; column++)
    for (let row = 0; row < ys.length - 1; row++)
      if (at(column - 1, row) !== at(column, row))
        lines.push({ x1: xs[column]!, x2: xs[column]!, y1: ys[row]!, y2: ys[row + 1]! });
  for (let row = 1; row < ys.length - 1; row++)
    for (let column = 0; column < xs.length - 1; column++)
      if (at(column, row - 1) !== at(column, row))
        lines.push({ x1: xs[column]!, x2: xs[column + 1]!, y1: ys[row]!, y2: ys[row]! });
  return lines;
}

interface Block {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Each connected region gets its word where it has most room for it, or its letter, or nothing when it is a sliver. */
function placedWords(
  grid: Grid,
  words: readonly (readonly string[])[],
  marks: readonly { readonly x: number; readonly y: number }[],
): MapWord[] {
  return regionsOf(grid).flatMap(({ outcome, blocks }): MapWord[] => {
    const phrases = words[outcome] ?? [];
    const letter = [letterOf(outcome)];
    for (const lines of [...layouts(phrases), oneWordALine(phrases), letter]) {
      if (lines.length === 0) continue;
      const width = Math.max(...lines.map((line) => textWidthPx(line, wordSizePx))) + 2 * paddingPx;
      const height = lines.length * wordLinePx + 2;
      const spots = blocks.flatMap((block) => spotIn(block, width, height, marks) ?? []);
      const best = spots.sort((one, other) => other.room - one.room)[0];
      if (best) return [{ outcome, x: best.x, y: best.y, lines, isLetter: lines === letter, width, height }];
    }
    return [];
  });
}

/** The phrases on one line, on two, and so on to one line each. */
function layouts(phrases: readonly string[]): string[][] {
  return Array.from({ length: phrases.length }, (_, i) => {
    const perLine = Math.ceil(phrases.length / (i + 1));
    const lines: string[] = [];
    for (let from = 0; from < phrases.length; from += perLine) {
      const isLast = from + perLine >= phrases.length;
      lines.push(phrases.slice(from, from + perLine).join(', ') + (isLast ? '' : ','));
    }
    return lines;
  });
}

/** For a narrow column. */
const oneWordALine = (phrases: readonly string[]): string[] => phrases.join(', ').split(' ').filter(Boolean);

/** The middle of a block, or the nearest place in it that keeps off the marks; null when there is none. */
function spotIn(
  { left, right, top, bottom }: Block,
  width: number,
  height: number,
  marks: readonly { readonly x: number; readonly y: number }[],
): { x: number; y: number; room: number } | null {
  const slackX = right - left - width;
  const slackY = bottom - top - height;
  if (slackX < 0 || slackY < 0) return null;
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const shares = [0, -0.5, 0.5];
  for (const dy of shares)
    for (const dx of shares) {
      const x = middle.x + dx * slackX;
      const y = middle.y + dy * slackY;
      const covers = marks.some(
        (mark) => Math.abs(mark.x - x) < width / 2 + markPx && Math.abs(mark.y - y) < height / 2 + markPx,
      );
      if (!covers) return { x, y, room: Math.min(slackX, slackY) - Math.hypot(dx * slackX, dy * slackY) / 4 };
    }
  return null;
}

/** Connected parts of one outcome, each with the largest rectangles it holds. */
function regionsOf({ xs, ys, at }: Grid): { outcome: number; blocks: Block[] }[] {
  const columns = xs.length - 1;
  const rows = ys.length - 1;
  const seen = new Set<number>();
  const regions: { outcome: number; blocks: Block[] }[] = [];
  for (let start = 0; start < columns * rows; start++) {
    if (seen.has(start)) continue;
    const outcome = at(start % columns, Math.floor(start / columns));
    if (outcome < 0) continue;
    const part = new Set([start]);
    for (const cell of part) {
      const [column, row] = [cell % columns, Math.floor(cell / columns)];
      const next: [number, number][] = [
        [column - 1, row],
        [column + 1, row],
        [column, row - 1],
        [column, row + 1],
      ];
      for (const [c, r] of next)
        if (c >= 0 && c < columns && r >= 0 && r < rows && at(c, r) === outcome) part.add(r * columns + c);
    }
    for (const cell of part) seen.add(cell);
    regions.push({ outcome, blocks: blocksIn(part, columns, xs, ys) });
  }
  return regions;
}

/** For each cell as top left corner: the rectangles of the part that can't grow to the right or down. */
function blocksIn(
  part: ReadonlySet<number>,
  columns: number,
  xs: readonly number[],
  ys: readonly number[],
): Block[] {
  const blocks: Block[] = [];
  for (const cell of part) {
    const [column, row] = [cell % columns, Math.floor(cell / columns)];
    let widest = columns;
    for (let bottom = row; part.has(bottom * columns + column); bottom++) {
      let right = column;
      while (right < widest && part.has(bottom * columns + right)) right++;
      widest = right;
      blocks.push({ left: xs[column]!, right: xs[right]!, top: ys[row]!, bottom: ys[bottom + 1]! });
    }
  }
  return blocks;
}
