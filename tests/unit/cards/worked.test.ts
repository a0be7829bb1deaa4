import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardsOf, groundOf, promptFor } from '../../../src/cards/registry.ts';
import type { Ask, Card, Prompt } from '../../../src/cards/types.ts';
import { workedBand, workedOf } from '../../../src/cards/worked.ts';
import { dayOf } from '../../../src/day/day-of.ts';
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import { needsOf } from '../../../src/day/needs-of.ts';
import { workingOf } from '../../../src/day/working.ts';
import { quantityOf } from '../../../src/deck/lookup.ts';
import { clashes, interleaved } from '../../../src/memory/interleave.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { cardNamed, compiled, small } from './procedures.ts';
import { workedProcedure } from './worked-deck.ts';

const procedure = workedProcedure();
const { deck } = procedure;
const workedCards = cardsOf(procedure).filter(({ kind }) => kind === 'worked');
const seed = fc.integer({ min: 0, max: 2 ** 31 - 1 });

type NumberAsk = Extract<Ask, { form: 'number' }>;
function askOf({ ask }: Prompt): NumberAsk & { given: NonNullable<NumberAsk['given']> } {
  if (ask.form !== 'number' || !ask.given) throw new Error(`nothing given in a ${ask.form}`);
  return { ...ask, given: ask.given };
}
const shown = (card: Card, at: number, of: Procedure = procedure) => askOf(promptFor(of, card, at));
const named = (id: string): Card => cardNamed(id, procedure);

describe('the cards of worked values', () => {
  it('come from the deck, with how the value is worked out as what is expected', () => {
    expect(named('worked/final-closure')).toEqual({
      id: 'worked/final-closure',
      kind: 'worked',
      gate: 'far',
      group: 'gate/far',
      label: 'Closure on the final',
      critical: false,
      windowMs: 30_000,
      expected: 'Closure = 60\u00a0kt − wind over deck',
    });
    expect(named('worked/hover-margin')).toMatchObject({
      gate: null,
      group: 'day',
      critical: true,
      windowMs: 45_000,
    });
  });

  it('come last where they belong to no gate, else after their gate’s values and limits', () => {
    expect(cardsOf(procedure).map(({ id }) => id)).toEqual([
      'value/far/altitude',
      'value/far/closure',
      'limit/far/altitude/floor',
      'worked/final-closure',
      'worked/hover-margin',
      'worked/over-deck',
    ]);
  });

  it('are none in a deck without', () => {
    expect(cardsOf(small).filter(({ kind }) => kind === 'worked')).toEqual([]);
  });

  it('expect the same on another day: it is no edit of the deck', () => {
    const other = compiled(deckOfDay(deck, { 'wind-speed': 20, temperature: 10 }).deck);
    expect(cardsOf(other).filter(({ kind }) => kind === 'worked')).toEqual(workedCards);
  });

  it('are left out of a day that gives them no value', () => {
    const hot = compiled(deckOfDay(deck, { temperature: 52 }).deck);
    expect(cardsOf(hot).map(({ id }) => id)).not.toContain('worked/hover-margin');
    expect(cardsOf(hot).map(({ id }) => id)).toContain('worked/over-deck');
  });

  it('are spread between cards of other groups', () => {
    const order = interleaved(cardsOf(procedure), []);
    expect(clashes(order)).toBeLessThanOrEqual(2);
  });
});

