/**
 * A level, coordinated turn. Equations of the FAA Pilot's Handbook of Aeronautical Knowledge
 * (FAA-H-8083-25), chapter 5, with exact constants in place of its rounded 1,091 and 11.26. Valid in still
 * air or in the air's own frame, for a bank above 0 and below 90 degrees.
 */
import { fromDeg, fromFt, fromKt, standardGravity, toDeg, toFt } from './conversions.ts';

/** ω = g tan(bank) / V: degrees a second. @param airspeedKt true airspeed, > 0. */
export const turnRateDegS = (airspeedKt: number, bankDeg: number): number =>
  toDeg((standardGravity * Math.tan(fromDeg(bankDeg))) / fromKt(airspeedKt));

/** r = V² / (g tan(bank)): feet. @param airspeedKt true airspeed. */
export const turnRadiusFt = (airspeedKt: number, bankDeg: number): number =>
  toFt(fromKt(airspeedKt) ** 2 / (standardGravity * Math.tan(fromDeg(bankDeg))));

/** Seconds that a turn through so many degrees takes. */
export const turnSeconds = (airspeedKt: number, bankDeg: number, throughDeg: number): number =>
  throughDeg / turnRateDegS(airspeedKt, bankDeg);

/** The bank of a given rate of turn: tan(bank) = ω V / g. A standard-rate turn is 3 degrees a second. */
export const bankForRateDeg = (airspeedKt: number, rateDegS = 3): number =>
  toDeg(Math.atan((fromDeg(rateDegS) * fromKt(airspeedKt)) / standardGravity));

/** The bank of a given radius: tan(bank) = V² / (g r). @param radiusFt > 0. */
export const bankForRadiusDeg = (airspeedKt: number, radiusFt: number): number =>
  toDeg(Math.atan(fromKt(airspeedKt) ** 2 / (standardGravity * fromFt(radiusFt))));

/** n = 1 / cos(bank): load factor of a level turn, g. */
export const loadFactor = (bankDeg: number): number => 1 / Math.cos(fromDeg(bankDeg));

/** The bank of a level turn with a given load factor, g, from 1 on. */
export const bankForLoadDeg = (load: number): number => toDeg(Math.acos(1 / load));

/** Stalling speed grows with the square root of the load factor. @param load g, from 0 on. */
export const stallSpeedKt = (stallSpeedAtOneGKt: number, load: number): number =>
  stallSpeedAtOneGKt * Math.sqrt(load);

/** The load factor at which it stalls at a speed: `stallSpeedKt` the other way round. */
export const loadForStall = (stallSpeedAtOneGKt: number, stallsAtKt: number): number =>
  (stallsAtKt / stallSpeedAtOneGKt) ** 2;
