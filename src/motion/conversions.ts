/**
 * Units of the trade in SI, exact by definition: the international nautical mile (1852 m), the
 * international foot (0.3048 m), standard acceleration of free fall (9.80665 m/s²).
 * Source: NIST Special Publication 811, appendix B.8; BIPM, The International System of Units.
 */
export const metresPerFt = 0.3048;
export const metresPerNm = 1852;
export const metresPerSecondPerKt = 1852 / 3600;
export const metresPerSecondPerFtMin = 0.3048 / 60;
/** m/s² */
export const standardGravity = 9.80665;

export const ftPerNm = metresPerNm / metresPerFt;
export const ftPerSecondPerKt = metresPerSecondPerKt / metresPerFt;

export const fromKt = (kt: number): number => kt * metresPerSecondPerKt;
export const toKt = (metresPerSecond: number): number => metresPerSecond / metresPerSecondPerKt;
export const fromFt = (ft: number): number => ft * metresPerFt;
export const toFt = (metres: number): number => metres / metresPerFt;
export const toFtMin = (metresPerSecond: number): number => metresPerSecond / metresPerSecondPerFtMin;
export const fromDeg = (deg: number): number => (deg * Math.PI) / 180;
export const toDeg = (radians: number): number => (radians * 180) / Math.PI;

/** The conventional inch of mercury: 3,386.389 Pa (NIST SP 811, appendix B.8). */
export const hPaPerInHg = 33.86389;
/** Exact. */
export const kgPerLb = 0.45359237;
/** Exact: the nautical mile in kilometres. */
export const kmhPerKt = 1.852;

export const fromFtMin = (ftMin: number): number => ftMin * metresPerSecondPerFtMin;
export const fromInHg = (inHg: number): number => inHg * hPaPerInHg;
export const toInHg = (hPa: number): number => hPa / hPaPerInHg;
export const toFahrenheit = (degC: number): number => degC * 1.8 + 32;
export const toCelsius = (degF: number): number => (degF - 32) / 1.8;
