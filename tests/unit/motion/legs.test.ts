import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { legsOf, type LegFlight, type LegTurn } from '../../../src/motion/legs.ts';
import { publishedValue } from '../../reference/published-values.ts';
import { flownInSteps } from './flown-leg.ts';
import { twoGates, type GateSketch, type WindSketch } from './two-gates.ts';

const ftPerNm = 1852 / 0.3048;
const start: GateSketch = { aheadFt: 0, rightFt: 0, courseDeg: 0, airspeed: 60 };
const legOf = (from: GateSketch, to: GateSketch, wind?: WindSketch) =>
  legsOf(twoGates(from, to, {}, wind))[0]!;
const flightOf = (from: GateSketch, to: GateSketch, wind?: WindSketch): LegFlight =>
  legOf(from, to, wind).flight!;
const turnOf = (from: GateSketch, to: GateSketch, wind?: WindSketch): LegTurn =>
  flightOf(from, to, wind).turn!;

describe('a straight leg', () => {
  const mile: GateSketch = { aheadFt: ftPerNm, rightFt: 0, courseDeg: 0, airspeed: 60 };

  // By the definition of the knot: a nautical mile in an hour.
  it('of a mile at 60 kt takes a minute in a calm', () => {
    expect(flightOf(start, mile)).toMatchObject({ turn: null, decelerationKtS: 0 });
    expect(flightOf(start, mile).seconds).toBeCloseTo(60, 9);
    expect(flightOf(start, mile).distanceFt).toBeCloseTo(ftPerNm, 9);
  });

  // 60 - 20 = 40 kt: three halves of the time.
  it('takes a minute and a half against 20 kt over the deck, of the wind or of the ship', () => {
    expect(flightOf(start, mile, { speed: 20, angle: 0, ship: 0 }).seconds).toBeCloseTo(90, 9);
    expect(flightOf(start, mile, { speed: 0, angle: 0, ship: 20 }).seconds).toBeCloseTo(90, 9);
    expect(flightOf(start, mile, { speed: 8, angle: 0, ship: 12 }).seconds).toBeCloseTo(90, 9);
  });

  // The triangle of 3, 4 and 5: 50 kt through the air, 30 from the side, 40 over the ground.
  it('holds its track against a wind from the side', () => {
    const across = { speed: 30, angle: 90, ship: 0 };
    const slower = (gate: GateSketch): GateSketch => ({ ...gate, airspeed: 50 });
    expect(flightOf(slower(start), slower(mile), across).seconds).toBeCloseTo(90, 9);
  });

  it('loses speed and height evenly: 30 kt and 500 ft of a mile at a mean of 45 kt, in 80 s', () => {
    const flight = flightOf({ ...start, height: 500 }, { ...mile, airspeed: 30, height: 0 });
    expect(flight.seconds).toBeCloseTo(80, 9);
    expect(flight.decelerationKtS).toBeCloseTo(30 / 80, 9);
    expect(flight.meanSinkFtMin).toBeCloseTo(375, 9);
  });

  it('takes the speed from the closure where there is no airspeed', () => {
    const { airspeed: _, ...bare } = mile;
    const stopped = flightOf(
      { ...start, airspeed: 60 },
      { ...bare, closure: 0 },
      { speed: 0, angle: 0, ship: 20 },
    );
    expect(stopped.seconds).toBeCloseTo(180, 6);
    expect(stopped.decelerationKtS).toBeCloseTo(40 / 180, 9);
  });

  it('follows the settings of another day', () => {
    const deck = twoGates(start, mile, {}, { speed: 20, angle: 0, ship: 0 });
    expect(legsOf(deck, { 'wind-speed': 0 })[0]!.flight!.seconds).toBeCloseTo(60, 9);
    expect(legsOf(deck, { 'wind-angle': 180 })[0]!.flight!.seconds).toBeCloseTo(45, 9);
  });
});

