/** A deck's text to what decides by it: load, compile, and every finding with its place in the text. */
import type { Finding } from '../deck/findings.ts';
import { loadDeck, type LoadedDeck } from '../deck/load.ts';
import { compileRules } from './compile.ts';
import type { Procedure } from './types.ts';

export interface ReadProcedure {
  readonly loaded: LoadedDeck;
  /** null when the deck has errors. */
  readonly procedure: Procedure | null;
  /** Of the loader and of the conditions, in order of place. The analysis is a step of its own. */
  readonly findings: readonly Finding[];
}

/** Never throws for a fault of the text. */
export function readProcedure(text: string): ReadProcedure {
  const loaded = loadDeck(text);
  if (loaded.deck === null) return { loaded, procedure: null, findings: loaded.findings };
  const { procedure, findings } = compileRules(loaded.deck);
  return { loaded, procedure, findings: inOrder([...loaded.findings, ...placed(findings, loaded)]) };
}

/** Gives findings that know only their path their place in the text, and the path's words. */
export function placed(findings: readonly Finding[], { locate, describe }: LoadedDeck): Finding[] {
  return findings.map((finding) => ({
    ...finding,
    at: finding.at ?? locate(finding.path),
    where: finding.where ?? describe(finding.path),
  }));
}

/** From the top of the text to its end; what has no place comes first. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings.toSorted(
    (one, other) =>
      (one.at?.line ?? 0) - (other.at?.line ?? 0) || (one.at?.column ?? 0) - (other.at?.column ?? 0),
  );
}
