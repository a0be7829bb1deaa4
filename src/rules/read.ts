/** Deck text -> what can be decided with, and everything that is wrong with it. */
import type { Finding } from '../deck/findings.ts';
import type { FormulaReader } from '../deck/formula-reader.ts';
import { loadDeck, type LoadedDeck } from '../deck/load.ts';
import { loadWholeDeck } from '../formulas/load-deck.ts';
import { checkConditions, compileRules } from './compile.ts';
import type { Procedure } from './types.ts';

export interface ReadProcedure {
  readonly loaded: LoadedDeck;
  /** Null when a finding is an error. */
  readonly procedure: Procedure | null;
  /** From the top of the text to its end, each with its place and the path in words. */
  readonly findings: readonly Finding[];
}

/**
 * Reads a deck and compiles its rules; the tables are not analysed, see `analyse`. Never throws.
 * @param readFormulas needed where the deck has formulas, see `loadDeck`.
 */
export const readProcedure = (text: string, readFormulas?: FormulaReader): ReadProcedure =>
  procedureIn(loadDeck(text, readFormulas));

/** The same for any deck: the parser of formulas is loaded where it has some. Never throws. */
export const readWholeProcedure = async (text: string): Promise<ReadProcedure> =>
  procedureIn(await loadWholeDeck(text));

function procedureIn(loaded: LoadedDeck): ReadProcedure {
  const { procedure, findings } = loaded.deck
    ? compileRules(loaded.deck)
    : { procedure: null, findings: loaded.parts ? checkConditions(loaded.parts) : [] };
  return { loaded, procedure, findings: inOrder([...loaded.findings, ...placed(loaded, findings)]) };
}

/** Findings that know only their path, with their place in the text and the path in words. */
export function placed({ locate, describe }: LoadedDeck, findings: readonly Finding[]): Finding[] {
  return findings.map((finding) => ({
    ...finding,
    where: finding.where ?? describe(finding.path),
    at: finding.at ?? locate(finding.path),
  }));
}

/** From the top of the text to its end. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings.toSorted((a, b) => {
    const [one, other] = [a.at ?? top, b.at ?? top];
    return one.line - other.line || one.column - other.column;
  });
}

const top = { line: 1, column: 1 };
