/** What the parser says of the syntax, without its stumbling over the lines that follow a slip. */
import { visit, type Document, type YAMLError } from 'yaml';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { mostFindings } from './limits.ts';
import type { Lines } from './lines.ts';
import { pathAt } from './locate.ts';
import type { Slip } from './yaml-slip.ts';
import { rowAt, rowsBefore, slipBehind } from './yaml-slips.ts';
import { wordsForYamlError } from './yaml-words.ts';

export interface SyntaxFaults {
  readonly drafts: readonly Draft[];
  /** The start of the first line that the parser could not read as it was meant; null when it read all. */
  readonly brokenAt: number | null;
}

/** Errors that don't unsettle the parser: a second document, a mark of type. */
const harmless: ReadonlySet<string> = new Set(['MULTIPLE_DOCS', 'NON_STRING_KEY', 'TAG_RESOLVE_FAILED']);

interface Placed {
  readonly error: YAMLError;
  readonly offset: number;
  /** What the author did, where that can be told. */
  readonly slip?: Slip | null;
}

export function syntaxFaults(parsed: Document.Parsed, text: string, lines: Lines): SyntaxFaults {
  const placed = [...parsed.errors, ...parsed.warnings]
    .map((error) => ({ error, offset: offsetOf(error, text) }))
    .sort((a, b) => a.offset - b.offset || Number(isIndent(b.error)) - Number(isIndent(a.error)));
  const kept = withoutEchoes(firstOfEachStumble(placed, lines).slice(0, 2 * mostFindings), text, lines)
    .slice(0, mostFindings)
    .map(({ error, offset }): Placed => {
      if (isOpenQuote(error)) return { error, offset: startOfQuote(parsed, offset) };
      const slip = slipBehind(error, offset, text, lines);
      return { error, offset: slip?.offset ?? offset, slip };
    });
  const breaks = kept.filter(({ error }) => !harmless.has(error.code)).map(({ offset }) => offset);
  const first = breaks.length > 0 ? Math.min(...breaks) : null;
  return {
    drafts: kept
      // A value broken by a slip is easily taken for a key.
      .filter(
        ({ error, offset }) =>
          error.code !== 'NON_STRING_KEY' || first === null || offset < lineStart(lines, first),
      )
      .map(({ error, offset, slip }) => ({
        ...(slip ? { code: slip.code, message: slip.message } : wordsForYamlError(error, text)),
        path: slip?.isOfElement
          ? elementAt(parsed, slip.near)
          : pathAt(parsed.contents, slip?.near ?? offset),
        offset,
      })),
    brokenAt: first === null ? null : lineStart(lines, first),
  };
}

/** The parser reports a line by its start; its first word is easier to see. */
function offsetOf({ pos: [reported] }: YAMLError, text: string): number {
  let offset = Math.min(reported, text.length);
  while (text[offset] === ' ') offset++;
  return offset;
}

/** Of errors that lie at most two lines apart the first tells enough. */
function firstOfEachStumble(placed: readonly Placed[], lines: Lines): Placed[] {
  let last = -Infinity;
  return placed.filter(({ error, offset }) => {
    if (harmless.has(error.code)) return true;
    const { line } = lines.placeAt(offset);
    const isFirst = line > last + 2;
    last = line;
    return isFirst;
  });
}

/** The innermost element of a list that a place belongs to: what a misplaced line is in. */
function elementAt(parsed: Document.Parsed, offset: number): DocumentPath {
  const path = pathAt(parsed.contents, offset);
  return path.slice(0, path.findLastIndex((step) => typeof step === 'number') + 1);
}

/**
 * Behind a line in the wrong column the parser stumbles once more over the next dash, which stands well
 * under those before it.
 */
function withoutEchoes(placed: readonly Placed[], text: string, lines: Lines): Placed[] {
  let isBroken = false;
  return placed.filter(({ error, offset }) => {
    const { line } = lines.placeAt(offset);
    const row = rowAt(line, text, lines);
    if (isBroken && row?.isElement && isStructure(error))
      for (const before of rowsBefore(line, text, lines)) {
        if (before.column === 1 && !before.isElement && before.rest.includes(':')) break;
        if (before.isElement && before.column === row.column) return false;
      }
    isBroken ||= isStructure(error);
    return true;
  });
}

const structural: readonly string[] = [
  'BAD_INDENT',
  'TAB_AS_INDENT',
  'MISSING_CHAR',
  'UNEXPECTED_TOKEN',
  'BLOCK_AS_IMPLICIT_KEY',
  'MULTILINE_IMPLICIT_KEY',
];
const isStructure = ({ code }: YAMLError): boolean => structural.includes(code);

/** Of several errors in one place it explains the others. */
const isIndent = ({ code }: YAMLError): boolean => code === 'BAD_INDENT';

const isOpenQuote = ({ code, message }: YAMLError): boolean =>
  code === 'MISSING_CHAR' && /closing/.test(message);

/** The parser misses the closing quote where the text ends; the author looks for the opening one. */
function startOfQuote(parsed: Document.Parsed, end: number): number {
  let start = end;
  visit(parsed, {
    Scalar(_, { type, range }) {
      if (!range || !type?.startsWith('QUOTE') || range[0] > end || range[2] < end) return undefined;
      start = range[0];
      return visit.BREAK;
    },
  });
  return start;
}

const lineStart = (lines: Lines, offset: number): number => lines.startOf(lines.placeAt(offset).line);
