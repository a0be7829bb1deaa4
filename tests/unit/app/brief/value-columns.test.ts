import { describe, expect, it } from 'vitest';
import { nothingMoves, valuesToday } from '../../../../src/app/pages/brief/moves.ts';
import { sourceNumber, valueColumns } from '../../../../src/app/pages/brief/value-columns.ts';
import { shippedDecks } from '../parts/shipped-decks.ts';

describe('the columns of the value table', () => {
  it.each(shippedDecks.map((deck) => [deck.title, deck] as const))(
    'of “%s” are quantities that a third of its gates use, in the deck’s order',
    (_, deck) => {
      const columns = valueColumns(deck);
      expect(columns.length).toBeGreaterThan(1);
      expect(columns.length).toBeLessThanOrEqual(6);
      for (const { id } of columns)
        expect(deck.gates.filter((gate) => gate.values[id]).length * 3).toBeGreaterThanOrEqual(
          deck.gates.length,
        );
      const places = columns.map((quantity) => deck.quantities.indexOf(quantity));
      expect(places).toEqual([...places].sort((a, b) => a - b));
    },
  );

  it('leave no value out: what has no column is named beside', () => {
    for (const deck of shippedDecks)
      for (const gate of deck.gates)
        expect(
          valuesToday(deck, gate, nothingMoves)
            .map(({ quantity }) => quantity.id)
            .sort(),
        ).toEqual(Object.keys(gate.values).sort());
  });
});

describe('the mark of a source', () => {
  const deck = shippedDecks[0]!;

  it('is left out for the deck’s default', () => {
    expect(sourceNumber(deck, undefined)).toBeNull();
    expect(sourceNumber(deck, deck.defaultSource)).toBeNull();
    expect(sourceNumber(deck, 'nowhere')).toBeNull();
  });

  it('is its place in the list for any other', () => {
    const other = deck.sources.find((source) => source.id !== deck.defaultSource)!;
    expect(deck.sources[sourceNumber(deck, other.id)! - 1]).toBe(other);
  });
});