describe('a turning leg', () => {
  const radius = publishedValue('turn-radius-120-30-exact').value;
  const fast: GateSketch = { ...start, airspeed: 120 };

  // FAA-H-8083-25, chapter 5, figure of bank, radius and rate: 120 kt at 30° of bank.
  it('of half a circle, as wide as two radii at 120 kt and 30°, takes 30° of bank', () => {
    const flight = flightOf(fast, { aheadFt: 0, rightFt: -2 * radius, courseDeg: 180, airspeed: 120 });
    const turn = flight.turn!;
    expect(turn.direction).toBe('left');
    expect(turn.bankDeg).toBeCloseTo(30, 2);
    expect(turn.loadFactor).toBeCloseTo(1.1547, 4);
    expect(turn.radiusFt).toBeCloseTo(radius, 0);
    expect([turn.beforeS, turn.afterS]).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(flight.distanceFt).toBeCloseTo(Math.PI * radius, 0);
    expect(180 / flight.seconds).toBeCloseTo(publishedValue('turn-rate-120-30').value, 1);
  });

  it('of a quarter begins or ends with a straight piece where the gates ask for one', () => {
    const early = flightOf(fast, { aheadFt: radius + 1000, rightFt: radius, courseDeg: 90, airspeed: 120 });
    expect(early.turn).toMatchObject({ direction: 'right', afterS: 0 });
    expect(early.turn!.bankDeg).toBeCloseTo(30, 3);
    expect(early.turn!.beforeS).toBeCloseTo(1000 / ((120 * ftPerNm) / 3600), 3);
    const late = flightOf(fast, { aheadFt: radius, rightFt: radius + 1000, courseDeg: 90, airspeed: 120 });
    expect(late.turn).toMatchObject({ beforeS: 0 });
    expect(late.turn!.afterS).toBeCloseTo(early.turn!.beforeS, 3);
    expect(late.distanceFt).toBeCloseTo((Math.PI / 2) * radius + 1000, 0);
  });

  it('goes round the side on which the next gate lies', () => {
    const away = (rightFt: number): GateSketch => ({ aheadFt: 0, rightFt, courseDeg: 180, airspeed: 120 });
    expect(turnOf(fast, away(4000)).direction).toBe('right');
    expect(turnOf(fast, away(-4000)).direction).toBe('left');
    expect(turnOf(fast, { ...away(-4000), courseDeg: 165 })).toMatchObject({
      direction: 'left',
      throughDeg: 195,
    });
  });

  it('is none where the next gate lies on the other side of the courses', () => {
    const wrong: GateSketch = { aheadFt: -3000, rightFt: 3000, courseDeg: 90, airspeed: 120 };
    expect(legOf(fast, wrong)).toMatchObject({ flight: null, why: { kind: 'no-turn' } });
  });
});

/** Two gates, speeds and a wind for which there is a turn, more often than not. */
const turns = fc.record({
  aheadFt: fc.integer({ min: -4000, max: 9000 }),
  rightFt: fc.integer({ min: 500, max: 9000 }),
  courseDeg: fc.integer({ min: 15, max: 200 }),
  speeds: fc.tuple(fc.integer({ min: 60, max: 320 }), fc.integer({ min: 60, max: 320 })),
  wind: fc.record({
    speed: fc.integer({ min: 0, max: 35 }),
    angle: fc.integer({ min: -180, max: 180 }),
    ship: fc.integer({ min: 0, max: 20 }),
  }),
});
type Turn = typeof turns extends fc.Arbitrary<infer T> ? T : never;

const flyTurn = ({ aheadFt, rightFt, courseDeg, speeds, wind }: Turn, headingDeg = 0) => {
  const [sin, cos] = [Math.sin((headingDeg * Math.PI) / 180), Math.cos((headingDeg * Math.PI) / 180)];
  const turned = { aheadFt: aheadFt * cos - rightFt * sin, rightFt: aheadFt * sin + rightFt * cos };
  return legOf(
    { ...start, courseDeg: headingDeg, airspeed: speeds[0] },
    { ...turned, courseDeg: courseDeg + headingDeg, airspeed: speeds[1] },
    wind,
  ).flight;
};

