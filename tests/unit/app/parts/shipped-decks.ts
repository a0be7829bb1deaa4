/** The decks the app comes with, for pictures that must hold for real ones. Their checks are tested elsewhere. */
import { readFileSync, readdirSync } from 'node:fs';
import { parse } from 'yaml';
import type { Deck } from '../../../../src/deck/types.ts';

const folder = new URL('../../../../decks/', import.meta.url);

export const shippedDecks: readonly Deck[] = readdirSync(folder)
  .filter((name) => name.endsWith('.deck.yaml'))
  .map((name) => parse(readFileSync(new URL(name, folder), 'utf8')) as Deck);
