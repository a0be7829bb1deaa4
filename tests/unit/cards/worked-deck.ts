/** The small deck of worked values, loaded and compiled. */
import { loadDeck } from '../../../src/deck/load.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { workedDeckText } from './worked-deck-text.ts';

/** @param edits pieces of the text and what is put in their place */
export function workedProcedure(...edits: readonly (readonly [from: string, to: string])[]): Procedure {
  const text = edits.reduce((made, [from, to]) => made.replace(from, to), workedDeckText);
  const { deck, findings } = loadDeck(text, readFormulas);
  const procedure = deck && compileRules(deck).procedure;
  if (!procedure) throw new Error(findings.map(({ message }) => message).join(' '));
  return procedure;
}
