/** What stands at the reference point (a ship's deck, a runway), in the circuit picture's own directions. */
import type { Deck, Plate } from '../../deck/types.ts';

/** Feet along the reference course and to the right of it. */
export interface GroundPoint {
  readonly aheadFt: number;
  readonly rightFt: number;
}

export interface GroundLine {
  readonly points: readonly GroundPoint[];
  /** An outline is filled; a line is not. */
  readonly closed: boolean;
  readonly dashed: boolean;
}

/** Exact: the international foot and nautical mile. */
const feetPer = { ft: 1, m: 1 / 0.3048, nm: 1852 / 0.3048 } as const;

/** The first plate that says where the reference point lies on it. */
export function referencePlate(deck: Deck): Plate | null {
  return deck.plates?.find((plate) => plate.reference) ?? null;
}

/** The outlines of a plate, turned and moved so that the reference point is the origin. */
export function groundLinesOf(plate: Plate): readonly GroundLine[] {
  const { reference } = plate;
  if (!reference) return [];
  const course = (reference.courseDeg * Math.PI) / 180;
  const toGround = ([x, y]: readonly [number, number]): GroundPoint => {
    const east = (x - reference.at[0]) * feetPer[plate.unit];
    const south = (y - reference.at[1]) * feetPer[plate.unit];
    return {
      aheadFt: east * Math.sin(course) - south * Math.cos(course),
      rightFt: east * Math.cos(course) + south * Math.sin(course),
    };
  };
  return plate.shapes.flatMap((shape) =>
    shape.shape === 'outline' ? [{ points: shape.points.map(toGround), closed: true, dashed: false }] : [],
  );
}

/** The smallest upright box around some ground lines, or null when there are none. */
export function groundExtent(
  lines: readonly GroundLine[],
): { readonly aheadFt: readonly [number, number]; readonly rightFt: readonly [number, number] } | null {
  const points = lines.flatMap((line) => line.points);
  if (points.length === 0) return null;
  const span = (values: readonly number[]): readonly [number, number] => [
    Math.min(...values),
    Math.max(...values),
  ];
  return {
    aheadFt: span(points.map((point) => point.aheadFt)),
    rightFt: span(points.map((point) => point.rightFt)),
  };
}
