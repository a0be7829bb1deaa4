/**
 * The turn seen from the ship, and where to begin the final one, against an independent path: fine steps over
 * the sea (`sea-frame.ts`), which know neither the closed form nor the wind over deck.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finalTurnAtBank, finalTurnFrom, type FinalTurn } from '../../src/motion/final-turn.ts';
import { turnOverDeck } from '../../src/motion/moving-frame-turn.ts';
import { turnSeconds } from '../../src/motion/turn.ts';
import { windOverDeck } from '../../src/motion/wind-over-deck.ts';
import { deck, gate, target, turnBank, windOverDeckKt } from './marram-legs.ts';
import { publishedValue } from './published-values.ts';
import { fly, type Flown, type Sea, type Seen } from './sea-frame.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const compass = between(0, 360);
const seas = fc.record({
  windKt: between(0, 40),
  windFromDeg: compass,
  shipKt: between(0, 30),
  shipCourseDeg: compass,
});
const places = fc.record({
  aheadFt: between(-9000, 9000),
  rightFt: between(-9000, 9000),
  courseDeg: between(-180, 180),
});
/** What the closed form may be off, of the path as seen from the ship: a tenth of a per cent. */
const allowed = 0.001;

const over = (sea: Sea) =>
  windOverDeck(
    { speedKt: sea.windKt, fromDeg: sea.windFromDeg },
    { courseDeg: sea.shipCourseDeg, speedKt: sea.shipKt },
  );
const apartFt = (one: Pick<Seen, 'aheadFt' | 'rightFt'>, other: Pick<Seen, 'aheadFt' | 'rightFt'>) =>
  Math.hypot(one.aheadFt - other.aheadFt, one.rightFt - other.rightFt);
const apartDeg = (one: number, other: number) => Math.abs(((((one - other + 180) % 360) + 360) % 360) - 180);

describe('a turn seen from the ship', () => {
  const turns = fc.record({
    airspeedKt: between(90, 350),
    bankDeg: between(10, 70),
    throughDeg: fc.oneof(between(5, 400), between(-400, -5)),
    share: between(0.7, 1.3),
  });

  test('ends where fine steps over the sea bring it, within 0.1 % of its path', () => {
    fc.assert(
      fc.property(places, turns, seas, (from, { share, ...turn }, sea) => {
        const endAirspeedKt = turn.airspeedKt * share;
        const end = turnOverDeck(from, { ...turn, endAirspeedKt }, over(sea));
        const flown = fly(
          from,
          {
            seconds: end.seconds,
            airspeedKt: [turn.airspeedKt, endAirspeedKt],
            bankDeg: turn.bankDeg * Math.sign(turn.throughDeg),
          },
          sea,
        );
        expect(apartFt(end, flown) / flown.pathFt).toBeLessThan(allowed);
        // Its time is right when so many seconds turn it through just as many degrees.
        expect(Math.abs(flown.courseDeg - end.courseDeg) / Math.abs(turn.throughDeg)).toBeLessThan(allowed);
        if (end.closureKt > 20) expect(apartDeg(end.trackDeg, flown.trackDeg)).toBeLessThan(0.2);
      }),
      { numRuns: 200 },
    );
  });

  test('in calm air beside a ship that lies still closes its circle after 360 degrees', () => {
    fc.assert(
      fc.property(places, turns, (from, { airspeedKt, bankDeg, throughDeg }) => {
        const round = 360 * Math.sign(throughDeg);
        const calm = { alongKt: 0, fromRightKt: 0 };
        const end = turnOverDeck(from, { airspeedKt, bankDeg, throughDeg: round }, calm);
        expect(apartFt(end, from)).toBeLessThan(1e-6 * 9000);
        expect(end.seconds).toBeCloseTo(turnSeconds(airspeedKt, bankDeg, 360), 6);
      }),
    );
  });

  test('after 360 degrees has only slid with the air over the deck', () => {
    const end = turnOverDeck(
      { aheadFt: 0, rightFt: 0, courseDeg: 0 },
      { airspeedKt: 120, bankDeg: 30, throughDeg: 360 },
      { alongKt: 20, fromRightKt: -5 },
    );
    const ftPerKtS = 1852 / 3600 / 0.3048;
    expect(end.aheadFt).toBeCloseTo(-20 * ftPerKtS * end.seconds, 6);
    expect(end.rightFt).toBeCloseTo(5 * ftPerKtS * end.seconds, 6);
  });

  test('in two parts ends where the whole ends', () => {
    fc.assert(
      fc.property(places, turns, seas, between(0.1, 0.9), (from, { share: _, ...turn }, sea, part) => {
        const wind = over(sea);
        const mid = turnOverDeck(from, { ...turn, throughDeg: turn.throughDeg * part }, wind);
        const end = turnOverDeck(mid, { ...turn, throughDeg: turn.throughDeg * (1 - part) }, wind);
        expect(apartFt(end, turnOverDeck(from, turn, wind))).toBeLessThan(1e-5 * 9000);
      }),
    );
  });

  test('through nothing stays where it is', () => {
    const from = { aheadFt: 10, rightFt: -20, courseDeg: 30 };
    const end = turnOverDeck(
      from,
      { airspeedKt: 120, bankDeg: 30, throughDeg: 0 },
      { alongKt: 9, fromRightKt: 3 },
    );
    expect(end).toMatchObject({ ...from, seconds: 0 });
  });
});

