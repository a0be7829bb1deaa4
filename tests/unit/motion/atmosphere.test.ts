import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  altitudeOfDensityFt,
  altitudeOfPressureFt,
  calibratedAirspeedKt,
  densityAltitudeFt,
  densityRatio,
  pressureAltitudeFt,
  pressureRatio,
  seaLevelHpa,
  standardPressureHpa,
  standardTemperatureC,
  temperatureRatio,
  thumbDensityAltitudeFt,
  thumbPressureAltitudeFt,
  thumbStandardTemperatureC,
  trueAirspeedKt,
} from '../../../src/motion/atmosphere.ts';
import { fromInHg, toCelsius, toFahrenheit, toInHg } from '../../../src/motion/conversions.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const altitude = between(-16_000, 36_000);
const lowAltitude = between(0, 10_000);

describe('the standard atmosphere', () => {
  it('gives back the altitude of its pressure and of its density', () => {
    fc.assert(
      fc.property(altitude, (ft) => {
        expect(altitudeOfPressureFt(standardPressureHpa(ft)!)).toBeCloseTo(ft, 5);
        expect(altitudeOfDensityFt(densityRatio(ft)!)).toBeCloseTo(ft, 5);
      }),
    );
  });

  it('has the density altitude of its own temperature', () => {
    fc.assert(
      fc.property(altitude, (ft) => {
        expect(densityAltitudeFt(ft, standardTemperatureC(ft)!)).toBeCloseTo(ft, 5);
      }),
    );
  });

  it('is a gas: pressure is density times temperature', () => {
    fc.assert(
      fc.property(altitude, (ft) => {
        expect(densityRatio(ft)! * temperatureRatio(ft)!).toBeCloseTo(pressureRatio(ft)!, 12);
      }),
    );
  });

  it('carries its own weight: pressure falls by density times g for each metre (fine steps)', () => {
    const densityAtSeaLevel = 1.225;
    let pascals = 101_325;
    const step = 1;
    for (let m = 0; m < 3048; m += step) {
      const ft = (m + step / 2) / 0.3048;
      pascals -= densityAtSeaLevel * densityRatio(ft)! * 9.80665 * step;
    }
    expect(pascals / 100 / standardPressureHpa(10_000)!).toBeCloseTo(1, 5);
  });

  it('ends at the tropopause, and five kilometres down', () => {
    expect(standardTemperatureC(36_089.2)).toBeCloseTo(-56.5, 3);
    expect(standardTemperatureC(36_100)).toBeNull();
    expect(standardPressureHpa(-16_500)).toBeNull();
    expect(altitudeOfPressureFt(200)).toBeNull();
    expect(altitudeOfPressureFt(-1)).toBeNull();
    expect(altitudeOfDensityFt(0)).toBeNull();
    expect(densityAltitudeFt(30_000, 60)).toBeNull();
    expect(densityAltitudeFt(1000, -300)).toBeNull();
    expect(pressureRatio(NaN)).toBeNull();
  });
});

describe('pressure altitude', () => {
  it('is the elevation on a standard setting', () => {
    fc.assert(
      fc.property(lowAltitude, (ft) => {
        expect(pressureAltitudeFt(ft, seaLevelHpa)).toBeCloseTo(ft, 6);
      }),
    );
  });

  it('is near the rule of 1,000 ft an inch, within 90 ft from 28.9 to 30.9 inHg', () => {
    for (let inHg = 28.9; inHg <= 30.91; inHg += 0.1)
      expect(
        Math.abs(thumbPressureAltitudeFt(0, inHg) - pressureAltitudeFt(0, fromInHg(inHg))!),
      ).toBeLessThan(90);
  });
});

describe('rules of thumb stay as near as they say', () => {
  it('of the standard temperature: within 0.2 °C up to 10,000 ft', () => {
    for (let ft = 0; ft <= 10_000; ft += 500)
      expect(Math.abs(thumbStandardTemperatureC(ft) - standardTemperatureC(ft)!)).toBeLessThan(0.2);
  });

  it('of density altitude: within 300 ft up to 10,000 ft and 30 °C over standard', () => {
    for (let ft = 0; ft <= 10_000; ft += 1000)
      for (let over = 0; over <= 30; over += 5) {
        const degC = standardTemperatureC(ft)! + over;
        expect(Math.abs(thumbDensityAltitudeFt(ft, degC) - densityAltitudeFt(ft, degC)!)).toBeLessThan(300);
      }
  });
});

describe('true airspeed', () => {
  it('and calibrated airspeed give each other back', () => {
    fc.assert(
      fc.property(between(40, 250), lowAltitude, between(-30, 45), (kt, ft, degC) => {
        const trueKt = trueAirspeedKt(kt, ft, degC)!;
        expect(calibratedAirspeedKt(trueKt, ft, degC)).toBeCloseTo(kt, 9);
      }),
    );
  });

  it('is the calibrated one at sea level on a standard day', () => {
    expect(trueAirspeedKt(123, 0, 15)).toBeCloseTo(123, 9);
  });

  it('is at most 0.7 % too fast up to 200 kt and 10,000 ft (compressible flow, γ = 1.4)', () => {
    let worst = 0;
    for (let ft = 0; ft <= 10_000; ft += 1000)
      for (let kt = 50; kt <= 200; kt += 25) {
        const slow = trueAirspeedKt(kt, ft, standardTemperatureC(ft)!)!;
        worst = Math.max(worst, slow / compressibleTrueKt(kt, ft) - 1);
        expect(slow).toBeGreaterThanOrEqual(compressibleTrueKt(kt, ft) - 1e-9);
      }
    expect(worst).toBeLessThan(0.007);
    expect(worst).toBeGreaterThan(0.005);
  });
});

/** qc from CAS at sea level, Mach from qc at the static pressure, TAS = M a: isentropic flow. */
function compressibleTrueKt(calibratedKt: number, ft: number): number {
  const soundKt = 661.4788;
  const impact = (1 + 0.2 * (calibratedKt / soundKt) ** 2) ** 3.5 - 1;
  const mach = Math.sqrt(5 * ((impact / pressureRatio(ft)! + 1) ** (1 / 3.5) - 1));
  return mach * soundKt * Math.sqrt(temperatureRatio(ft)!);
}

describe('conversions give each other back', () => {
  it('of pressures and temperatures', () => {
    fc.assert(
      fc.property(between(-80, 120), between(20, 32), (degrees, inHg) => {
        expect(toCelsius(toFahrenheit(degrees))).toBeCloseTo(degrees, 9);
        expect(toInHg(fromInHg(inHg))).toBeCloseTo(inHg, 9);
      }),
    );
  });
});
