import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { secondsToHeight, sinkInTimeFtMin, sinkOverDistanceFtMin } from '../../../src/motion/descent.ts';
import {
  decelerationInTimeKtS,
  decelerationOverDistanceKtS,
  fastestToSlowKt,
  slowingDistanceFt,
  slowingSeconds,
} from '../../../src/motion/slowing.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const slowing = fc
  .record({ fromKt: between(60, 300), share: between(0, 0.95), brake: between(0.5, 8) })
  .map(({ fromKt, share, brake }) => ({ fromKt, toKt: fromKt * share, brake }));

describe('slowing down', () => {
  it('agrees with its inverses', () => {
    fc.assert(
      fc.property(slowing, ({ fromKt, toKt, brake }) => {
        const seconds = slowingSeconds(fromKt, toKt, brake)!;
        const distanceFt = slowingDistanceFt(fromKt, toKt, brake)!;
        expect(decelerationInTimeKtS(fromKt, toKt, seconds)).toBeCloseTo(brake, 9);
        expect(decelerationOverDistanceKtS(fromKt, toKt, distanceFt)).toBeCloseTo(brake, 9);
        expect(fastestToSlowKt(toKt, distanceFt, brake)).toBeCloseTo(fromKt, 6);
      }),
    );
  });

  it('in two parts takes as long and as far as in one', () => {
    fc.assert(
      fc.property(slowing, between(0, 1), ({ fromKt, toKt, brake }, share) => {
        const midKt = toKt + (fromKt - toKt) * share;
        const parts = slowingDistanceFt(fromKt, midKt, brake)! + slowingDistanceFt(midKt, toKt, brake)!;
        expect(parts).toBeCloseTo(slowingDistanceFt(fromKt, toKt, brake)!, 4);
      }),
    );
  });

  it('to a stand goes four times as far from twice the speed', () => {
    expect(slowingDistanceFt(100, 0, 2)! / slowingDistanceFt(50, 0, 2)!).toBeCloseTo(4, 9);
  });

  it.each([
    ['braking never makes it faster', slowingSeconds(60, 100, 2)],
    ['holding the speed changes nothing', slowingSeconds(100, 60, 0)],
    ['a point that is here', decelerationOverDistanceKtS(100, 60, 0)],
    ['no time at all', decelerationInTimeKtS(100, 60, 0)],
  ])('has no answer: %s', (_, answer) => {
    expect(answer).toBeNull();
  });

  it('of a negative deceleration is speeding up', () => {
    expect(slowingSeconds(60, 100, -2)).toBe(20);
    expect(slowingDistanceFt(60, 100, -2)).toBeCloseTo(slowingDistanceFt(100, 60, 2)!, 6);
  });
});

describe('the sink to a height', () => {
  it('in a time and over a distance is the same descent', () => {
    fc.assert(
      fc.property(between(200, 2000), between(0, 190), between(10, 120), (from, to, seconds) => {
        const sink = sinkInTimeFtMin(from, to, seconds)!;
        const distanceFt = (100 * 1852 * seconds) / 3600 / 0.3048;
        expect(sinkOverDistanceFtMin(from, to, distanceFt, 100)).toBeCloseTo(sink, 6);
        expect(secondsToHeight(from, to, sink)).toBeCloseTo(seconds, 6);
      }),
    );
  });

  it('is negative for a climb', () => {
    expect(sinkInTimeFtMin(300, 400, 30)).toBe(-200);
    expect(secondsToHeight(300, 400, -200)).toBe(30);
  });

  it('has no answer where the point is never reached, or the height is left behind', () => {
    expect(sinkOverDistanceFtMin(300, 100, 1000, 0)).toBeNull();
    expect(sinkOverDistanceFtMin(300, 100, 0, 50)).toBeNull();
    expect(sinkInTimeFtMin(300, 100, -1)).toBeNull();
    expect(secondsToHeight(300, 100, -200)).toBeNull();
    expect(secondsToHeight(300, 100, 0)).toBeNull();
  });
});