describe('the prompt of a worked value', () => {
  it('asks the deck’s question, at its gate or for the day', () => {
    expect(promptFor(procedure, named('worked/final-closure'), 1)).toMatchObject({
      place: 'Gate 1 of 1 · Far gate',
      title: 'What closure does the day leave you?',
    });
    expect(promptFor(procedure, named('worked/over-deck'), 1).place).toBe('The day’s numbers');
  });

  it('is the same for the same seed, and fresh for another', () => {
    const card = named('worked/over-deck');
    expect(shown(card, 7)).toEqual(shown(card, 7));
    const days = new Set(Array.from({ length: 50 }, (_, at) => JSON.stringify(shown(card, at).given.day)));
    expect(days.size).toBeGreaterThan(40);
  });

  it('draws values that are called, inside of what the deck says', () => {
    fc.assert(
      fc.property(seed, fc.constantFrom(...workedCards), (at, card) => {
        const { day } = shown(card, at).given;
        for (const [id, [lo, hi]] of Object.entries(workedOf(deck, card).draw)) {
          expect(day[id]).toBeGreaterThanOrEqual(lo);
          expect(day[id]).toBeLessThanOrEqual(hi);
          const steps = day[id]! / quantityOf(deck, id).step;
          expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it('gives all that the result depends on: the same numbers work it out on whatever day', () => {
    const otherDays = [
      { 'wind-speed': 33, 'wind-angle': -90, 'barge-speed': 11 },
      { 'pressure-altitude': 2500, temperature: -5, load: 1950 },
    ];
    fc.assert(
      fc.property(seed, fc.constantFrom(...workedCards), fc.constantFrom(...otherDays), (at, card, other) => {
        const { given, band, quantity } = shown(card, at);
        const result = dayOf(deckOfDay(deck, other).deck, given.day)[quantity]!;
        expect(workedBand(result, workedOf(deck, card), quantityOf(deck, quantity))).toEqual(band);
      }),
    );
  });

  it('gives what is not drawn as the day has it, in words with its unit', () => {
    const today = compiled(deckOfDay(deck, { 'pressure-altitude': 1200 }).deck);
    expect(shown(named('worked/hover-margin'), 1, today).given.values[0]).toEqual({
      label: 'Pressure altitude',
      value: '1,200\u00a0ft',
    });
    const labels = shown(named('worked/over-deck'), 1).given.values.map(({ label }) => label);
    expect(labels).toEqual(['True wind', 'True wind off the bow', "Barge's speed"]);
  });

  it('says a side in words, not by a sign', () => {
    const sides = Array.from({ length: 30 }, (_, at) => shown(named('worked/over-deck'), at));
    const said = sides.map(({ given }) => given.values[1]!.value);
    expect(said.some((value) => /^\d+° from the left$/.test(value))).toBe(true);
    expect(said.join()).not.toContain('−');
  });

  it('names the charts that have to be read', () => {
    expect(shown(named('worked/hover-margin'), 1).given.charts).toEqual(['lift']);
    expect(shown(named('worked/over-deck'), 1).given.charts).toEqual([]);
  });

  it('draws again where a chart ends: there is always a result, with its working', () => {
    fc.assert(
      fc.property(seed, (at) => {
        const { given, quantity, band } = shown(named('worked/hover-margin'), at);
        expect(given.day['temperature']).toBeLessThanOrEqual(45);
        const working = workingOf(deck, quantity, given.day)!;
        expect(working.map(({ gives }) => gives).at(-1)).toBe(
          `= ${band.target < 0 ? '−' : ''}${Math.abs(band.target).toLocaleString('en-US')}\u00a0kg`,
        );
      }),
    );
  });

  it('takes the deck’s day where nothing that can be drawn gives a result', () => {
    const off = workedProcedure([
      'draw: { temperature: [20, 60], load',
      'draw: { temperature: [50, 60], load',
    ]);
    const { given } = shown(cardNamed('worked/hover-margin', off), 3, off);
    expect(given.day).toEqual({ 'pressure-altitude': 300, temperature: 30, load: 600 });
  });
});

describe('the band of a worked value', () => {
  const asked = workedOf(deck, { id: 'worked/final-closure' });
  const closure = quantityOf(deck, 'closure');

  it('lies around the result as it is called', () => {
    expect(workedBand(37.6, asked, closure)).toEqual({ target: 38, desired: [37, 39], adequate: [34, 42] });
  });

  it('ends where the quantity ends', () => {
    expect(workedBand(118.6, asked, closure)).toEqual({
      target: 119,
      desired: [118, 120],
      adequate: [115, 120],
    });
  });
});

describe('why a worked value is right', () => {
  it('is what the worked value says, else its formula', () => {
    expect(groundOf(procedure, named('worked/hover-margin'))).toMatchObject({
      because: 'Below nothing it sinks.',
      source: { id: 'book' },
    });
    expect(groundOf(procedure, named('worked/final-closure'))).toMatchObject({
      because: 'The airspeed on the final is 60 kt.',
      source: { id: 'book' },
    });
    expect(groundOf(procedure, named('worked/over-deck'))).toMatchObject({
      because: null,
      source: { id: 'notes' },
    });
  });
});

describe('what a quantity of the day needs', () => {
  it('is found through formulas, charts and the wind', () => {
    expect(needsOf(deck, 'margin')).toEqual({
      settings: ['pressure-altitude', 'temperature', 'load'],
      charts: ['lift'],
    });
    expect(needsOf(deck, 'closure')).toEqual({
      settings: ['wind-speed', 'wind-angle', 'barge-speed'],
      charts: [],
    });
    expect(needsOf(deck, 'load')).toEqual({ settings: ['load'], charts: [] });
  });
});
