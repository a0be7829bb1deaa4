/** Turns and stalling speeds, as published values name them. */
import * as unit from '../motion/conversions.ts';
import * as turn from '../motion/turn.ts';
import { formula, type Formulas } from './formula.ts';

export const turnFormulas: Formulas = {
  turnRateDegS: formula('g tan(bank) / airspeed', turn.turnRateDegS, 'airspeedKt', 'bankDeg'),
  turnSeconds: formula(
    'angle × airspeed / (g tan(bank))',
    turn.turnSeconds,
    'airspeedKt',
    'bankDeg',
    'throughDeg',
  ),
  turnRadiusFt: formula('airspeed² / (g tan(bank))', turn.turnRadiusFt, 'airspeedKt', 'bankDeg'),
  turnDiameterNm: formula(
    '2 airspeed² / (g tan(bank))',
    (kt: number, deg: number) => (2 * turn.turnRadiusFt(kt, deg)) / unit.ftPerNm,
    'airspeedKt',
    'bankDeg',
  ),
  turnSecondsAtLoad: formula(
    'angle × airspeed / (g √(load² − 1))',
    (kt: number, load: number, deg: number) => turn.turnSeconds(kt, turn.bankForLoadDeg(load), deg),
    'airspeedKt',
    'loadG',
    'throughDeg',
  ),
  turnDiameterAtLoadNm: formula(
    '2 airspeed² / (g √(load² − 1))',
    (kt: number, load: number) => (2 * turn.turnRadiusFt(kt, turn.bankForLoadDeg(load))) / unit.ftPerNm,
    'airspeedKt',
    'loadG',
  ),
  bankForRateDeg: formula('arctan(rate × airspeed / g)', turn.bankForRateDeg, 'airspeedKt', 'rateDegS'),
  loadFactor: formula('1 / cos(bank)', turn.loadFactor, 'bankDeg'),
  stallSpeedKt: formula('stalling speed at 1 g × √load', turn.stallSpeedKt, 'stallSpeedAtOneGKt', 'loadG'),
  loadForStall: formula(
    '(stalling speed / stalling speed at 1 g)²',
    turn.loadForStall,
    'stallSpeedAtOneGKt',
    'stallsAtKt',
  ),
};
