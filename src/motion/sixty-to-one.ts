/**
 * Rules of thumb of instrument flying that take a degree as one part in sixty ("60-to-1"). Sources: CNATRA
 * P-340, appendix C (vertical), CNATRA P-821 (five times the ground speed), flying training (turns). They
 * are near the exact formulas, not equal to them: the tests say how near.
 */

/** 1 degree at 1 nautical mile is 100 ft; exactly 106. Up to 10 degrees 6 to 7 % less than exact. */
export const thumbHeightFt = (angleDeg: number, distanceNm: number): number => 100 * angleDeg * distanceNm;

/** Angle times nautical miles a minute times a hundred: 3 degrees at 120 kt are 600 ft/min. */
export const thumbRateOfDescentFtMin = (groundSpeedKt: number, angleDeg: number): number =>
  (100 * angleDeg * groundSpeedKt) / 60;

/** Five times the ground speed, for a 3 degree path; 6 % less than exact. */
export const thumbThreeDegreeRateFtMin = (groundSpeedKt: number): number => 5 * groundSpeedKt;

/** Bank of a standard-rate turn, TAS / 10 + 7. Within 2 degrees from 100 to 200 kt. */
export const thumbStandardBankDeg = (airspeedKt: number): number => airspeedKt / 10 + 7;

/**
 * Radius of a turn at 30 degrees of bank, nm: nautical miles a minute less 2. Only rough: from 12 % too
 * tight at 150 kt to 38 % too wide at 240 kt.
 */
export const thumbRadiusFastNm = (airspeedKt: number): number => airspeedKt / 60 - 2;

/** The same for any speed: a tenth of the square of nautical miles a minute; 10 % too wide. */
export const thumbRadiusNm = (airspeedKt: number): number => (airspeedKt / 60) ** 2 / 10;
