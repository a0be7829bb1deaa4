import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closureTriangle, trueWindBehind, windOverDeck } from '../../../src/motion/wind-over-deck.ts';
import { windComponents, windTriangle } from '../../../src/motion/wind.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const compass = between(0, 359.999);
const wind = fc.record({ speedKt: between(0.01, 60), fromDeg: compass });
const ship = fc.record({ speedKt: between(0, 30), courseDeg: compass });

const apart = (one: number, other: number) => Math.abs(((one - other + 540) % 360) - 180);

describe('the wind over deck', () => {
  it('and the true wind behind it give each other back', () => {
    fc.assert(
      fc.property(wind, ship, (one, way) => {
        const back = trueWindBehind(windOverDeck(one, way), way);
        expect(back.speedKt).toBeCloseTo(one.speedKt, 8);
        expect(apart(back.fromDeg, one.fromDeg)).toBeLessThan(1e-5);
        expect(back.fromDeg).toBeGreaterThanOrEqual(0);
        expect(back.fromDeg).toBeLessThan(360);
      }),
    );
  });

  it('recombines from its components', () => {
    fc.assert(
      fc.property(wind, ship, compass, (one, way, course) => {
        const over = windOverDeck(one, way);
        expect(Math.hypot(over.alongKt, over.fromRightKt)).toBeCloseTo(over.speedKt, 9);
        const { headKt, fromRightKt } = windComponents(one.speedKt, one.fromDeg, course);
        expect(Math.hypot(headKt, fromRightKt)).toBeCloseTo(one.speedKt, 9);
        const from = (Math.atan2(fromRightKt, headKt) * 180) / Math.PI + course;
        expect(apart(from, one.fromDeg)).toBeLessThan(1e-6);
      }),
    );
  });

  it('does not mind where north is', () => {
    fc.assert(
      fc.property(wind, ship, compass, (one, way, turned) => {
        const over = windOverDeck(one, way);
        const other = windOverDeck(
          { ...one, fromDeg: one.fromDeg + turned },
          { ...way, courseDeg: way.courseDeg + turned },
        );
        expect(other.alongKt).toBeCloseTo(over.alongKt, 8);
        expect(other.fromRightKt).toBeCloseTo(over.fromRightKt, 8);
      }),
    );
  });

  it.each([
    ['a ship that lies still feels the true wind', 90, 20, 0, 90, 20],
    ['a wind from right astern as fast as the ship is a calm', 180, 12, 12, 0, 0],
    ['a wind from right ahead adds to her way', 0, 10, 15, 0, 25],
  ])('%s', (_, fromDeg, speedKt, shipKt, feltFrom, felt) => {
    const over = windOverDeck({ speedKt, fromDeg }, { courseDeg: 0, speedKt: shipKt });
    expect(over.speedKt).toBeCloseTo(felt, 9);
    expect(over.fromDeg).toBeCloseTo(feltFrom, 9);
  });

  it('leaves no direction to a calm', () => {
    const way = { courseDeg: 240, speedKt: 12 };
    expect(trueWindBehind({ speedKt: 12, fromDeg: 0 }, way)).toEqual({
      speedKt: expect.closeTo(0, 9) as number,
      fromDeg: 0,
    });
  });
});

describe('closure along a track', () => {
  it('is that of the vectors: through the air, less the wind over deck', () => {
    fc.assert(
      fc.property(wind, ship, between(70, 200), between(-180, 180), (one, way, kt, track) => {
        const over = windOverDeck(one, way);
        const triangle = closureTriangle(kt, track, over);
        if (triangle === null) return;
        const heading = (triangle.headingDeg * Math.PI) / 180;
        const ahead = kt * Math.cos(heading) - over.alongKt;
        const right = kt * Math.sin(heading) - over.fromRightKt;
        expect(Math.hypot(ahead, right)).toBeCloseTo(triangle.groundSpeedKt, 7);
        expect(apart((Math.atan2(right, ahead) * 180) / Math.PI, track)).toBeLessThan(1e-6);
      }),
    );
  });

  it('equals the ground speed less her way, for a ship steaming into the wind', () => {
    const over = windOverDeck({ speedKt: 20, fromDeg: 310 }, { courseDeg: 310, speedKt: 12 });
    const ground = windTriangle(125, 310, 20, 310)!.groundSpeedKt;
    expect(closureTriangle(125, 0, over)!.groundSpeedKt).toBeCloseTo(ground - 12, 9);
  });

  it('has no answer where the wind over deck is faster', () => {
    expect(closureTriangle(30, 0, { speedKt: 35, fromDeg: 0 })).toBeNull();
    expect(closureTriangle(30, 0, { speedKt: 35, fromDeg: 90 })).toBeNull();
  });
});
