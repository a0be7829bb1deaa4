/**
 * A few quiet words beside each leg of the circuit picture, wherever they find room: never over a label, a
 * mark, a line or each other. A leg without room has none; the table of legs says all.
 */
import type { CircuitLayout } from './circuit-geometry.ts';
import { lengthOf, placeOn, sampleLeg, type Point } from './flown-path.ts';
import { overlap, type Box } from './label-placement.ts';
import { textWidthPx } from './text-width.ts';

export interface LegNote extends Box {
  readonly text: string;
}

/** Of a leg's way: the middle first. */
const shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];
/** From the line to the words, px. */
const gaps = [7, 13];
/** Air between the words and anything else, px. */
const air = 3;

/**
 * @param notes for each leg its words, the fullest first: the first that fits is taken.
 * @param markerRadiusPx of the gates' discs.
 */
export function placeLegNotes(
  layout: CircuitLayout,
  notes: readonly (readonly string[])[],
  sizePx: number,
  markerRadiusPx: number,
): readonly LegNote[] {
  const taken: Box[] = layout.gates.flatMap(({ label }) => (label ? [label] : []));
  const discs = [
    ...layout.gates.map(({ x, y }) => ({ x, y, radius: markerRadiusPx + air })),
    ...layout.arrows.map(({ x, y }) => ({ x, y, radius: 5 + air })),
  ];
  const lines = [
    ...layout.legs.flatMap((leg) => sampleLeg(leg, Math.max(4, Math.ceil(lengthOf(leg) / 4)))),
    ...layout.outlines.flatMap(({ points }) =>
      points.flatMap((from, i) => between(from, points[(i + 1) % points.length]!)),
    ),
    ...layout.gates.flatMap(({ label }) => (label?.leader ? between(...label.leader) : [])),
  ];
  const isFree = (box: Box): boolean =>
    box.x >= 0 &&
    box.y >= 0 &&
    box.x + box.width <= layout.widthPx &&
    box.y + box.height <= layout.heightPx &&
    taken.every((other) => overlap(grown(box, air), other) === 0) &&
    discs.every((disc) => awayFrom(box, disc) >= disc.radius) &&
    lines.every((point) => awayFrom(box, point) >= air);

  return layout.legs.flatMap((leg, i): LegNote[] => {
    for (const text of notes[i] ?? []) {
      const [width, height] = [textWidthPx(text, sizePx), sizePx];
      for (const gap of gaps)
        for (const share of shares) {
          const { x, y, courseDeg } = placeOn(leg, share);
          // Across the line: to its right, then to its left.
          const across = { x: Math.cos(radians(courseDeg)), y: Math.sin(radians(courseDeg)) };
          for (const side of [1, -1]) {
            const reach = gap + (Math.abs(across.x) * width + Math.abs(across.y) * height) / 2;
            const box = {
              x: x + side * across.x * reach - width / 2,
              y: y + side * across.y * reach - height / 2,
              width,
              height,
            };
            if (!isFree(box)) continue;
            taken.push(box);
            return [{ ...box, text }];
          }
        }
    }
    return [];
  });
}

const radians = (deg: number): number => (deg * Math.PI) / 180;

const grown = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

/** Distance from a point to a box; 0 inside of it. */
function awayFrom(box: Box, { x, y }: Point): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width);
  const dy = Math.max(box.y - y, 0, y - box.y - box.height);
  return Math.hypot(dx, dy);
}

/** Points every few px from one point to another. */
function between(from: Point, to: Point): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4));
  return Array.from({ length: pieces + 1 }, (_, k) => ({
    x: from.x + ((to.x - from.x) * k) / pieces,
    y: from.y + ((to.y - from.y) * k) / pieces,
  }));
}
