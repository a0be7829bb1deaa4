/** Text of a deck file -> the deck, or everything that is wrong with it, each with its place. */
import type { Node } from 'yaml';
import type * as z from 'zod/mini';
import { checks } from './check/checks.ts';
import type { DeckCode } from './codes.ts';
import type { Draft } from './draft.ts';
import type { DocumentPath, Finding, Place } from './findings.ts';
import { mostDrafts, mostFindings } from './limits.ts';
import { stretchOf } from './locate.ts';
import { draftsForIssues } from './messages.ts';
import type { FormulaReader, FormulasRead } from './formula-reader.ts';
import { hasFormulas, partsOf, withNumbers, type DeckParts } from './parts.ts';
import { isMapping, type Plain } from './plain-data.ts';
import { deckSchema } from './schema.ts';
import type { AuthoredDeck, Deck } from './types.ts';
import { wordsForPath } from './words-for-path.ts';
import { readYaml, type YamlDocument } from './yaml-document.ts';

export interface LoadedDeck {
  /** Null when there is a finding of severity "error". */
  readonly deck: Deck | null;
  /** What is sound of a deck, for checks of other folders; null when the text can't be read to its end. */
  readonly parts: DeckParts | null;
  /** By place in the text, each once, each with `where` and `at`. */
  readonly findings: readonly Finding[];
  /** The place of a value; of its nearest existing ancestor when it isn't there. */
  readonly locate: (path: DocumentPath) => Place;
  /** A path in words: `gate “Alongside”, altitude, desired`. */
  readonly describe: (path: DocumentPath) => string;
}

/** Never throws, whatever the text. Conditions of rules and words are judged by the rule engine. */
export const loadDeck = (text: string, readFormulas?: FormulaReader): LoadedDeck =>
  finishDeck(openDeck(text), readFormulas);

/** A text read as far as it goes without its formulas. */
export interface OpenedDeck {
  readonly text: string;
  readonly yaml: YamlDocument;
  readonly issues: readonly z.core.$ZodIssue[];
  readonly parts: DeckParts | null;
  /** True when it takes a reader of formulas to finish it. */
  readonly hasFormulas: boolean;
}

export function openDeck(text: string): OpenedDeck {
  const yaml = readYaml(text);
  const shape = yaml.data === undefined ? null : deckSchema.safeParse(yaml.data);
  const issues = shape?.error?.issues ?? [];
  const parts = isMapping(yaml.data) ? partsOf(yaml.data, issues) : null;
  return { text, yaml, issues, parts, hasFormulas: parts !== null && hasFormulas(parts) };
}

/** @param readFormulas needed where the deck has formulas: without it they are an error. */
export function finishDeck(opened: OpenedDeck, readFormulas: FormulaReader = notRead): LoadedDeck {
  const { text, yaml, issues } = opened;
  const root = (yaml.parsed?.contents ?? null) as Node | null;
  const formulas = opened.parts && opened.hasFormulas ? readFormulas(opened.parts) : null;
  const parts = opened.parts && formulas ? withNumbers(opened.parts, formulas) : opened.parts;
  const drafts: Draft[] = [];
  for (const draft of draftsFor(yaml, root, issues, parts, formulas?.drafts ?? [])) {
    drafts.push(draft);
    if (drafts.length >= mostDrafts) break;
  }
  const describe = (path: DocumentPath): string => wordsForPath(yaml.data, path);
  const offsetOf = (draft: Draft): number => {
    if (draft.offset !== undefined) return draft.offset;
    const { from, to } = stretchOf(root, draft.path, draft.onKey ? 'key' : 'value');
    return draft.into === undefined ? from : from + intoText(text.slice(from, to), draft.into);
  };
  const hasErrors = drafts.some(({ severity = 'error' }) => severity === 'error');
  return {
    deck: hasErrors || !parts ? null : deckMade(parts, formulas),
    parts: yaml.brokenAt === null ? parts : null,
    findings: finished(drafts, offsetOf, describe, yaml.lines.placeAt),
    locate: (path) => yaml.lines.placeAt(stretchOf(root, path, 'value').from),
    describe,
  };
}

