/** Descents, gradients, and the rules of sixty to one, as published values name them. */
import * as descent from '../motion/descent.ts';
import * as thumb from '../motion/sixty-to-one.ts';
import { formula, type Formulas } from './formula.ts';

export const descentFormulas: Formulas = {
  // Descents and gradients
  rateOfDescentFtMin: formula(
    'ground speed × tan(angle)',
    descent.rateOfDescentFtMin,
    'groundSpeedKt',
    'angleDeg',
  ),
  rateAlongPathFtMin: formula('speed × sin(angle)', descent.rateAlongPathFtMin, 'speedKt', 'angleDeg'),
  gradientFtPerNm: formula('tan(angle)', descent.gradientFtPerNm, 'angleDeg'),
  angleOfGradientDeg: formula('arctan(gradient)', descent.angleOfGradientDeg, 'ftPerNm'),
  gradientOfPercent: formula('1 nm × percent / 100', descent.gradientOfPercent, 'percent'),
  percentOfGradient: formula('100 × gradient / 1 nm', descent.percentOfGradient, 'ftPerNm'),
  rateOfGradientFtMin: formula(
    'gradient × ground speed',
    descent.rateOfGradientFtMin,
    'ftPerNm',
    'groundSpeedKt',
  ),
  secondsToHeight: formula('height to lose / sink', descent.secondsToHeight, 'fromFt', 'toFt', 'sinkFtMin'),
  // Sixty to one
  thumbStandardBankDeg: formula('airspeed / 10 + 7', thumb.thumbStandardBankDeg, 'airspeedKt'),
  thumbRadiusNm: formula('(nm a minute)² / 10', thumb.thumbRadiusNm, 'airspeedKt'),
  thumbRadiusFastNm: formula('nm a minute − 2', thumb.thumbRadiusFastNm, 'airspeedKt'),
  thumbHeightFt: formula('100 × angle × distance', thumb.thumbHeightFt, 'angleDeg', 'distanceNm'),
  thumbRateOfDescentFtMin: formula(
    '100 × angle × nm a minute',
    thumb.thumbRateOfDescentFtMin,
    'groundSpeedKt',
    'angleDeg',
  ),
  thumbThreeDegreeRateFtMin: formula('5 × ground speed', thumb.thumbThreeDegreeRateFtMin, 'groundSpeedKt'),
};
