import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/day/day-of.ts';
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { edited } from '../deck/edited.ts';
import { fixtureDeckText } from '../deck/fixture.ts';
import { formulaDeckText } from '../formulas/formula-deck.ts';

const loaded = (text: string) => {
  const { deck, findings } = loadDeck(text, readFormulas);
  if (!deck) throw new Error(findings[0]?.message);
  return deck;
};
const deck = loaded(formulaDeckText);
const closureAt = (day: ReturnType<typeof deckOfDay>) => day.deck.gates[0]!.values['closure'];

describe('the quantities of a day', () => {
  it('are what is set and what the formulas make of it', () => {
    const values = dayOf(deck);
    expect(values).toMatchObject({ wind: 10, gust: 10, load: 150, waves: 0.5 });
    // The chart gives 5 kt for a gust of 10; 21 kt for 150 kg in waves of half a metre.
    expect(values['felt-wind']).toBe(15);
    expect(values['digging-in']).toBe(21);
    // 6,000 ft at 62.5 kt: 6000 / (62.5 * 1.68781).
    expect(values['run-in']).toBeCloseTo(56.88, 2);
  });

  it('follow what is changed, and nothing else that is named', () => {
    expect(dayOf(deck, { wind: 20 })['felt-wind']).toBe(25);
    expect(dayOf(deck, { 'felt-wind': 0, altitude: 3 })).toEqual(dayOf(deck));
  });

  it('lack what has no value today, and what would need it', () => {
    const text = edited('least_closure(load, waves)', 'least_closure(load + 100 kg, waves)', formulaDeckText);
    const { values, missing } = deckOfDay(loaded(text), { load: 350 });
    expect(values).not.toHaveProperty('digging-in');
    expect(missing).toEqual([
      { quantity: 'digging-in', why: 'load 450\u00a0kg; the chart ends at 400\u00a0kg' },
    ]);
  });
});

describe('the deck of a day', () => {
  it('is the deck itself when nothing is changed', () => {
    expect(deckOfDay(deck, {}).deck).toBe(deck);
    expect(deckOfDay(deck, { wind: 10, nonsense: 3 })).toMatchObject({ moved: [], missing: [] });
    expect(deckOfDay(deck, { wind: 10 }).deck).toBe(deck);
  });

  it('moves what the day moves, and says what of the day did it', () => {
    const day = deckOfDay(deck, { wind: 18 });
    expect(closureAt(day)).toMatchObject({ target: 52, desired: [49, 55], adequate: [42, 62], ceiling: 90 });
    expect(day.moved).toMatchObject([
      {
        gate: 'far',
        quantity: 'closure',
        before: { target: 60 },
        after: { target: 52 },
        because: '8\u00a0kt more wind: 52 instead of 60\u00a0kt',
      },
    ]);
  });

  it('leaves alone what the day doesn’t move', () => {
    const day = deckOfDay(deck, { load: 300 });
    expect(day.moved).toEqual([]);
    expect(closureAt(day)).toEqual(deck.gates[0]!.values['closure']);
    expect(day.values['digging-in']).not.toBe(21);
  });

  it('has that day for its own', () => {
    const day = deckOfDay(deck, { wind: 18 });
    expect(dayOf(day.deck)).toEqual(day.values);
    expect(deckOfDay(day.deck, { wind: 10 }).deck.gates).toEqual(deck.gates);
  });

  it('takes a band without a value out, and says why', () => {
    const narrow = loaded(edited('ceiling: 90 }', 'ceiling: 72 }', formulaDeckText));
    const day = deckOfDay(narrow, { wind: 2, gust: 0 });
    expect(closureAt(day)).toBeUndefined();
    expect(day.moved).toMatchObject([
      {
        gate: 'far',
        quantity: 'closure',
        after: null,
        because: 'the ceiling 72\u00a0kt lies inside adequate 63 to 83\u00a0kt',
      },
    ]);
  });

  it('of a deck without formulas has its settings changed and its numbers kept', () => {
    const plain = loaded(fixtureDeckText);
    const day = deckOfDay(plain, { wind: 20 });
    expect(day.values).toEqual({ wind: 20 });
    expect(day.deck.gates).toEqual(plain.gates);
    expect(day.moved).toEqual([]);
  });
});
