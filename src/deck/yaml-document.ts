/** Text of YAML 1.2 -> plain data, its positions, and what is wrong with the text. */
import { LineCounter, parseDocument, visit, type Document, type YAMLError } from 'yaml';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { mostBytes, mostFindings, mostNesting, mostPieces } from './limits.ts';
import { pathAt } from './locate.ts';
import { measureNesting } from './nesting.ts';
import type { Plain } from './plain-data.ts';
import { plainDataOf } from './yaml-plain-data.ts';
import { wordsForYamlError } from './yaml-words.ts';

export interface YamlDocument {
  /** Null when the text could not be read at all. */
  readonly parsed: Document.Parsed | null;
  readonly data: Plain | undefined;
  readonly lines: LineCounter;
  readonly drafts: readonly Draft[];
  /** Where the syntax breaks first, in UTF-16 units: what comes later can't be judged. */
  readonly brokenAt: number | null;
  /** Where a value was left out of the data, with a draft that says why. */
  readonly left: readonly DocumentPath[];
}

/** Never throws, whatever the text. */
export function readYaml(text: string): YamlDocument {
  const lines = new LineCounter();
  const unread = (draft: Draft): YamlDocument => ({
    parsed: null,
    data: undefined,
    lines: countLines(text.slice(0, (draft.offset ?? 0) + 1)),
    drafts: [draft],
    brokenAt: 0,
    left: [],
  });
  const bytes = text.length > mostBytes ? text.length : new TextEncoder().encode(text).length;
  if (bytes > mostBytes)
    return unread({
      code: 'too-large',
      message: `A deck file may have 2 MB, this one is larger; split it into several decks.`,
      path: [],
      offset: 0,
    });
  if (/^[\s\uFEFF]*$/.test(text))
    return unread({
      code: 'empty-file',
      message: 'A deck file must hold a deck, this one is empty; begin it with “format: gatecall-deck/1”.',
      path: [],
      offset: 0,
    });
  const { tooDeepAt, tooManyAt } = measureNesting(text, mostNesting, mostPieces);
  if (tooDeepAt !== null)
    return unread({
      code: 'too-deep',
      message: `Lists and mappings may lie ${mostNesting} deep in each other, here they lie deeper; close the open brackets or take indentation away.`,
      path: [],
      offset: tooDeepAt,
    });
  if (tooManyAt !== null)
    return unread({
      code: 'too-large',
      message: `A deck file may have ${mostPieces.toLocaleString('en-US')} words and marks, this one has more; split it into several decks.`,
      path: [],
      offset: tooManyAt,
    });
  return parse(text, lines);
}

function parse(text: string, lines: LineCounter): YamlDocument {
  const parsed = parseDocument(text, {
    lineCounter: lines,
    version: '1.2',
    schema: 'core',
    customTags: null,
    resolveKnownTags: false,
    merge: false,
    stringKeys: true,
    prettyErrors: false,
    // Duplicates are found while the data are made: the parser's own search takes quadratic time.
    uniqueKeys: false,
  });
  const errors = firstOfEachStumble([...parsed.errors, ...parsed.warnings], lines).slice(0, mostFindings);
  const drafts = errors.map((error) => draftOf(error, text, parsed));
  const breaks = parsed.errors.filter(({ code }) => !harmless.has(code)).map(({ pos }) => pos[0]);
  const made = plainDataOf(parsed);
  return {
    parsed,
    data: made.data,
    lines,
    drafts: [...drafts, ...made.drafts],
    brokenAt: breaks.length > 0 ? breaks.reduce((a, b) => Math.min(a, b)) : null,
    left: made.left,
  };
}

/** Errors after which the rest of the text is still read as it was meant. */
const harmless: ReadonlySet<string> = new Set(['MULTIPLE_DOCS', 'NON_STRING_KEY', 'TAG_RESOLVE_FAILED']);

function draftOf(error: YAMLError, text: string, parsed: Document.Parsed): Draft {
  const { code, message } = wordsForYamlError(error, text);
  const reported = Math.min(error.pos[0], text.length);
  const isQuote = error.code === 'MISSING_CHAR' && /closing/.test(error.message);
  const offset = isQuote ? startOfQuote(parsed, reported) : reported;
  return { code, message, path: pathAt(parsed.contents, offset), offset };
}

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

/**
 * One slip makes the parser stumble over the lines that follow: of errors that lie at most two lines
 * apart the first tells enough.
 */
function firstOfEachStumble(errors: readonly YAMLError[], lines: LineCounter): YAMLError[] {
  let last = -Infinity;
  return [...errors]
    .sort((a, b) => a.pos[0] - b.pos[0])
    .filter((error) => {
      // A mark of type, a second document and a key that is no word don't unsettle the parser.
      if (harmless.has(error.code)) return error.code !== 'NON_STRING_KEY' || last === -Infinity;
      const { line } = lines.linePos(error.pos[0]);
      const isFirst = line > last + 2;
      last = line;
      return isFirst;
    });
}

function countLines(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  return lines;
}
