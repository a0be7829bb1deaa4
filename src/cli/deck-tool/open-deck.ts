import type { DocumentPath, Finding, Place } from '../../deck/findings.ts';
import { loadDeck } from '../../deck/load.ts';
import { compileRules } from '../../rules/compile.ts';
import type { Procedure } from '../../rules/types.ts';
import type { Io } from './io.ts';

export interface OpenedDeck {
  readonly text: string;
  /** Null when there are errors. */
  readonly procedure: Procedure | null;
  /** By place in the text. */
  readonly findings: readonly Finding[];
  /** Gives findings that know only their path their place and its words. */
  placed(findings: readonly Finding[]): Finding[];
}

/** Reads a deck file as far as it goes; null, and said, when the file itself can't be read. */
export async function openDeck(path: string, io: Io): Promise<OpenedDeck | null> {
  const file = await io.readFile(path);
  if (!file.ok) {
    io.err(`${path} can't be read: ${file.message}.`);
    return null;
  }
  const { deck, findings, locate, describe } = loadDeck(file.text);
  const placed = (others: readonly Finding[]): Finding[] =>
    others.map((finding) => place(finding, locate, describe));
  if (deck === null) return { text: file.text, procedure: null, findings, placed };
  const compiled = compileRules(deck);
  return {
    text: file.text,
    procedure: compiled.procedure,
    findings: inOrder([...findings, ...placed(compiled.findings)]),
    placed,
  };
}

export const hasErrors = (findings: readonly Finding[]): boolean =>
  findings.some(({ severity }) => severity === 'error');

/** From the top of the file to its end. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  const place = ({ at }: Finding): Place => at ?? { line: 1, column: 1 };
  return findings.toSorted((a, b) => {
    const [one, other] = [place(a), place(b)];
    return one.line - other.line || one.column - other.column;
  });
}

function place(
  finding: Finding,
  locate: (path: DocumentPath) => Place,
  describe: (path: DocumentPath) => string,
): Finding {
  return {
    ...finding,
    at: finding.at ?? locate(finding.path),
    where: finding.where ?? describe(finding.path),
  };
}