describe('where the final turn begins', () => {
  const finals = fc.record({
    toThe: fc.constantFrom('left', 'right'),
    airspeedKt: between(110, 180),
    share: between(0.75, 1),
    bankDeg: between(15, 45),
    grooveFt: between(2000, 8000),
    lineFt: between(-150, 150),
    grooveTrackDeg: between(-12, 12),
  });

  function planned(draw: typeof finals extends fc.Arbitrary<infer T> ? T : never, sea: Sea) {
    const { toThe, airspeedKt, share, grooveFt, lineFt, grooveTrackDeg } = draw;
    const turn: FinalTurn = {
      toThe,
      airspeedKt,
      endAirspeedKt: airspeedKt * share,
      wind: over(sea),
      rollOut: { aheadFt: -grooveFt, rightFt: lineFt },
      grooveTrackDeg,
    };
    return { turn, plan: finalTurnAtBank(turn, draw.bankDeg)! };
  }

  test('it rolls out on the groove line at the wanted length, flown by fine steps over the sea', () => {
    fc.assert(
      fc.property(finals, seas, (draw, sea) => {
        const { turn, plan } = planned(draw, sea);
        const flown: Flown = fly(
          plan.begin,
          {
            seconds: plan.seconds,
            airspeedKt: [turn.airspeedKt, turn.endAirspeedKt!],
            bankDeg: plan.bankDeg * (turn.toThe === 'left' ? -1 : 1),
          },
          sea,
        );
        expect(apartFt(flown, turn.rollOut) / flown.pathFt).toBeLessThan(allowed);
        // Where the wind takes most of the airspeed, the track turns by so much more than the heading.
        const closureKt = turn.endAirspeedKt! - Math.hypot(turn.wind.alongKt, turn.wind.fromRightKt);
        const slow = turn.endAirspeedKt! / Math.max(closureKt, 5);
        expect(apartDeg(flown.trackDeg, turn.grooveTrackDeg!)).toBeLessThan(0.1 * slow);
        expect(Math.abs(plan.throughDeg)).toBeLessThan(360);
      }),
      { numRuns: 200 },
    );
  });

  test('the downwind leads there: so many seconds past abeam, on a track straight back', () => {
    fc.assert(
      fc.property(finals, seas, (draw, sea) => {
        const { turn, plan } = planned(draw, sea);
        if (plan.pastAbeamSeconds <= 0) return;
        const abeam = { aheadFt: 0, rightFt: plan.begin.rightFt, courseDeg: plan.begin.courseDeg };
        const straight = { airspeedKt: [turn.airspeedKt, turn.airspeedKt] as const, bankDeg: 0 };
        const flown = fly(abeam, { ...straight, seconds: plan.pastAbeamSeconds }, sea, 100);
        expect(apartFt(flown, plan.begin) / flown.pathFt).toBeLessThan(allowed);
      }),
    );
  });

  test('from a given spacing the bank is the one that has this spacing', () => {
    fc.assert(
      fc.property(finals, seas, (draw, sea) => {
        const { turn, plan } = planned(draw, sea);
        const widthFt = turn.rollOut.rightFt - plan.begin.rightFt;
        if (Math.abs(widthFt) < 50) return;
        const back = finalTurnFrom(turn, plan.begin.rightFt)!;
        expect(back.bankDeg).toBeCloseTo(draw.bankDeg, 6);
        expect(apartFt(back.begin, plan.begin)).toBeLessThan(0.01);
      }),
    );
  });

  test('in a calm it is two radii wide, and begins abeam of the roll-out', () => {
    const wind = over({ windKt: 0, windFromDeg: 0, shipKt: 0, shipCourseDeg: 0 });
    const turn = { toThe: 'left', airspeedKt: 130, wind, rollOut: { aheadFt: -3000, rightFt: 0 } } as const;
    const plan = finalTurnAtBank(turn, 27)!;
    // 0.967 nm: turn-diameter-130-27 of the published values.
    expect(plan.begin.rightFt / -(1852 / 0.3048)).toBeCloseTo(0.967, 3);
    expect(plan.begin.aheadFt).toBeCloseTo(-3000, 6);
    expect(plan.throughDeg).toBeCloseTo(-180, 9);
  });

  test('there is none where the wind over deck leaves no way, or on the wrong side', () => {
    const calm = over({ windKt: 0, windFromDeg: 0, shipKt: 0, shipCourseDeg: 0 });
    const storm = over({ windKt: 90, windFromDeg: 0, shipKt: 30, shipCourseDeg: 0 });
    const turn = {
      toThe: 'left',
      airspeedKt: 110,
      wind: calm,
      rollOut: { aheadFt: -3000, rightFt: 0 },
    } as const;
    expect(finalTurnFrom(turn, 6000)).toBeNull();
    expect(finalTurnFrom(turn, 0)).toBeNull();
    expect(finalTurnAtBank({ ...turn, wind: storm }, 30)).toBeNull();
  });

  test('on Marram it is where the deck puts it: 11 s past abeam, 25 degrees, 7,300 ft out', () => {
    expect(deck.id).toBe('marram-recovery');
    const groove = gate('groove').position;
    const turnIn = gate('turn-in').position;
    const plan = finalTurnFrom(
      {
        toThe: 'left',
        airspeedKt: target('turn-in', 'airspeed'),
        endAirspeedKt: target('groove', 'airspeed'),
        wind: over({ windKt: 0, windFromDeg: 0, shipKt: windOverDeckKt, shipCourseDeg: 0 }),
        rollOut: groove,
      },
      turnIn.rightFt,
    )!;
    expect(plan.bankDeg).toBeCloseTo(turnBank, 0);
    expect(apartFt(plan.begin, turnIn)).toBeLessThan(200);
    expect(Math.abs(plan.pastAbeamSeconds - target('turn-in', 'timing'))).toBeLessThan(0.7);
  });
});

