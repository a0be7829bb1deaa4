/**
 * The International Standard Atmosphere up to the tropopause: 15 °C and 1013.25 hPa at sea level, 6.5 K
 * colder for each kilometre. Source: ICAO Doc 7488, Manual of the ICAO Standard Atmosphere; ISO 2533. Dry
 * air; altitudes are geopotential. Outside of -16,404 ft to 36,089 ft (-5 to 11 km) this law doesn't hold,
 * and what would need it is null.
 */
import { fromFt, standardGravity, toFt } from './conversions.ts';

/** T0, K. */
const seaLevelKelvin = 288.15;
/** P0, hPa. */
export const seaLevelHpa = 1013.25;
/** -dT/dh, K/m. */
const lapseKelvinPerMetre = 0.0065;
/** R of dry air, J/(kg K). */
const gasConstant = 287.05287;
/** g / (R L): pressure falls with this power of the temperature ratio, 5.25588. */
const pressurePower = standardGravity / (gasConstant * lapseKelvinPerMetre);

const lowestM = -5000;
const tropopauseM = 11000;
const absoluteZeroC = -273.15;

/** θ, the temperature as a share of that at sea level. @param altitudeFt pressure altitude. */
export function temperatureRatio(altitudeFt: number): number | null {
  const metres = fromFt(altitudeFt);
  if (!(metres >= lowestM - 1e-6 && metres <= tropopauseM + 1e-6)) return null;
  return 1 - (lapseKelvinPerMetre * metres) / seaLevelKelvin;
}

/** °C at a pressure altitude in the standard atmosphere. */
export const standardTemperatureC = (altitudeFt: number): number | null =>
  after(temperatureRatio(altitudeFt), (ratio) => seaLevelKelvin * ratio + absoluteZeroC);

/** δ = P / P0 at a pressure altitude. */
export const pressureRatio = (altitudeFt: number): number | null =>
  after(temperatureRatio(altitudeFt), (ratio) => ratio ** pressurePower);

/** Pressure at a pressure altitude, hPa. */
export const standardPressureHpa = (altitudeFt: number): number | null =>
  after(pressureRatio(altitudeFt), (ratio) => ratio * seaLevelHpa);

/**
 * σ = ρ / ρ0 = δ / θ.
 * @param outsideC the air's temperature; left out, the standard one of that altitude.
 */
export function densityRatio(pressureAltitudeFt: number, outsideC?: number): number | null {
  const theta = outsideC === undefined ? temperatureRatio(pressureAltitudeFt) : ratioOfCelsius(outsideC);
  if (theta === null) return null;
  return after(pressureRatio(pressureAltitudeFt), (delta) => delta / theta);
}

/** The altitude in the standard atmosphere with a pressure, ft. @param hPa 226.3 to 1,776. */
export function altitudeOfPressureFt(hPa: number): number | null {
  return altitudeOfRatio((hPa / seaLevelHpa) ** (1 / pressurePower));
}

/** The altitude in the standard atmosphere with a density, ft. @param ratio σ, 0.297 to 1.63. */
export function altitudeOfDensityFt(ratio: number): number | null {
  return altitudeOfRatio(ratio ** (1 / (pressurePower - 1)));
}

/**
 * What an altimeter set to standard pressure reads: an altimeter's setting moves its zero to the altitude
 * of that pressure. @param elevationFt height above sea level, or what an altimeter with the setting reads.
 */
export const pressureAltitudeFt = (elevationFt: number, settingHpa: number): number | null =>
  after(altitudeOfPressureFt(settingHpa), (zeroFt) => elevationFt + zeroFt);

/** The altitude whose standard density the air has. @param outsideC above absolute zero. */
export const densityAltitudeFt = (pressureAltitudeFt: number, outsideC: number): number | null =>
  after(densityRatio(pressureAltitudeFt, outsideC), altitudeOfDensityFt);

/**
 * TAS = EAS / √σ, with the calibrated airspeed taken for the equivalent one. That holds for slow air: up to
 * 200 kt and 10,000 ft it is at most 0.7 % too fast, as compressibility is left out.
 */
export const trueAirspeedKt = (
  calibratedKt: number,
  pressureAltitudeFt: number,
  outsideC: number,
): number | null =>
  after(densityRatio(pressureAltitudeFt, outsideC), (sigma) => calibratedKt / Math.sqrt(sigma));

/** `trueAirspeedKt` the other way round, with the same limits. */
export const calibratedAirspeedKt = (
  trueKt: number,
  pressureAltitudeFt: number,
  outsideC: number,
): number | null => after(densityRatio(pressureAltitudeFt, outsideC), (sigma) => trueKt * Math.sqrt(sigma));

/**
 * 1,000 ft for each inch of mercury under 29.92. Common practice, no source; within 90 ft of
 * `pressureAltitudeFt` for settings of 28.9 to 30.9 inHg.
 */
export const thumbPressureAltitudeFt = (elevationFt: number, settingInHg: number): number =>
  elevationFt + 1000 * (29.92 - settingInHg);

/** 15 °C less 2 for each 1,000 ft. Common practice, no source; within 0.2 °C up to 10,000 ft. */
export const thumbStandardTemperatureC = (altitudeFt: number): number => 15 - altitudeFt / 500;

/**
 * 120 ft for each °C over the standard temperature. Common practice, no source; within 300 ft of the exact
 * law up to 10,000 ft and 30 °C over standard.
 * @param standardC left out, that of the pressure altitude by the rule of 2 °C; printed examples often take
 *   that of the elevation.
 */
export const thumbDensityAltitudeFt = (
  pressureAltitudeFt: number,
  outsideC: number,
  standardC: number = thumbStandardTemperatureC(pressureAltitudeFt),
): number => pressureAltitudeFt + 120 * (outsideC - standardC);

function altitudeOfRatio(theta: number): number | null {
  const altitudeFt = toFt(((1 - theta) * seaLevelKelvin) / lapseKelvinPerMetre);
  return temperatureRatio(altitudeFt) === null ? null : altitudeFt;
}

function ratioOfCelsius(degC: number): number | null {
  const kelvin = degC - absoluteZeroC;
  return kelvin > 0 ? kelvin / seaLevelKelvin : null;
}

const after = <T>(value: number | null, next: (value: number) => T): T | null =>
  value === null ? null : next(value);
