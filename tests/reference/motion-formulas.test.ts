/**
 * The formulas of motion against values that others printed. Each row of
 * shared/reference/published-values.json holds its source, its status (printed, from memory, derived,
 * common practice) and the tolerance that the source's own rounding asks for.
 */
import { describe, expect, test } from 'vitest';
import {
  angleOfGradientDeg,
  gradientFtPerNm,
  gradientOfPercent,
  percentOfGradient,
  rateAlongPathFtMin,
  rateOfDescentFtMin,
  rateOfGradientFtMin,
} from '../../src/motion/descent.ts';
import { ftPerNm } from '../../src/motion/conversions.ts';
import {
  thumbHeightFt,
  thumbRadiusFastNm,
  thumbRadiusNm,
  thumbRateOfDescentFtMin,
  thumbStandardBankDeg,
  thumbThreeDegreeRateFtMin,
} from '../../src/motion/sixty-to-one.ts';
import { loadFactor, stallSpeedKt, turnRadiusFt, turnRateDegS, turnSeconds } from '../../src/motion/turn.ts';
import {
  sixthsOfCrosswind,
  trueWind,
  windComponents,
  windOver,
  windTriangle,
} from '../../src/motion/wind.ts';
import { publishedValue, publishedValues } from './published-values.ts';

const across = (windKt: number, fromDeg: number, runwayDeg: number) =>
  Math.abs(windComponents(windKt, fromDeg, runwayDeg).fromRightKt);
const head = (windKt: number, fromDeg: number, runwayDeg: number) =>
  windComponents(windKt, fromDeg, runwayDeg).headKt;
const crabOfTwoKt = () => windTriangle(120, 0, 2, 90)!.crabDeg;
const diameterNm = (airspeedKt: number, bankDeg: number) => (2 * turnRadiusFt(airspeedKt, bankDeg)) / ftPerNm;

/** Row -> what the formula makes of it. */
const worked: Readonly<Record<string, () => number>> = {
  'turn-rate-120-30': () => turnRateDegS(120, 30),
  'turn-rate-240-30': () => turnRateDegS(240, 30),
  'turn-time-120-30': () => turnSeconds(120, 30, 360),
  'turn-time-240-30': () => turnSeconds(240, 30, 360),
  'turn-radius-120-30': () => turnRadiusFt(120, 30),
  'turn-radius-240-30': () => turnRadiusFt(240, 30),
  'turn-radius-120-30-exact': () => turnRadiusFt(120, 30),
  'turn-radius-240-30-exact': () => turnRadiusFt(240, 30),
  'turn-rate-120-30-exact': () => turnRateDegS(120, 30),
  'turn-radius-100-45-exact': () => turnRadiusFt(100, 45),
  'turn-rate-100-45-exact': () => turnRateDegS(100, 45),
  'turn-diameter-130-27': () => diameterNm(130, 27),
  'turn-diameter-130-30': () => diameterNm(130, 30),
  'load-factor-10': () => loadFactor(10),
  'load-factor-30': () => loadFactor(30),
  'load-factor-45': () => loadFactor(45),
  'load-factor-60': () => loadFactor(60),
  'load-factor-70': () => loadFactor(70),
  'load-factor-80-exact': () => loadFactor(80),
  'load-factor-85': () => loadFactor(85),
  'stall-speed-4-g': () => stallSpeedKt(50, 4),
  'standard-bank-120': () => thumbStandardBankDeg(120),
  'thumb-radius-300': () => thumbRadiusNm(300),
  'thumb-radius-300-less-two': () => thumbRadiusFastNm(300),
  'thumb-descent-3-at-120': () => thumbRateOfDescentFtMin(120, 3),
  'thumb-five-times-100': () => thumbThreeDegreeRateFtMin(100),
  'descent-3-at-100-exact': () => rateOfDescentFtMin(100, 3),
  'gradient-3': () => gradientFtPerNm(3),
  'gradient-400': () => angleOfGradientDeg(400),
  'gradient-2.5-percent': () => gradientOfPercent(2.5),
  'gradient-200': () => percentOfGradient(200),
  'climb-200-at-90': () => rateOfGradientFtMin(200, 90),
  'climb-310-at-90': () => rateOfGradientFtMin(310, 90),
  'wind-220-30-on-18-head': () => head(30, 220, 180),
  'wind-220-30-on-18-cross': () => across(30, 220, 180),
  'wind-180-20-on-14-cross': () => across(20, 180, 140),
  'wind-180-20-on-14-head': () => head(20, 180, 140),
  'wind-070-15-on-09-cross': () => across(15, 70, 90),
  'wind-070-15-on-09-head': () => head(15, 70, 90),
  'crab-thumb-120': crabOfTwoKt,
  'crab-exact-120': crabOfTwoKt,
  'wind-over-deck-calm': () => windOver({ windKt: 0, fromDeg: 0, shipKt: 15 }).alongKt,
  'true-wind-speed': () => trueWind({ speedKt: 10, fromDeg: 60, shipKt: 5 }).speedKt,
  'true-wind-from': () => trueWind({ speedKt: 10, fromDeg: 60, shipKt: 5 }).fromDeg,
};

/** Families of rows that hold their arguments in their names. */
const families: readonly (readonly [RegExp, (one: number, other: number) => number])[] = [
  [/^descent-([\d.]+)-at-(\d+)$/, (angle, speed) => rateAlongPathFtMin(speed, angle)],
  [/^helicopter-([\d.]+)-at-(\d+)$/, (angle, speed) => rateAlongPathFtMin(speed, angle)],
  [/^constant-descent-([\d.]+)-at-(\d+)$/, (angle, speed) => rateOfDescentFtMin(speed, angle)],
  [/^thumb-height-([\d.]+)-at-(\d+)$/, thumbHeightFt],
  [/^wind-(\d+)-off-cross$/, (angle) => across(20, angle, 0)],
  [/^wind-(\d+)-off-head$/, (angle) => head(20, angle, 0)],
  [/^sixths-(\d+)$/, sixthsOfCrosswind],
];

function workedOut(id: string): number | null {
  const single = worked[id];
  if (single) return single();
  for (const [pattern, formula] of families) {
    const match = pattern.exec(id);
    if (match) return formula(Number(match[1]), Number(match[2]));
  }
  return null;
}

const rows = publishedValues.filter(({ id }) => workedOut(id) !== null);

describe('a formula gives the published value', () => {
  test.each(rows.map((row) => [row.id, row] as const))('%s', (id, { value, tolerance }) => {
    expect(Math.abs(workedOut(id)! - value)).toBeLessThanOrEqual(tolerance + 1e-9);
  });

  test('for every row that is named here, and for at least 25 that somebody printed', () => {
    for (const id of Object.keys(worked)) expect(publishedValue(id).source).not.toBe('');
    expect(rows.filter(({ status }) => status === 'printed').length).toBeGreaterThanOrEqual(25);
  });
});
