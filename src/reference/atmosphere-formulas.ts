/** The standard atmosphere, and units, as published values name them. */
import {
  altitudeOfPressureFt,
  densityAltitudeFt,
  densityRatio,
  pressureAltitudeFt,
  pressureRatio,
  standardPressureHpa,
  standardTemperatureC,
  thumbDensityAltitudeFt,
  thumbPressureAltitudeFt,
  thumbStandardTemperatureC,
  trueAirspeedKt,
} from '../motion/atmosphere.ts';
import * as unit from '../motion/conversions.ts';
import { formula, type Formulas } from './formula.ts';

const then = (value: number | null, next: (value: number) => number): number | null =>
  value === null ? null : next(value);

export const atmosphereFormulas: Formulas = {
  // The standard atmosphere
  standardTemperatureC: formula('15 °C − 6.5 K for each km', standardTemperatureC, 'altitudeFt'),
  standardTemperatureF: formula(
    'the same in °F',
    (ft: number) => then(standardTemperatureC(ft), unit.toFahrenheit),
    'altitudeFt',
  ),
  standardPressureHpa: formula('1013.25 hPa × θ^5.25588', standardPressureHpa, 'altitudeFt'),
  standardPressureInHg: formula(
    'the same in inches of mercury',
    (ft: number) => then(standardPressureHpa(ft), unit.toInHg),
    'altitudeFt',
  ),
  pressureRatio: formula('θ^5.25588', pressureRatio, 'altitudeFt'),
  densityRatio: formula('θ^4.25588', (ft: number) => densityRatio(ft), 'altitudeFt'),
  airspeedFactor: formula(
    '1 / √σ',
    (ft: number) => then(densityRatio(ft), (sigma) => 1 / Math.sqrt(sigma)),
    'altitudeFt',
  ),
  pressureAltitudeFt: formula(
    'elevation + altitude of the altimeter setting',
    (ft: number, inHg: number) => pressureAltitudeFt(ft, unit.fromInHg(inHg)),
    'elevationFt',
    'settingInHg',
  ),
  altitudeOfPressureFt: formula('(1 − δ^0.190263) T0 / L', altitudeOfPressureFt, 'hPa'),
  densityAltitudeFt: formula('(1 − σ^0.234969) T0 / L', densityAltitudeFt, 'pressureAltitudeFt', 'outsideC'),
  thumbPressureAltitudeFt: formula(
    'elevation + 1,000 ft × (29.92 − setting)',
    thumbPressureAltitudeFt,
    'elevationFt',
    'settingInHg',
  ),
  thumbDensityAltitudeFt: formula(
    'pressure altitude + 120 ft × °C over standard',
    thumbDensityAltitudeFt,
    'pressureAltitudeFt',
    'outsideC',
    'standardC',
  ),
  thumbStandardTemperatureC: formula(
    '15 °C − 2 °C for each 1,000 ft',
    thumbStandardTemperatureC,
    'altitudeFt',
  ),
  trueAirspeedKt: formula(
    'calibrated airspeed / √σ',
    trueAirspeedKt,
    'calibratedKt',
    'pressureAltitudeFt',
    'outsideC',
  ),
  // Units
  kmhOfKt: formula('1.852 × knots', (kt: number) => unit.fromKt(kt) * 3.6, 'kt'),
  metresOfFt: formula('0.3048 × feet', unit.fromFt, 'ft'),
  metresOfNm: formula('1852 × nautical miles', (nm: number) => nm * unit.metresPerNm, 'nm'),
  ftOfNm: formula('1852 / 0.3048 × nautical miles', (nm: number) => nm * unit.ftPerNm, 'nm'),
  hPaOfInHg: formula('33.86389 × inches of mercury', unit.fromInHg, 'inHg'),
  metresPerSecondOfFtMin: formula('0.3048 / 60 × ft/min', unit.fromFtMin, 'ftMin'),
  metresPerSecondOfKt: formula('1852 / 3600 × knots', unit.fromKt, 'kt'),
  metresPerSecondSquaredOfG: formula('9.80665 × g', (g: number) => g * unit.standardGravity, 'g'),
  kgOfLb: formula('0.45359237 × pounds', (lb: number) => lb * unit.kgPerLb, 'lb'),
  fahrenheitOfCelsius: formula('1.8 × °C + 32', unit.toFahrenheit, 'degC'),
};
