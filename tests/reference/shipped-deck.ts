import { readFileSync } from 'node:fs';
import { loadDeck } from '../../src/deck/load.ts';
import { readFormulas } from '../../src/formulas/read-formulas.ts';
import type { Band, Deck, Gate } from '../../src/deck/types.ts';

export function shippedDeck(name: string): Deck {
  const path = new URL(`../../decks/${name}.deck.yaml`, import.meta.url);
  const { deck, findings } = loadDeck(readFileSync(path, 'utf8'), readFormulas);
  if (!deck) throw new Error(findings.map(({ where, message }) => `${where}: ${message}`).join('\n'));
  return deck;
}

/** The band of a gate's quantity; a test that names one the deck lacks fails with its name. */
export function bandOf(gate: Gate, quantity: string): Band {
  const band = gate.values[quantity];
  if (!band) throw new Error(`Gate “${gate.id}” has no ${quantity}.`);
  return band;
}
