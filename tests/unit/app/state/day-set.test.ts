import { describe, expect, it } from 'vitest';
import { isSameDay, keptWith, readKeptDays, sayDay, soundDay } from '../../../../src/app/state/day-set.ts';
import type { Deck } from '../../../../src/deck/types.ts';
import { loadDeck } from '../../../../src/deck/load.ts';
import { fixtureDeckText } from '../../deck/fixture.ts';

/** Its day is a wind of 10 kt, 0 to 40. */
const deck = loadDeck(fixtureDeckText).deck as Deck;

describe('days kept on a device', () => {
  it.each([
    null,
    3,
    'x',
    [],
    [1],
    { deck: null },
    { deck: [] },
    { deck: { wind: '20' } },
    { deck: { wind: NaN } },
  ])('are none where %j stands', (value) => expect(readKeptDays(value)).toEqual({}));

  it('are the numbers among what stands there', () => {
    expect(readKeptDays({ a: { wind: 20, more: 'x' }, b: {}, c: 4 })).toEqual({ a: { wind: 20 } });
  });

  it('are kept deck by deck; a deck’s own day needs no place', () => {
    const days = keptWith(keptWith({}, 'a', { wind: 20 }), 'b', { wind: 5 });
    expect(days).toEqual({ a: { wind: 20 }, b: { wind: 5 } });
    expect(keptWith(days, 'a', {})).toEqual({ b: { wind: 5 } });
  });

  it('give way to newer ones when they are too many', () => {
    const days = Object.fromEntries(Array.from({ length: 120 }, (_, i) => [`deck-${i}`, { wind: i + 1 }]));
    const kept = keptWith(readKeptDays(days), 'new', { wind: 1 });
    expect(Object.keys(kept)).toHaveLength(40);
    expect(kept).toHaveProperty('new');
  });
});

describe('what can be set of a deck’s day', () => {
  it.each([
    [{ wind: 20 }, { wind: 20 }],
    [{ wind: 10 }, {}],
    [{ wind: 41 }, {}],
    [{ wind: -1 }, {}],
    [{ rain: 3 }, {}],
    [{}, {}],
  ])('of %o is %o', (set, sound) => expect(soundDay(deck, set)).toEqual(sound));

  it('is said in a sentence, and not at all on the deck’s own day', () => {
    expect(sayDay(deck, { wind: 20 })).toBe('wind 20\u00a0kt');
    expect(sayDay(deck, {})).toBe('');
  });

  it('is the same day in any order', () => {
    expect(isSameDay({ a: 1, b: 2 }, { b: 2, a: 1 })).toBe(true);
    expect(isSameDay({ a: 1 }, { a: 1, b: 2 })).toBe(false);
    expect(isSameDay(undefined, {})).toBe(true);
    expect(isSameDay({ a: 1 }, { a: 2 })).toBe(false);
  });
});
