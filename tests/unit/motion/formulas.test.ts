import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { thumbRadiusNm, thumbHeightFt, thumbStandardBankDeg } from '../../../src/motion/sixty-to-one.ts';
import { ftPerNm } from '../../../src/motion/conversions.ts';
import { heightFt } from '../../../src/motion/descent.ts';
import {
  bankForLoadDeg,
  bankForRadiusDeg,
  bankForRateDeg,
  loadFactor,
  turnRadiusFt,
  turnRateDegS,
} from '../../../src/motion/turn.ts';
import { trueWind, windOver, windTriangle } from '../../../src/motion/wind.ts';

const speed = fc.double({ min: 40, max: 500, noNaN: true });
const bank = fc.double({ min: 1, max: 80, noNaN: true });

describe('formulas and their inverses agree', () => {
  it('of turns', () => {
    fc.assert(
      fc.property(speed, bank, (kt, deg) => {
        expect(bankForRateDeg(kt, turnRateDegS(kt, deg))).toBeCloseTo(deg, 6);
        expect(bankForRadiusDeg(kt, turnRadiusFt(kt, deg))).toBeCloseTo(deg, 6);
        expect(bankForLoadDeg(loadFactor(deg))).toBeCloseTo(deg, 5);
      }),
    );
  });

  it('of the wind over a deck and the true wind behind it', () => {
    const wind = fc.record({
      windKt: fc.double({ min: 0.1, max: 60, noNaN: true }),
      fromDeg: fc.double({ min: -179, max: 179, noNaN: true }),
      shipKt: fc.double({ min: 0, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(wind, (one) => {
        const { speedKt, fromDeg } = windOver(one);
        const back = trueWind({ speedKt, fromDeg, shipKt: one.shipKt });
        expect(back.speedKt).toBeCloseTo(one.windKt, 6);
        expect(back.alongKt).toBeCloseTo(one.windKt * Math.cos((one.fromDeg * Math.PI) / 180), 6);
      }),
    );
  });
});

describe('the wind triangle', () => {
  it('turns the nose into the wind', () => {
    expect(windTriangle(100, 360, 20, 90)).toMatchObject({ crabDeg: expect.closeTo(11.54, 2) as number });
  });

  it('has no answer where the wind is too strong', () => {
    expect(windTriangle(30, 0, 40, 90)).toBeNull();
    expect(windTriangle(30, 0, 40, 0)).toBeNull();
  });
});

describe('rules of thumb stay as near as they say', () => {
  it('of heights: 6 to 7 % less up to 10 degrees', () => {
    for (let deg = 1; deg <= 10; deg++) {
      const share = thumbHeightFt(deg, 1) / heightFt(deg, 1);
      expect(share).toBeGreaterThan(0.93);
      expect(share).toBeLessThan(0.945);
    }
  });

  it('of a standard-rate turn: within 2 degrees from 100 to 200 kt', () => {
    for (let kt = 100; kt <= 200; kt += 10)
      expect(Math.abs(thumbStandardBankDeg(kt) - bankForRateDeg(kt))).toBeLessThan(2);
  });

  it('of the radius at 30 degrees: 10 % too wide', () => {
    for (const kt of [100, 200, 400])
      expect(thumbRadiusNm(kt) / (turnRadiusFt(kt, 30) / ftPerNm)).toBeCloseTo(1.1, 2);
  });
});
