/** The mark of a pass on the pictures of the circuit. */
import { placeOn, type Leg, type Point } from './flown-path.ts';

export interface PlaceOnCircuit {
  /** The gate behind, counted from 0. */
  readonly after: number;
  /** Of the way to the next, 0 to 1. */
  readonly share: number;
}

/** The course is in degrees clockwise from up. */
export interface Mark extends Point {
  readonly courseDeg: number;
}

/** On the plan. Null where the circuit has no such leg. */
export function markOn(legs: readonly Leg[], { after, share }: PlaceOnCircuit): Mark | null {
  const leg = legs[after];
  return leg ? placeOn(leg, share) : null;
}

/** On the profile, where all is flown to the right. */
export function markBetween(xs: readonly number[], { after, share }: PlaceOnCircuit, y: number): Mark | null {
  const from = xs[after];
  if (from === undefined) return null;
  const to = xs[after + 1] ?? from;
  return { x: from + share * (to - from), y, courseDeg: 90 };
}

/** The gate nearest to the mark, when it is nearer than `px`. */
export function gateUnder<Gate extends Point>(gates: readonly Gate[], mark: Point, px: number): Gate | null {
  const awayPx = ({ x, y }: Point): number => Math.hypot(x - mark.x, y - mark.y);
  const [nearest] = [...gates].sort((one, other) => awayPx(one) - awayPx(other));
  return nearest && awayPx(nearest) < px ? nearest : null;
}
