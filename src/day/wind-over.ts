/**
 * Wind felt on a moving deck, as a vector sum. Directions are where it comes from, off the bow, clockwise,
 * in degrees; components are positive from ahead and from the right.
 */
export interface WindOver {
  /** Along the course, positive from ahead. */
  readonly alongKt: number;
  readonly fromRightKt: number;
  readonly speedKt: number;
  /** Where it seems to come from, off the bow: -180 to 180, positive to the right; 0 in a calm. */
  readonly fromDeg: number;
}

/**
 * The true wind and the wind of the ship's own way, added as vectors.
 * @param wind.fromDeg of the true wind, off the bow, positive to the right.
 */
export function windOver(wind: {
  readonly windKt: number;
  readonly fromDeg: number;
  readonly shipKt: number;
}): WindOver {
  const angle = (wind.fromDeg * Math.PI) / 180;
  return windFelt(wind.windKt * Math.cos(angle) + wind.shipKt, wind.windKt * Math.sin(angle));
}

/** A wind by its two components. */
export function windFelt(alongKt: number, fromRightKt: number): WindOver {
  const speedKt = Math.hypot(alongKt, fromRightKt);
  const fromDeg = speedKt < 1e-9 ? 0 : (Math.atan2(fromRightKt, alongKt) * 180) / Math.PI;
  return { alongKt, fromRightKt, speedKt, fromDeg };
}
