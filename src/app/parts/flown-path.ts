/** The line flown through gates, drawn as one smooth curve that leaves each gate on the course flown there. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A gate on the picture: x to the right, y down, the course in degrees clockwise from up. */
export interface Waypoint extends Point {
  readonly courseDeg: number;
}

/** One leg as a cubic Bézier curve. */
export interface Leg {
  readonly from: Point;
  readonly control1: Point;
  readonly control2: Point;
  readonly to: Point;
}

const radians = (deg: number): number => (deg * Math.PI) / 180;
const directionOf = (courseDeg: number): Point => ({
  x: Math.sin(radians(courseDeg)),
  y: -Math.cos(radians(courseDeg)),
});
const along = (from: Point, direction: Point, length: number): Point => ({
  x: from.x + direction.x * length,
  y: from.y + direction.y * length,
});

/** Smallest angle between two courses, 0 to 180 degrees. */
export function turnDeg(oneDeg: number, otherDeg: number): number {
  const apart = Math.abs(oneDeg - otherDeg) % 360;
  return apart > 180 ? 360 - apart : apart;
}

/** A sideways slide on one course (across a deck edge, say) is a straight line, not an S. */
const slideDeg = 55;
/** How far a half turn bulges out: 2/3 of the chord would be a half circle; less leaves the room to the gates. */
const halfTurnReach = 0.46;

/**
 * Handle lengths of the leg's curve. A turn whose two course lines meet ahead is drawn as the quarter
 * (or smaller) ellipse between them: the handle of a circular arc of angle θ is 4/3·tan(θ/4) radii,
 * its tangents meet at tan(θ/2) radii. Other legs take a share of the chord.
 */
function handles(from: Waypoint, to: Waypoint): readonly [number, number] {
  const chord = { x: to.x - from.x, y: to.y - from.y };
  const chordLength = Math.hypot(chord.x, chord.y);
  const turn = turnDeg(from.courseDeg, to.courseDeg);
  const [u, v] = [directionOf(from.courseDeg), directionOf(to.courseDeg)];
  const chordCourseDeg = (Math.atan2(chord.x, -chord.y) * 180) / Math.PI;
  const offFrom = turnDeg(from.courseDeg, chordCourseDeg);
  const offTo = turnDeg(to.courseDeg, chordCourseDeg);
  if (turn < 20 && (offFrom > slideDeg || offTo > slideDeg)) return [0, 0];
  if (turn > 10 && turn < 150) {
    // chord = a·u + b·v
    const cross = u.x * v.y - u.y * v.x;
    const a = (chord.x * v.y - chord.y * v.x) / cross;
    const b = (u.x * chord.y - u.y * chord.x) / cross;
    if (a > 0 && b > 0) {
      const reach = ((4 / 3) * Math.tan(radians(turn) / 4)) / Math.tan(radians(turn) / 2);
      return [Math.min(a * reach, chordLength), Math.min(b * reach, chordLength)];
    }
  }
  const share = 1 / 3 + (halfTurnReach - 1 / 3) * (turn / 180);
  return [share * chordLength, share * chordLength];
}

/** One leg between each gate and the next. */
export function legsThrough(waypoints: readonly Waypoint[]): readonly Leg[] {
  return waypoints.slice(1).map((to, i) => {
    const from = waypoints[i]!;
    const [leaving, arriving] = handles(from, to);
    return {
      from,
      control1: along(from, directionOf(from.courseDeg), leaving),
      control2: along(to, directionOf(to.courseDeg), -arriving),
      to,
    };
  });
}

/** Point on a leg at a share of its parameter, 0 at its start, 1 at its end. */
export function pointOn(leg: Leg, share: number): Point {
  const rest = 1 - share;
  const mix = (axis: 'x' | 'y'): number =>
    rest ** 3 * leg.from[axis] +
    3 * rest ** 2 * share * leg.control1[axis] +
    3 * rest * share ** 2 * leg.control2[axis] +
    share ** 3 * leg.to[axis];
  return { x: mix('x'), y: mix('y') };
}

/** Points along a leg, both ends included. */
export function sampleLeg(leg: Leg, pieces: number): readonly Point[] {
  return Array.from({ length: pieces + 1 }, (_, i) => pointOn(leg, i / pieces));
}

export function lengthOf(leg: Leg): number {
  const points = sampleLeg(leg, 16);
  return points
    .slice(1)
    .reduce((sum, point, i) => sum + Math.hypot(point.x - points[i]!.x, point.y - points[i]!.y), 0);
}

/** Where a leg is at a share of its parameter, and which way it points there (degrees clockwise from up). */
export function placeOn(leg: Leg, share: number): Point & { readonly courseDeg: number } {
  const [before, after] = [pointOn(leg, Math.max(0, share - 0.02)), pointOn(leg, Math.min(1, share + 0.02))];
  return {
    ...pointOn(leg, share),
    courseDeg: (Math.atan2(after.x - before.x, -(after.y - before.y)) * 180) / Math.PI,
  };
}

export const middleOf = (leg: Leg): Point & { readonly courseDeg: number } => placeOn(leg, 0.5);

const short = (value: number): string => String(Math.round(value * 10) / 10);
const pair = (point: Point): string => `${short(point.x)} ${short(point.y)}`;

/** The `d` attribute of an SVG path. */
export function pathOf(legs: readonly Leg[]): string {
  const [first] = legs;
  if (!first) return '';
  return `M${pair(first.from)}${legs
    .map((leg) => `C${pair(leg.control1)} ${pair(leg.control2)} ${pair(leg.to)}`)
    .join('')}`;
}
