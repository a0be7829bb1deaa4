/** Procedures to make cards of: the small deck, and every shipped one. */
import { readdirSync, readFileSync } from 'node:fs';
import { cardsOf } from '../../../src/cards/registry.ts';
import type { Card } from '../../../src/cards/types.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import type { Deck } from '../../../src/deck/types.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { smallDeck } from './small-deck.ts';

export function compiled(deck: Deck): Procedure {
  const { procedure, findings } = compileRules(deck);
  if (!procedure) throw new Error(findings[0]?.message);
  return procedure;
}

export const small: Procedure = compiled(smallDeck);

/** The small deck with some parts replaced. */
export const changed = (parts: Partial<Deck>): Procedure => compiled({ ...smallDeck, ...parts });

export function cardNamed(id: string, procedure: Procedure = small): Card {
  const card = cardsOf(procedure).find((candidate) => candidate.id === id);
  if (!card) throw new Error(`no card ${id}`);
  return card;
}

const folder = new URL('../../../decks/', import.meta.url);

export const shipped: readonly (readonly [file: string, procedure: Procedure])[] = readdirSync(folder)
  .filter((file) => file.endsWith('.deck.yaml'))
  .map((file) => {
    const loaded = loadDeck(readFileSync(new URL(file, folder), 'utf8'), readFormulas);
    if (!loaded.deck) throw new Error(`${file}: ${loaded.findings[0]?.message}`);
    return [file, compiled(loaded.deck)] as const;
  });