describe('the published pattern of jet carrier training (CNATRA P-1211, P-1212)', () => {
  const value = (id: string) => publishedValue(id).value;
  const airspeedKt = 130;
  /** With a groove of so many seconds at the closure of that wind down the deck. */
  const plan = (windKt: number, grooveS: number, spacingNm: number) =>
    finalTurnFrom(
      {
        toThe: 'left',
        airspeedKt,
        wind: over({ windKt, windFromDeg: 0, shipKt: 0, shipCourseDeg: 0 }),
        rollOut: { aheadFt: (-grooveS * (airspeedKt - windKt) * 1852) / 3600 / 0.3048, rightFt: 0 },
      },
      (-spacingNm * 1852) / 0.3048,
    )!;

  test('its nearest spacing asks for a bank within its bounds at 130 kt', () => {
    const { bankDeg } = plan(20, value('carrier-groove-shortest'), value('carrier-abeam-nearest'));
    expect(bankDeg).toBeGreaterThan(value('carrier-bank-least'));
    expect(bankDeg).toBeLessThan(value('carrier-bank-most'));
  });

  test('its 15 s past abeam in a calm are those that leave its shortest groove', () => {
    const calm = plan(0, value('carrier-groove-shortest'), value('carrier-abeam-nearest'));
    expect(calm.pastAbeamSeconds).toBeCloseTo(value('final-turn-timing-calm'), 6);
  });

  // The rule takes off a second for each knot; with the spacing kept, mechanics ask for half of it.
  test('its second a knot is on the side of mechanics, and more than they ask for', () => {
    const calm = plan(0, 15, 1).pastAbeamSeconds;
    const perKnot = (calm - plan(8, 15, 1).pastAbeamSeconds) / 8;
    expect(perKnot).toBeGreaterThan(0.45);
    expect(perKnot).toBeLessThan(0.6);
    expect((value('final-turn-timing-calm') - value('final-turn-timing-8')) / 8).toBe(1);
  });
});
