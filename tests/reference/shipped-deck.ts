import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { deckSchema } from '../../src/deck/schema.ts';
import type { Band, Deck, Gate } from '../../src/deck/types.ts';

export function shippedDeck(name: string): Deck {
  const path = new URL(`../../decks/${name}.deck.yaml`, import.meta.url);
  return deckSchema.parse(parse(readFileSync(path, 'utf8')));
}

/** The band of a gate's quantity; a test that names one the deck lacks fails with its name. */
export function bandOf(gate: Gate, quantity: string): Band {
  const band = gate.values[quantity];
  if (!band) throw new Error(`Gate “${gate.id}” has no ${quantity}.`);
  return band;
}
