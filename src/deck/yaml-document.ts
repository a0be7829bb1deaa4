/** Text of YAML 1.2 -> plain data, its positions, and what is wrong with the text. */
import { parseDocument, type Document } from 'yaml';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { mostBytes, mostNesting, mostPieces } from './limits.ts';
import { linesOf, type Lines } from './lines.ts';
import { measureNesting } from './nesting.ts';
import type { Plain } from './plain-data.ts';
import { plainDataOf } from './yaml-plain-data.ts';
import { syntaxFaults } from './yaml-faults.ts';

export interface YamlDocument {
  /** Null when the text could not be read at all. */
  readonly parsed: Document.Parsed | null;
  readonly data: Plain | undefined;
  readonly lines: Lines;
  readonly drafts: readonly Draft[];
  /** The start of the line on which the syntax breaks first, in UTF-16 units: from there on nothing can be judged. */
  readonly brokenAt: number | null;
  /** Where a value was left out of the data, with a draft that says why. */
  readonly left: readonly DocumentPath[];
}

/** Never throws, whatever the text. */
export function readYaml(text: string): YamlDocument {
  const lines = linesOf(text);
  const unread = (draft: Draft): YamlDocument => ({
    parsed: null,
    data: undefined,
    lines,
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
  const foreignAt = Math.min(...['\0', '\uFFFD'].map((mark) => text.indexOf(mark)).filter((at) => at >= 0));
  if (foreignAt < Infinity) return unread({ ...wordsForForeign(text), path: [], offset: foreignAt });
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

/** A file in another encoding, read as UTF-8, holds marks that no text has: NUL, or U+FFFD in place of others. */
function wordsForForeign(text: string): Pick<Draft, 'code' | 'message'> {
  const start = text.slice(0, 1000);
  const zeros = start.split('\0').length - 1;
  // In UTF-16 every other byte of plain English is NUL.
  const isUtf16 = zeros > start.length / 4;
  const marks = start.match(/\uFFFD|(?![\t\n\r])\p{Cc}/gu)?.length ?? 0;
  const found = isUtf16
    ? 'this one is UTF-16'
    : zeros > 0 || marks > start.length / 10
      ? 'this one is no text'
      : 'here stands a character in another encoding';
  const mend =
    found === 'this one is no text'
      ? 'choose the file that ends in “.deck.yaml”'
      : 'save it again with the encoding “UTF-8”';
  return { code: 'not-utf8', message: `A deck file must be a text in UTF-8, ${found}; ${mend}.` };
}

function parse(text: string, lines: Lines): YamlDocument {
  const parsed = parseDocument(text, {
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
  const syntax = syntaxFaults(parsed, text, lines);
  const made = plainDataOf(parsed, text);
  const { brokenAt } = syntax;
  const judged = made.drafts.filter(({ offset = 0 }) => brokenAt === null || offset < brokenAt);
  return {
    parsed,
    data: made.data,
    lines,
    drafts: [...syntax.drafts, ...judged],
    brokenAt,
    left: made.left,
  };
}