function* draftsFor(
  yaml: YamlDocument,
  root: Node | null,
  issues: readonly z.core.$ZodIssue[],
  parts: DeckParts | null,
  ofFormulas: readonly Draft[],
): Generator<Draft> {
  yield* yaml.drafts;
  if (yaml.parsed === null || yaml.data === undefined) return;
  const isLeft = new Set(yaml.left.map((path) => JSON.stringify(path)));
  const told = issues.filter(({ path }) => !isLeft.has(JSON.stringify(path)));
  const judged = function* (data: Plain): Generator<Draft> {
    yield* draftsForIssues(told.slice(0, mostDrafts), data);
    yield* ofFormulas;
    if (parts) for (const check of checks) yield* check(parts);
  };
  for (const draft of judged(yaml.data)) if (canBeJudged(draft, yaml.brokenAt, root)) yield draft;
}

/** The checked data, in plain numbers where formulas stood. */
function deckMade(parts: DeckParts, formulas: FormulasRead | null): Deck {
  const data = parts.data as unknown as AuthoredDeck;
  return formulas ? { ...data, gates: parts.gates, computed: formulas.computed } : (data as unknown as Deck);
}

const notRead: FormulaReader = ({ formulas, pathOf, authoredGates }) => ({
  drafts: [
    {
      code: 'formulas-not-read',
      message:
        'A deck with formulas needs the reader of formulas, which was not loaded; open the deck with the app or the deck tool.',
      path: pathOf(formulas[0] ?? authoredGates[0] ?? {}),
    },
  ],
  computed: { quantities: [], numbers: [], positions: [] },
  bands: new Map(),
  positions: new Map(),
});

/** How far into the source of a text a place of it stands; 0 where its source is spelt otherwise. */
function intoText(source: string, into: number): number {
  const quote = /^["']/.test(source) ? 1 : 0;
  return /[\\\n]|''/.test(source) ? 0 : Math.min(into + quote, source.length);
}

/** Findings that a later line could put right. */
const needTheRest: readonly DeckCode[] = [
  'missing-key',
  'unknown-source',
  'unknown-quantity',
  'unknown-gate',
  'unknown-control',
  'unknown-phase',
  'unknown-action',
  'missing-neutral',
  'missing-priority',
  'incomplete-priority',
  'unused-quantity',
  'unused-source',
  'formula-name',
];

/** Behind a break in the syntax the parser guesses; what it guessed is not the author's fault. */
function canBeJudged(draft: Draft, brokenAt: number | null, root: Node | null): boolean {
  if (brokenAt === null) return true;
  return (
    !needTheRest.includes(draft.code) &&
    stretchOf(root, draft.path, draft.onKey ? 'key' : 'value').to <= brokenAt
  );
}

function finished(
  drafts: readonly Draft[],
  offsetOf: (draft: Draft) => number,
  describe: (path: DocumentPath) => string,
  placeAt: (offset: number) => Place,
): Finding[] {
  const seen = new Set<string>();
  const placed = drafts
    .map((draft) => ({ draft, offset: offsetOf(draft) }))
    .filter(({ draft, offset }) => {
      const key = JSON.stringify([draft.code, offset, draft.path, draft.message]);
      return !seen.has(key) && Boolean(seen.add(key));
    })
    .sort((a, b) => a.offset - b.offset);
  const findings = placed.slice(0, mostFindings).map(({ draft, offset }): Finding => {
    const { code, severity = 'error', message, path } = draft;
    return { code, severity, message, path, where: describe(path), at: placeAt(offset) };
  });
  const last = placed[mostFindings - 1];
  if (placed.length > mostFindings && last)
    findings.push({
      code: 'more-findings' satisfies DeckCode,
      severity: 'note',
      message: `The first ${mostFindings} findings are shown and there are more; mend these and load the file again.`,
      path: [],
      where: describe([]),
      at: placeAt(last.offset),
    });
  return findings;
}
