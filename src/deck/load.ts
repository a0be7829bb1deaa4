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
import { partsOf, type DeckParts } from './parts.ts';
import { isMapping, type Plain } from './plain-data.ts';
import { deckSchema } from './schema.ts';
import type { Deck } from './types.ts';
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
export function loadDeck(text: string): LoadedDeck {
  const yaml = readYaml(text);
  const root = (yaml.parsed?.contents ?? null) as Node | null;
  const shape = yaml.data === undefined ? null : deckSchema.safeParse(yaml.data);
  const issues = shape?.error?.issues ?? [];
  const parts = isMapping(yaml.data) ? partsOf(yaml.data, issues) : null;
  const drafts: Draft[] = [];
  for (const draft of draftsFor(yaml, root, issues, parts)) {
    drafts.push(draft);
    if (drafts.length >= mostDrafts) break;
  }
  const describe = (path: DocumentPath): string => wordsForPath(yaml.data, path);
  const offsetOf = (draft: Draft): number =>
    draft.offset ?? stretchOf(root, draft.path, draft.onKey ? 'key' : 'value').from;
  const hasErrors = drafts.some(({ severity = 'error' }) => severity === 'error');
  return {
    deck: hasErrors ? null : (yaml.data as unknown as Deck),
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
): Generator<Draft> {
  yield* yaml.drafts;
  if (yaml.parsed === null || yaml.data === undefined) return;
  const isLeft = new Set(yaml.left.map((path) => JSON.stringify(path)));
  const told = issues.filter(({ path }) => !isLeft.has(JSON.stringify(path)));
  const judged = function* (data: Plain): Generator<Draft> {
    yield* draftsForIssues(told.slice(0, mostDrafts), data);
    if (parts) for (const check of checks) yield* check(parts);
  };
  for (const draft of judged(yaml.data)) if (canBeJudged(draft, yaml.brokenAt, root)) yield draft;
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
