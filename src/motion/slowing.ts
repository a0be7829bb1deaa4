/**
 * Slowing evenly from one speed to another: v = v0 - a t, v0² - v² = 2 a s. Decelerations in knots a second;
 * a negative one speeds up. Speeds are in the frame that the distance is in: closure for a distance to the
 * ship, ground speed for one over the ground. To 0 is to come to rest there.
 */
import { ftPerSecondPerKt } from './conversions.ts';

/** @returns null where that deceleration never comes to that speed. */
export function slowingSeconds(fromKt: number, toKt: number, decelerationKtS: number): number | null {
  const seconds = (fromKt - toKt) / decelerationKtS;
  return seconds >= 0 && Number.isFinite(seconds) ? seconds : null;
}

/** The way covered meanwhile, at the mean of the two speeds; null as above. */
export function slowingDistanceFt(fromKt: number, toKt: number, decelerationKtS: number): number | null {
  const seconds = slowingSeconds(fromKt, toKt, decelerationKtS);
  return seconds === null ? null : ((fromKt + toKt) / 2) * ftPerSecondPerKt * seconds;
}

/** What it takes to come to a speed in a time. @param seconds > 0, else null. */
export const decelerationInTimeKtS = (fromKt: number, toKt: number, seconds: number): number | null =>
  seconds > 0 ? (fromKt - toKt) / seconds : null;

/** What it takes to come to a speed over a distance. @param distanceFt > 0, else null. */
export const decelerationOverDistanceKtS = (
  fromKt: number,
  toKt: number,
  distanceFt: number,
): number | null =>
  distanceFt > 0 ? ((fromKt ** 2 - toKt ** 2) * ftPerSecondPerKt) / (2 * distanceFt) : null;

/** The highest speed that still comes down to another within a distance. @param distanceFt from 0 on. */
export const fastestToSlowKt = (toKt: number, distanceFt: number, decelerationKtS: number): number =>
  Math.sqrt(toKt ** 2 + (2 * decelerationKtS * distanceFt) / ftPerSecondPerKt);
