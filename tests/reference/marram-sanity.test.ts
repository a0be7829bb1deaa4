/**
 * Marram and the Quillon are invented, but their numbers must fit together and fit physics. Facts of the
 * trade that have no source say so; everything else is exact mechanics or a row of
 * shared/reference/published-values.json.
 */
import { describe, expect, test } from 'vitest';
import { phaseOf, tableOf } from '../../src/deck/lookup.ts';
import { publishedValue } from './published-values.ts';
import { bandOf } from './shipped-deck.ts';
import { bankForLoadDeg, ftPerNm, ftPerSecondPerKt, turnRadiusFt, turnRateDegS } from './turn-in-wind.ts';
import {
  deck,
  gate,
  target,
  dayOf,
  windOverDeckKt,
  airspeedAt,
  breakBank,
  turnBank,
  legs,
} from './marram-legs.ts';

describe('the day', () => {
  test('has 20 kt of wind over the deck, straight down it', () => {
    expect(dayOf('wind-angle')).toBe(0);
    expect(windOverDeckKt).toBe(20);
  });

  test.each(deck.gates.filter((g) => g.values.closure && g.values.airspeed).map((g) => g.id))(
    'closure is airspeed less the wind over the deck at “%s”',
    (id) => {
      expect(target(id, 'closure')).toBeCloseTo(target(id, 'airspeed') - windOverDeckKt, 0);
    },
  );
});

describe('the legs can be flown', () => {
  // Bounds of this invented aeroplane: 4.5 kt a second (0.24 g) while pulling in the break, 3 otherwise.
  test.each(Object.values(legs))('$name brakes no harder than it can', (leg) => {
    expect(leg.decelerationKtS).toBeGreaterThanOrEqual(0);
    expect(leg.decelerationKtS).toBeLessThanOrEqual(leg === legs.break ? 4.5 : 3);
  });

  test.each(Object.values(legs))('$name goes down no faster than 600 ft/min, and never up', (leg) => {
    expect(leg.meanSink).toBeGreaterThanOrEqual(0);
    expect(leg.meanSink).toBeLessThanOrEqual(600);
  });

  test('the altitude never rises from gate to gate', () => {
    const altitudes = deck.gates.flatMap((g) => g.values.altitude?.target ?? []);
    expect(altitudes).toEqual([...altitudes].sort((a, b) => b - a));
    expect(altitudes).toHaveLength(12);
  });

  // The sink called at a gate is the one flown around it: the legs before and after it enclose it.
  test.each([
    ['downwind', [legs.downwind], 50],
    ['ninety', [legs.firstHalf, legs.secondHalf], 25],
    ['groove', [legs.secondHalf, legs.groove], 25],
    ['deceleration', [legs.groove, legs.early], 25],
    ['far-check', [legs.early, legs.transition], 25],
    ['near-check', [legs.transition, legs.closing], 25],
  ] as const)('the sink at “%s” agrees with the heights and times around it', (id, around, tolerance) => {
    const sinks = around.map((leg) => leg.meanSink!);
    expect(target(id, 'sink')).toBeGreaterThanOrEqual(Math.min(...sinks) - tolerance);
    expect(target(id, 'sink')).toBeLessThanOrEqual(Math.max(...sinks) + tolerance);
  });

  test('the seconds past the spot at the break and the turn-in follow from the positions', () => {
    const toBreak = gate('break').position.aheadFt / ((320 - windOverDeckKt) * ftPerSecondPerKt);
    expect(Math.abs(target('break', 'timing') - toBreak)).toBeLessThan(0.5);
    expect(Math.abs(target('turn-in', 'timing') - legs.abeam.seconds)).toBeLessThan(0.5);
  });

  test('the descent to touchdown at the called sink takes 15 to 25 s', () => {
    const heightFt = target('over-spot', 'altitude') - 60;
    const seconds = (heightFt / target('touchdown', 'sink')) * 60;
    expect(seconds).toBeGreaterThan(15);
    expect(seconds).toBeLessThan(25);
  });
});

