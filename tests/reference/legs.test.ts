/**
 * The legs that the app shows for the decks it comes with, against the legs worked out here by other ways:
 * straight ones by hand, turns by fine steps at the bank that the deck calls (`marram-legs.ts`,
 * `turn-in-wind.ts`).
 */
import { describe, expect, test } from 'vitest';
import { legFindings } from '../../src/motion/leg-findings.ts';
import { legsOf, type LegFlight } from '../../src/motion/legs.ts';
import { flownInSteps } from '../unit/motion/flown-leg.ts';
import { airspeedAt, deck as marram, gate, legs, turnBank, windOverDeckKt, type Leg } from './marram-legs.ts';
import { shippedDeck } from './shipped-deck.ts';

const circuit = shippedDeck('light-aircraft-circuit');
const flightFrom = (id: string): LegFlight => legsOf(marram).find(({ from }) => from === id)!.flight!;

describe('the decks that come with the app', () => {
  test.each([marram, circuit])(
    '“$title” can be flown: every leg is worked out, none passes a limit',
    (deck) => {
      expect(legsOf(deck).filter(({ flight }) => flight === null)).toEqual([]);
      expect(legFindings(deck)).toEqual([]);
    },
  );

  // A limit that nothing comes near would say nothing.
  test.each([
    [marram, 'bankDeg', 0.75],
    [marram, 'sinkFtMin', 0.75],
    [marram, 'decelerationKtS', 0.75],
    [circuit, 'bankDeg', 0.75],
    [circuit, 'sinkFtMin', 0.7],
    [circuit, 'climbFtMin', 0.7],
  ] as const)('$title: some leg asks for most of the limit on %s', (deck, limit, share) => {
    const most = deck.flying!.most[limit]!;
    const flying = { ...deck.flying!, most: { ...deck.flying!.most, [limit]: most * share } };
    expect(legFindings({ ...deck, flying }).length).toBeGreaterThan(0);
  });
});

describe('the legs of Marram', () => {
  const straight: readonly (readonly [string, Leg])[] = [
    ['initial', legs.run],
    ['downwind', legs.downwind],
    ['abeam', legs.abeam],
    ['groove', legs.groove],
    ['deceleration', legs.early],
    ['far-check', legs.transition],
    ['near-check', legs.closing],
  ];

  test.each(straight)('from %s is the straight leg worked out by hand', (id, leg) => {
    const flight = flightFrom(id);
    expect(flight.seconds).toBeCloseTo(leg.seconds, 6);
    expect(flight.decelerationKtS).toBeCloseTo(leg.decelerationKtS, 6);
    if (leg.meanSink !== null) expect(flight.meanSinkFtMin).toBeCloseTo(leg.meanSink, 5);
  });

  // There the bank is the deck's and the end misses the gate by up to 200 ft; here the bank is what meets it.
  test.each([
    ['break', legs.break, 60],
    ['turn-in', legs.firstHalf, turnBank],
    ['ninety', legs.secondHalf, turnBank],
  ] as const)('from %s is the turn flown in steps at the bank called, within 3 %', (id, leg, bankDeg) => {
    const flight = flightFrom(id);
    expect(Math.abs(flight.seconds / leg.seconds - 1)).toBeLessThan(0.03);
    expect(Math.abs(flight.turn!.bankDeg / bankDeg - 1)).toBeLessThan(0.03);
  });

  test.each(['break', 'turn-in', 'ninety'])(
    'from %s, flown in steps, ends at the next gate within 0.1 %',
    (id) => {
      const index = marram.gates.findIndex((one) => one.id === id);
      const [from, to] = [marram.gates[index]!, marram.gates[index + 1]!];
      const flight = flightFrom(id);
      const end = flownInSteps({
        headingDeg: from.position.courseDeg,
        speedsKt: [airspeedAt(from.id), airspeedAt(to.id)],
        windKt: { ahead: windOverDeckKt, right: 0 },
        flight,
      });
      const missFt = Math.hypot(
        from.position.aheadFt + end.aheadFt - to.position.aheadFt,
        from.position.rightFt + end.rightFt - to.position.rightFt,
      );
      expect(missFt).toBeLessThan(0.001 * flight.distanceFt);
    },
  );

  test('to the hover end there where the gates say, at rest over the deck', () => {
    expect(airspeedAt('alongside')).toBe(windOverDeckKt);
    expect(gate('alongside').position.aheadFt).toBe(0);
  });
});
