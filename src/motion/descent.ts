/** Going down or up along a straight path: angles, rates and gradients. Angles above 0 and below 90. */
import { fromDeg, fromKt, ftPerNm, ftPerSecondPerKt, toDeg, toFtMin } from './conversions.ts';

/**
 * Rate of descent along a path, ft/min, from the speed over the ground: GS tan(angle). Tables of constant
 * descents use it; they agree with `rateAlongPathFtMin` to 0.2 % up to 3.5 degrees.
 */
export const rateOfDescentFtMin = (groundSpeedKt: number, angleDeg: number): number =>
  toFtMin(fromKt(groundSpeedKt) * Math.tan(fromDeg(angleDeg)));

/**
 * The same from the speed along the path itself: V sin(angle). The rate of descent table of the FAA's
 * Instrument Approach Procedure Charts follows it, rounded to 5 ft/min.
 */
export const rateAlongPathFtMin = (speedKt: number, angleDeg: number): number =>
  toFtMin(fromKt(speedKt) * Math.sin(fromDeg(angleDeg)));

/** tan(angle) in feet for each nautical mile: 3 degrees are 318 ft/nm. */
export const gradientFtPerNm = (angleDeg: number): number => Math.tan(fromDeg(angleDeg)) * ftPerNm;
export const angleOfGradientDeg = (ftPerMile: number): number => toDeg(Math.atan(ftPerMile / ftPerNm));

export const percentOfGradient = (ftPerMile: number): number => (100 * ftPerMile) / ftPerNm;
export const gradientOfPercent = (percent: number): number => (percent / 100) * ftPerNm;

/** A gradient flown at a ground speed: ft/nm times nautical miles a minute. */
export const rateOfGradientFtMin = (ftPerMile: number, groundSpeedKt: number): number =>
  (ftPerMile * groundSpeedKt) / 60;

/** Height gained or lost over a distance along the ground. */
export const heightFt = (angleDeg: number, distanceNm: number): number =>
  gradientFtPerNm(angleDeg) * distanceNm;

/**
 * The mean sink that comes to a height in a time, ft/min; negative is a climb. @param seconds > 0, else null.
 */
export const sinkInTimeFtMin = (fromFt: number, toFt: number, seconds: number): number | null =>
  seconds > 0 && Number.isFinite(seconds) ? ((fromFt - toFt) / seconds) * 60 : null;

/**
 * The mean sink that comes to a height at a point.
 * @param distanceFt to the point, > 0, in the frame of `speedKt`: over the ground, or relative to the ship.
 * @param speedKt the mean one on the way, > 0. @returns null for a point that is never reached.
 */
export const sinkOverDistanceFtMin = (
  fromFt: number,
  toFt: number,
  distanceFt: number,
  speedKt: number,
): number | null => sinkInTimeFtMin(fromFt, toFt, distanceFt / (speedKt * ftPerSecondPerKt));

/** How long a descent takes. @returns null where the sink leads away from the height, or nowhere. */
export function secondsToHeight(fromFt: number, toFt: number, sinkFtMin: number): number | null {
  const seconds = ((fromFt - toFt) / sinkFtMin) * 60;
  return seconds >= 0 && Number.isFinite(seconds) ? seconds : null;
}