describe('the turns', () => {
  test('the radius and rate used here are the published ones', () => {
    const radius = publishedValue('turn-radius-120-30');
    const exact = publishedValue('turn-radius-120-30-exact');
    const rate = publishedValue('turn-rate-120-30');
    expect(Math.abs(turnRadiusFt(120, 30) - radius.value)).toBeLessThanOrEqual(radius.tolerance);
    expect(Math.abs(turnRadiusFt(120, 30) - exact.value)).toBeLessThanOrEqual(exact.tolerance);
    expect(Math.abs(turnRateDegS(120, 30) - rate.value)).toBeLessThanOrEqual(rate.tolerance);
  });

  test('two g is 60 degrees of bank (FAA-H-8083-25, chapter 5)', () => {
    const row = publishedValue('load-factor-60');
    expect(Math.abs(target('break', 'load-factor') - row.value)).toBeLessThanOrEqual(row.tolerance);
    expect(breakBank).toBeCloseTo(60, 6);
  });

  test('the break comes out on the downwind, within 200 ft', () => {
    expect(legs.break.miss).toBeLessThan(200);
    expect(legs.break.seconds).toBeGreaterThan(22);
    expect(legs.break.seconds).toBeLessThan(30);
  });

  test('the final turn comes out on the approach line at the groove, within 200 ft', () => {
    expect(legs.turn.miss).toBeLessThan(200);
    expect(legs.firstHalf.miss).toBeLessThan(200);
  });

  test('the final turn is as wide as the downwind is far out (V²/(11.26 tan bank), within 5 %)', () => {
    const meanAirspeed = (target('turn-in', 'airspeed') + target('groove', 'airspeed')) / 2;
    const diameterNm = (2 * turnRadiusFt(meanAirspeed, turnBank)) / ftPerNm;
    expect(diameterNm / target('abeam', 'range')).toBeGreaterThan(0.95);
    expect(diameterNm / target('abeam', 'range')).toBeLessThan(1.05);
    expect(Math.abs(gate('abeam').position.rightFt) / ftPerNm).toBeCloseTo(target('abeam', 'range'), 2);
  });

  test('inside the spacing floor the turn would pass its bank limit', () => {
    const meanAirspeed = (target('turn-in', 'airspeed') + target('groove', 'airspeed')) / 2;
    const floorNm = bandOf(gate('abeam'), 'range').floor!;
    const limitDeg = phaseOf(deck, 'final-turn').limits!.bank!.ceiling!;
    const widthFt = floorNm * ftPerNm + gate('groove').position.rightFt;
    expect(2 * turnRadiusFt(meanAirspeed, limitDeg)).toBeGreaterThan(widthFt * 0.99);
    expect(2 * turnRadiusFt(meanAirspeed, limitDeg)).toBeLessThan(widthFt * 1.05);
  });

  test('350 kt at 3 g: 180 degrees in about 20 s, about 1.2 nm across (common practice, no source)', () => {
    const bank = bankForLoadDeg(3);
    const time = publishedValue('break-180-time');
    const diameter = publishedValue('break-diameter');
    expect(Math.abs(180 / turnRateDegS(350, bank) - time.value)).toBeLessThanOrEqual(time.tolerance);
    expect(Math.abs((2 * turnRadiusFt(350, bank)) / ftPerNm - diameter.value)).toBeLessThanOrEqual(
      diameter.tolerance,
    );
  });
});

describe('the deceleration', () => {
  test('an even braking from 100 kt passes the closures called on the way (v² = 2 a s)', () => {
    const from = gate('deceleration').position.aheadFt;
    const closure = target('deceleration', 'airspeed') - windOverDeckKt;
    for (const id of ['far-check', 'near-check']) {
      const expected = closure * Math.sqrt(gate(id).position.aheadFt / from);
      expect(Math.abs(target(id, 'closure') - expected)).toBeLessThan(2);
    }
  });

  test('the phases brake at that rate', () => {
    const closureFtS = (target('deceleration', 'airspeed') - windOverDeckKt) * ftPerSecondPerKt;
    const braking = closureFtS ** 2 / (2 * target('deceleration', 'to-go')) / ftPerSecondPerKt;
    expect(phaseOf(deck, 'early-deceleration').rates!.closure!.constant).toBeCloseTo(-braking, 1);
    expect(phaseOf(deck, 'wing-to-jet').rates!.airspeed!.constant).toBeCloseTo(-braking, 1);
  });

  test('from the groove to alongside takes a time that the trade would accept (common practice, no source)', () => {
    const seconds = legs.groove.seconds + legs.early.seconds + legs.transition.seconds + legs.closing.seconds;
    const shortest = publishedValue('groove-time-shortest');
    const longest = publishedValue('groove-time-longest');
    expect(Math.abs(((310 - 120) / 250) * 60 - shortest.value)).toBeLessThanOrEqual(shortest.tolerance);
    expect(Math.abs(((310 - 120) / 100) * 60 - longest.value)).toBeLessThanOrEqual(longest.tolerance);
    expect(seconds).toBeGreaterThan(shortest.value);
    expect(seconds).toBeLessThan(longest.value);
    const meanSink = ((target('groove', 'altitude') - target('alongside', 'altitude')) / seconds) * 60;
    expect(meanSink).toBeGreaterThan(100);
    expect(meanSink).toBeLessThan(250);
  });

  test('thrust at the checks is what the wing has given up (lift grows with the square of airspeed)', () => {
    // At 10 units the wing carries the whole aeroplane at 165 kt: an invented number of the Quillon.
    const wingShare = (airspeedKt: number) => (airspeedKt / 165) ** 2;
    for (const id of ['far-check', 'near-check']) {
      expect(Math.abs(target(id, 'thrust') - 100 * (1 - wingShare(airspeedAt(id))))).toBeLessThan(1);
    }
    // Said in words in the deck.
    expect(wingShare(150) * 0.9).toBeCloseTo(0.75, 1);
    expect(wingShare(125)).toBeGreaterThan(0.5);
    expect(wingShare(80)).toBeLessThan(0.25);
  });

  test('power comes before about 60 kt, where the wing carries little (common practice, no source)', () => {
    const row = publishedValue('wing-carries-little-below');
    expect((row.value / 165) ** 2).toBeLessThan(0.15);
    expect(Math.abs(target('near-check', 'airspeed') - row.value)).toBeLessThanOrEqual(row.tolerance);
    const rule = tableOf(deck, 'power-ahead').rules.find((r) => r.id === 'behind-at-sixty')!;
    expect(rule.when.airspeed).toBe('[57..64)');
    expect(64).toBeLessThanOrEqual(row.value + row.tolerance);
    expect(rule).toMatchObject({ then: 'more-power', critical: true });
  });
});

