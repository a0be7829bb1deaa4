/** Braking evenly from a speed to a standstill: v² = 2 a s, v = a t. Speeds are relative to where one stops. */
import { fromFt, fromKt, toFt, toKt } from './conversions.ts';

/** @param decelerationKtS > 0, knots a second. */
export const stoppingDistanceFt = (speedKt: number, decelerationKtS: number): number =>
  toFt(fromKt(speedKt) ** 2 / (2 * fromKt(decelerationKtS)));

export const stoppingSeconds = (speedKt: number, decelerationKtS: number): number =>
  speedKt / decelerationKtS;

/** The speed from which an even braking stops in a distance, from 0 on. */
export const speedToStopKt = (distanceFt: number, decelerationKtS: number): number =>
  toKt(Math.sqrt(2 * fromKt(decelerationKtS) * fromFt(distanceFt)));

/** What braking it takes. @param distanceFt > 0. */
export const decelerationToStopKtS = (speedKt: number, distanceFt: number): number =>
  toKt(fromKt(speedKt) ** 2 / (2 * fromFt(distanceFt)));