describe('every turning leg', () => {
  it('flown in small steps ends at the next gate, on its course, after the same way: within 0.1 %', () => {
    let flown = 0;
    fc.assert(
      fc.property(turns, (turn) => {
        const flight = flyTurn(turn);
        if (!flight || flight.turn!.bankDeg > 80) return;
        flown++;
        const { speed, angle, ship } = turn.wind;
        const from = (angle * Math.PI) / 180;
        const windKt = { ahead: speed * Math.cos(from) + ship, right: speed * Math.sin(from) };
        const end = flownInSteps({ headingDeg: 0, speedsKt: turn.speeds, windKt, flight });
        const slack = 0.001 * flight.distanceFt;
        expect(Math.hypot(end.aheadFt - turn.aheadFt, end.rightFt - turn.rightFt)).toBeLessThan(slack);
        expect(Math.abs(end.lengthFt - flight.distanceFt)).toBeLessThan(slack);
        const off = (((end.headingDeg - turn.courseDeg) % 360) + 540) % 360;
        expect(Math.abs(off - 180)).toBeLessThan(0.2);
      }),
      { seed: 4, numRuns: 200 },
    );
    expect(flown).toBeGreaterThan(80);
  });

  it('is the same the other way round in a calm: way, time, bank, the straight pieces exchanged', () => {
    fc.assert(
      fc.property(turns, (given) => {
        const turn = { ...given, wind: { speed: 0, angle: 0, ship: 0 } };
        const there = flyTurn(turn);
        const back = legOf(
          { ...start, courseDeg: turn.courseDeg + 180, airspeed: turn.speeds[1] },
          { aheadFt: -turn.aheadFt, rightFt: -turn.rightFt, courseDeg: 180, airspeed: turn.speeds[0] },
        ).flight;
        expect(back === null).toBe(there === null);
        if (!there || !back) return;
        expect(back.distanceFt / there.distanceFt).toBeCloseTo(1, 6);
        expect(back.seconds / there.seconds).toBeCloseTo(1, 6);
        expect(back.turn!.bankDeg).toBeCloseTo(there.turn!.bankDeg, 4);
        expect(back.turn!.beforeS).toBeCloseTo(there.turn!.afterS, 4);
        expect(back.decelerationKtS).toBeCloseTo(-there.decelerationKtS!, 6);
      }),
      { seed: 4, numRuns: 100 },
    );
  });

  it('twice as fast in a calm takes half the time and four times the tangent of the bank', () => {
    fc.assert(
      fc.property(turns, (given) => {
        const wind = { speed: 0, angle: 0, ship: 0 };
        const once = flyTurn({ ...given, wind });
        const twice = flyTurn({ ...given, wind, speeds: [given.speeds[0] * 2, given.speeds[1] * 2] });
        if (!once || !twice) return;
        const tangent = (deg: number): number => Math.tan((deg * Math.PI) / 180);
        expect(once.seconds / twice.seconds).toBeCloseTo(2, 6);
        expect(tangent(twice.turn!.bankDeg) / tangent(once.turn!.bankDeg)).toBeCloseTo(4, 5);
        expect(twice.distanceFt).toBeCloseTo(once.distanceFt, 3);
      }),
      { seed: 4, numRuns: 100 },
    );
  });

  it('does not mind which way the reference course points, in a calm', () => {
    fc.assert(
      fc.property(turns, fc.integer({ min: 0, max: 359 }), (given, headingDeg) => {
        const turn = { ...given, wind: { speed: 0, angle: 0, ship: 0 } };
        const [straight, turned] = [flyTurn(turn), flyTurn(turn, headingDeg)];
        expect(turned === null).toBe(straight === null);
        if (!straight || !turned) return;
        expect(turned.seconds).toBeCloseTo(straight.seconds, 5);
        expect(turned.turn!.bankDeg).toBeCloseTo(straight.turn!.bankDeg, 5);
      }),
      { seed: 4, numRuns: 60 },
    );
  });
});

