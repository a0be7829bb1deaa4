import { describe, expect, it } from 'vitest';
import { sourceUses } from '../../../../src/app/pages/sources/source-use.ts';
import type { Deck } from '../../../../src/deck/types.ts';
import { shippedDecks } from '../parts/shipped-decks.ts';

const deck = shippedDecks.find(({ id }) => id === 'light-aircraft-circuit')!;
const restsOn = (of: Deck, id: string): string =>
  sourceUses(of).find(({ source }) => source.id === id)!.rests;

/** Nothing but one gate with these two values. */
function bare(one: string | undefined, other: string | undefined): Deck {
  const { checklists: _c, tables: _t, plates: _p, notes: _n, phases: _h, formulas: _f, ...rest } = deck;
  const [gate] = deck.gates;
  const [band] = Object.values(gate!.values);
  const values = { height: { ...band!, source: one }, airspeed: { ...band!, source: other } };
  return { ...rest, gates: [{ ...gate!, values }] };
}

describe('what rests on a source', () => {
  it('is what names it, and on the deck’s default what names none', () => {
    const of = bare('aim', undefined);
    expect(restsOn(of, 'aim')).toBe('1 value');
    expect(restsOn(of, deck.defaultSource)).toBe('1 value');
    expect(restsOn(of, 'handbook')).toBe('');
    expect(sourceUses(of).filter(({ isDefault }) => isDefault)).toHaveLength(1);
  });

  it('is counted once, over all sources', () => {
    for (const shipped of shippedDecks) {
      const counted = sourceUses(shipped)
        .map(({ rests }) => Number(/(\d+) values?/.exec(rests)?.[1] ?? 0))
        .reduce((sum, count) => sum + count, 0);
      expect(counted).toBe(shipped.gates.flatMap(({ values }) => Object.keys(values)).length);
    }
  });

  it('counts the corrections of a table by its source', () => {
    const table = deck.tables!.find(({ source }) => source !== undefined)!;
    const all = deck.tables!.filter(({ source }) => source === table.source);
    const rules = all.reduce((sum, { rules }) => sum + rules.length, 0);
    expect(restsOn(deck, table.source!)).toContain(`${rules} correction`);
  });
});
