/**
 * Wind, as vectors. Directions are where it comes from, clockwise, in degrees; components are positive
 * from ahead and from the right.
 */
import { windFelt, type WindOver } from '../day/wind-over.ts';
import { fromDeg, toDeg } from './conversions.ts';

export { windOver, type WindOver } from '../day/wind-over.ts';

export interface WindComponents {
  /** Negative is a tailwind. */
  readonly headKt: number;
  readonly fromRightKt: number;
}

/**
 * head = V cos(a), cross = V sin(a), where a is the angle from the course to where the wind comes from.
 * @param courseDeg course, track or runway, in the same north as the wind.
 */
export function windComponents(windKt: number, windFromDeg: number, courseDeg: number): WindComponents {
  const angle = fromDeg(windFromDeg - courseDeg);
  return { headKt: windKt * Math.cos(angle), fromRightKt: windKt * Math.sin(angle) };
}

/**
 * The crosswind's share of the wind by the rule of sixths: 10° a sixth, 20° a third, 30° a half, 40° two
 * thirds, 50° five sixths, from 60° on all of it. Common practice, no source; off by up to 0.14 at 60°.
 * @param angleDeg between wind and course, 0 to 90.
 */
export const sixthsOfCrosswind = (angleDeg: number): number => Math.min(1, Math.max(0, angleDeg / 60));

export interface WindTriangle {
  /** Of the nose from the track, positive to the right. */
  readonly crabDeg: number;
  readonly headingDeg: number;
  readonly groundSpeedKt: number;
}

/**
 * Heading and ground speed that make good a track: sin(crab) = cross / TAS, GS = TAS cos(crab) - head.
 * @param airspeedKt true airspeed, > 0.
 * @returns null where the crosswind is stronger than the airspeed, or the headwind leaves no way forward.
 */
export function windTriangle(
  airspeedKt: number,
  trackDeg: number,
  windKt: number,
  windFromDeg: number,
): WindTriangle | null {
  const { headKt, fromRightKt } = windComponents(windKt, windFromDeg, trackDeg);
  if (Math.abs(fromRightKt) > airspeedKt) return null;
  const crab = Math.asin(fromRightKt / airspeedKt);
  const groundSpeedKt = airspeedKt * Math.cos(crab) - headKt;
  if (groundSpeedKt <= 0) return null;
  const crabDeg = toDeg(crab);
  return { crabDeg, headingDeg: (((trackDeg + crabDeg) % 360) + 360) % 360, groundSpeedKt };
}

/** The true wind behind what is felt on the moving deck: `windOver` the other way round. */
export function trueWind(apparent: {
  readonly speedKt: number;
  readonly fromDeg: number;
  readonly shipKt: number;
}): WindOver {
  const { headKt, fromRightKt } = windComponents(apparent.speedKt, apparent.fromDeg, 0);
  return windFelt(headKt - apparent.shipKt, fromRightKt);
}