describe('every straight leg', () => {
  const along = fc.integer({ min: 500, max: 30_000 });
  const speed = fc.integer({ min: 50, max: 350 });

  it('takes less time the faster it is flown', () => {
    fc.assert(
      fc.property(along, speed, speed, fc.integer({ min: 1, max: 50 }), (aheadFt, first, last, more) => {
        const seconds = (one: number, other: number): number =>
          flightOf({ ...start, airspeed: one }, { aheadFt, rightFt: 0, courseDeg: 0, airspeed: other })
            .seconds;
        expect(seconds(first + more, last)).toBeLessThan(seconds(first, last));
        expect(seconds(first, last + more)).toBeLessThan(seconds(first, last));
      }),
    );
  });

  it('takes more time the more wind stands against it', () => {
    fc.assert(
      fc.property(along, speed, fc.integer({ min: 1, max: 20 }), (aheadFt, airspeed, against) => {
        const to = { aheadFt, rightFt: 0, courseDeg: 0, airspeed };
        const seconds = (ship: number): number =>
          flightOf({ ...start, airspeed }, to, { speed: 0, angle: 0, ship }).seconds;
        expect(seconds(against)).toBeGreaterThan(seconds(0));
      }),
    );
  });

  it('flown in small steps on the nose’s own heading ends abreast of the next gate, within 0.1 %', () => {
    fc.assert(
      fc.property(along, speed, speed, fc.integer({ min: 0, max: 35 }), (aheadFt, first, last, across) => {
        const wind = { speed: across, angle: 90, ship: 0 };
        const { seconds } = flightOf(
          { ...start, airspeed: first },
          { aheadFt, rightFt: 0, courseDeg: 0, airspeed: last },
          wind,
        );
        let way = 0;
        for (let i = 0; i < 2000; i++) {
          const airspeed = first + ((last - first) * (i + 0.5)) / 2000;
          way += (Math.sqrt(airspeed ** 2 - across ** 2) * ftPerNm * seconds) / 3600 / 2000;
        }
        expect(Math.abs(way / aheadFt - 1)).toBeLessThan(0.001);
      }),
    );
  });
});

describe('a leg that can’t be worked out', () => {
  const ahead: GateSketch = { aheadFt: 5000, rightFt: 0, courseDeg: 0, airspeed: 60 };
  const { airspeed: _, ...still } = ahead;

  it.each([
    ['without a speed at the second gate', start, still, { kind: 'no-speed', gate: 'other' }],
    ['to the side', start, { ...ahead, aheadFt: 0, rightFt: 90 }, { kind: 'aside' }],
    ['back along its course', start, { ...ahead, aheadFt: -500 }, { kind: 'aside' }],
    ['over one point', start, { ...ahead, aheadFt: 0 }, { kind: 'aside' }],
    [
      'against a wind as strong as the airspeed',
      { ...start, airspeed: 30 },
      { ...ahead, airspeed: 30 },
      { kind: 'no-way' },
    ],
  ] as const)('says so: %s', (_name, from, to, why) => {
    expect(legOf(from, to, { speed: 30, angle: 0, ship: 0 })).toMatchObject({ flight: null, why });
  });

  it('takes the seconds that the deck states', () => {
    const legs = [{ from: 'one', seconds: 18 }];
    const deck = twoGates(
      { ...start, height: 140 },
      { ...still, aheadFt: 0, rightFt: 90, height: 128 },
      { legs },
    );
    expect(legsOf(deck)[0]!.flight).toEqual({
      seconds: 18,
      distanceFt: 90,
      meanSinkFtMin: 40,
      decelerationKtS: null,
      turn: null,
    });
  });

  it('is not there in a deck that doesn’t say how it is flown', () => {
    const { flying: _flying, ...deck } = twoGates(start, ahead);
    expect(legsOf(deck)).toEqual([]);
  });
});
