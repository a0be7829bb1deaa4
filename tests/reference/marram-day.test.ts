/** Marram's numbers of the day: on its own day they are those it always had, on others they follow. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dayOf } from '../../src/day/day-of.ts';
import { deckOfDay } from '../../src/day/deck-of-day.ts';
import { loadDeck } from '../../src/deck/load.ts';
import type { Band } from '../../src/deck/types.ts';
import { legsOf } from '../../src/motion/legs.ts';
import { readFormulas } from '../../src/formulas/read-formulas.ts';
import { shippedDeck } from './shipped-deck.ts';
import { ftPerSecondPerKt } from './turn-in-wind.ts';
import before from './marram-default-day.json' with { type: 'json' };

const deck = shippedDeck('marram-recovery');

const numbersOf = ({ target, desired, adequate, floor, ceiling }: Band) => ({
  target,
  desired,
  adequate,
  ...(floor === undefined ? {} : { floor }),
  ...(ceiling === undefined ? {} : { ceiling }),
});

const targetOn = (changed: Record<string, number>, gate: string, quantity: string): number =>
  deckOfDay(deck, changed).deck.gates.find(({ id }) => id === gate)!.values[quantity]!.target;

describe('on its own day', () => {
  test('every band is the one that was written as numbers before there were formulas', () => {
    const now = Object.fromEntries(
      deck.gates.map(({ id, values }) => [
        id,
        Object.fromEntries(Object.entries(values).map(([quantity, band]) => [quantity, numbersOf(band)])),
      ]),
    );
    expect(now).toEqual(before);
  });

  test('nothing is found in the deck', () => {
    const text = readFileSync(new URL('../../decks/marram-recovery.deck.yaml', import.meta.url), 'utf8');
    expect(loadDeck(text, readFormulas).findings).toEqual([]);
  });

  test('every quantity has a value, and the checklist’s weight is the heaviest that may land', () => {
    expect(deckOfDay(deck, {}).missing).toEqual([]);
    const weights = deck.checklists!.flatMap(({ items }) => items).find(({ id }) => id === 'weight')!;
    expect(Math.round(dayOf(deck)['heaviest-landing']! / 50) * 50).toBe(17_200);
    expect(weights.response).toContain('17,200 lb');
  });
});

describe('on another day', () => {
  test('8 kt more wind over the deck take 8 kt of closure and put 8 kt on the airspeed beside the stern', () => {
    expect(targetOn({ 'wind-speed': 16 }, 'groove', 'closure')).toBe(97);
    expect(targetOn({ 'wind-speed': 16 }, 'near-check', 'airspeed')).toBe(68);
    const { moved } = deckOfDay(deck, { 'wind-speed': 16 });
    expect(moved.find(({ gate, quantity }) => gate === 'groove' && quantity === 'closure')!.because).toBe(
      '8\u00a0kt more wind over deck: 97 instead of 105\u00a0kt',
    );
  });

  test.each([
    ['20 kt from astern, ship stopped', { 'ship-speed': 0, 'wind-speed': 20, 'wind-angle': 180 }, -20],
    ['no wind at all', { 'ship-speed': 0, 'wind-speed': 0 }, 0],
    ['its own day', {}, 20],
    ['30 kt, ship at 20', { 'ship-speed': 20, 'wind-speed': 30 }, 50],
  ])(
    'with %s the turn begins so early that the drift of its 49 s ends at the same place',
    (_, day, windKt) => {
      const { values } = deckOfDay(deck, day);
      const astern = values['turn-in-distance']! + windKt * ftPerSecondPerKt * 49;
      expect(astern).toBeCloseTo(4784, 2);
      const flown = values['turn-in-time']! * (150 + windKt) * ftPerSecondPerKt;
      expect(flown).toBeCloseTo(values['turn-in-distance']!, 2);
    },
  );

  test('gates and legs move with it: the same bank in the final turn, and the time to it that the formula gives', () => {
    for (const speed of [0, 8, 25, 40]) {
      const changed = { 'wind-speed': speed };
      const { deck: today, values } = deckOfDay(deck, changed);
      const flights = legsOf(today).map(({ flight }) => flight!);
      const at = today.gates.findIndex(({ id }) => id === 'turn-in');
      expect(flights[at - 1]!.seconds).toBeCloseTo(values['turn-in-time']!, 1);
      for (const turn of [flights[at]!.turn!, flights[at + 1]!.turn!]) {
        expect(turn.bankDeg).toBeGreaterThan(25);
        expect(turn.bankDeg).toBeLessThan(26);
      }
    }
  });

  test('the more wind the wing has, the less thrust the checks ask for (lift grows with its square)', () => {
    for (const windKt of [8, 18, 28]) {
      const airspeedKt = targetOn({ 'wind-speed': windKt }, 'near-check', 'airspeed');
      expect(targetOn({ 'wind-speed': windKt }, 'near-check', 'thrust')).toBe(
        Math.round(100 * (1 - (airspeedKt / 165) ** 2)),
      );
    }
  });

  test('heat and low pressure take hover weight, and past the chart’s end there is none', () => {
    const hover = (changed: Record<string, number>) => dayOf(deck, changed)['hover-weight'];
    expect(hover({ temperature: 30 })!).toBeLessThan(hover({})!);
    expect(hover({ qnh: 990 })!).toBeLessThan(hover({})!);
    expect(hover({ temperature: 46 })).toBeUndefined();
    expect(deckOfDay(deck, { temperature: 46 }).missing.map(({ quantity }) => quantity)).toEqual([
      'hover-weight',
      'weight-margin',
      'heaviest-landing',
    ]);
  });
});
