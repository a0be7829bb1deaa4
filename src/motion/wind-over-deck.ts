/**
 * The wind over a moving deck, from the true wind by the compass, and back; and what it makes of flying
 * relative to the ship. Vector sums: the air seen from the ship is the true wind less the ship's own way.
 * Directions of winds are where they come from, in degrees, in the same north as the ship's course.
 */
import { trueWind, windOver, windTriangle, type WindOver, type WindTriangle } from './wind.ts';

/** Blowing over the sea. */
export interface TrueWind {
  readonly speedKt: number;
  /** By the compass, 0 to below 360; 0 in a calm. */
  readonly fromDeg: number;
}

export interface Ship {
  readonly courseDeg: number;
  /** From 0 on. */
  readonly speedKt: number;
}

/** Off the bow, with its components along the ship's course and from the right. */
export const windOverDeck = (wind: TrueWind, ship: Ship): WindOver =>
  windOver({ windKt: wind.speedKt, fromDeg: wind.fromDeg - ship.courseDeg, shipKt: ship.speedKt });

/** `windOverDeck` the other way round. @param felt.fromDeg off the bow, positive to the right. */
export function trueWindBehind(felt: Pick<WindOver, 'speedKt' | 'fromDeg'>, ship: Ship): TrueWind {
  const { speedKt, fromDeg } = trueWind({ ...felt, shipKt: ship.speedKt });
  return { speedKt, fromDeg: speedKt < 1e-9 ? 0 : compass(fromDeg + ship.courseDeg) };
}

/**
 * Heading and speed that make good a track as seen from the ship: the wind triangle with the wind over deck
 * for the wind. Its ground speed is then the closure along that track, its heading is off the ship's course.
 * @param trackDeg off the ship's course: 0 astern to ahead, 180 back.
 * @param airspeedKt true airspeed, > 0.
 * @returns null where the wind over deck leaves no way along the track.
 */
export const closureTriangle = (
  airspeedKt: number,
  trackDeg: number,
  over: Pick<WindOver, 'speedKt' | 'fromDeg'>,
): WindTriangle | null => windTriangle(airspeedKt, trackDeg, over.speedKt, over.fromDeg);

function compass(deg: number): number {
  const turned = ((deg % 360) + 360) % 360;
  // A hair below 0 rounds to 360 itself.
  return turned === 360 ? 0 : turned;
}