describe('the hover', () => {
  test('nozzles and attitude add up to straight down', () => {
    expect(target('deceleration', 'nozzle') + target('alongside', 'pitch')).toBe(90);
  });

  test('the hover station lies on the approach line and clear of the deck', () => {
    const plate = deck.plates!.find((p) => p.id === 'flight-deck')!;
    const spot = plate.spots.find((s) => s.id === 'spot-four')!.at;
    const station = plate.spots.find((s) => s.id === 'hover-station')!.at;
    const outline = plate.shapes.find((s) => s.shape === 'outline')!;
    const portEdge = Math.min(...outline.points.map(([, y]) => y));
    expect([station[0] - spot[0], station[1] - spot[1]]).toEqual([0, gate('alongside').position.rightFt]);
    expect(portEdge - station[1]).toBe(40);
    // The wing reaches 15 ft out: what the deck's texts call clear, and where its limits lie.
    const clearFt = portEdge - station[1] - 15;
    const lineup = bandOf(gate('alongside'), 'lineup');
    const limit = tableOf(deck, 'closing-go-around').rules.find(({ id }) => id === 'deck-edge-limit')!;
    expect(lineup.because).toContain(`${clearFt} ft are clear`);
    expect(lineup.ceiling).toBeLessThan(clearFt);
    expect(limit.when.lineup).toBe(`> ${clearFt}`);
  });
});

describe('the rates of the phases', () => {
  // 1 ft/min is 1/60 ft a second; 1 kt is 1.68781 ft a second.
  const moved = deck.phases!.flatMap((phase) =>
    Object.entries(phase.rates ?? {}).flatMap(([quantity, rate]) =>
      Object.entries(rate.factors ?? {}).map(([factor, value]) => ({
        phase: phase.id,
        quantity,
        factor,
        value,
      })),
    ),
  );
  const of = (quantity: string, ...factors: string[]) =>
    moved.filter((rate) => rate.quantity === quantity && factors.includes(rate.factor));

  test.each(of('altitude', 'sink'))('$phase: altitude follows the sink', ({ value }) => {
    expect(value).toBeCloseTo(-1 / 60, 5);
  });

  test.each([...of('to-go', 'closure', 'airspeed'), ...of('across', 'drift')])(
    '$phase: $quantity follows $factor',
    ({ value }) => {
      expect(value).toBeCloseTo(-ftPerSecondPerKt, 3);
    },
  );

  test('the turn goes round as fast as the bank turns it', () => {
    const [rate] = of('turn-to-go', 'bank');
    expect(-rate!.value * turnBank * legs.turn.seconds).toBeCloseTo(180, -1);
  });
});

describe('the circuit picture', () => {
  test('distances by which gates are detected are those of their positions', () => {
    for (const { id, position, detect } of deck.gates) {
      if (detect?.kind !== 'distance' || id === 'over-spot') continue;
      const distance = Math.hypot(position.aheadFt, position.rightFt);
      expect(Math.abs(distance - detect.ft), id).toBeLessThan(15);
    }
  });

  test('it is a left-hand pattern: out on the starboard side, back on the port side', () => {
    expect(gate('initial').position.rightFt).toBeGreaterThan(0);
    for (const id of ['downwind', 'abeam', 'turn-in', 'ninety', 'groove', 'alongside']) {
      expect(gate(id).position.rightFt, id).toBeLessThan(0);
    }
  });
});
