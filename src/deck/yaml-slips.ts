/**
 * The slip of the pen behind an error of the parser, seen from the lines around it: the parser tells where
 * it stumbled, which is often a line later and in words about its own grammar.
 */
import type { YAMLError } from 'yaml';
import type { DeckCode } from './codes.ts';
import type { Lines } from './lines.ts';
import { quoted } from './quoting.ts';

export interface Slip {
  readonly code: DeckCode;
  readonly message: string;
  /** Where the slip is, in UTF-16 units from the start of the text. */
  readonly offset: number;
  /** A place whose path says what the slip is in: its value, or the element of a list around it. */
  readonly near: number;
  readonly isOfElement: boolean;
}

/** A line that holds something, as far as indentation matters. */
export interface Row {
  readonly start: number;
  /** 1-based column of its first mark. */
  readonly column: number;
  /** The column of its key, behind the dashes. */
  readonly keyColumn: number;
  readonly isElement: boolean;
  /** What stands behind the dashes. */
  readonly rest: string;
}

/** Lines looked at before the one in question. */
const mostRows = 200;

export function slipBehind(error: YAMLError, offset: number, text: string, lines: Lines): Slip | null {
  const { line } = lines.placeAt(offset);
  return (
    remarkInBrackets(error, line, text, lines) ??
    markInQuotes(error, offset, text) ??
    wrongColumn(error, line, text, lines)
  );
}

export function rowAt(line: number, text: string, lines: Lines): Row | null {
  const start = lines.startOf(line);
  const [, indent = '', dashes = '', rest = ''] =
    /^(\s*)((?:- +)*)(.*)/.exec(text.slice(start, start + 300).split(/\r?\n/, 1)[0] ?? '') ?? [];
  if (rest === '' || rest.startsWith('#')) return null;
  const column = indent.length + 1;
  return { start, column, keyColumn: column + dashes.length, isElement: dashes !== '', rest };
}

/** The rows before a line, the nearest first. */
export function* rowsBefore(line: number, text: string, lines: Lines): Generator<Row> {
  for (let at = line - 1; at > 0 && at > line - mostRows; at--) {
    const row = rowAt(at, text, lines);
    if (row) yield row;
  }
}

const hides = ['BAD_INDENT', 'MISSING_CHAR', 'BLOCK_IN_FLOW', 'UNEXPECTED_TOKEN'];

/** `{ response: Unlatched #2 }`: the rest of the line, with its bracket, is a remark. */
function remarkInBrackets(error: YAMLError, line: number, text: string, lines: Lines): Slip | null {
  if (!hides.includes(error.code)) return null;
  for (let at = line; at > 0 && at > line - 4; at--) {
    const start = lines.startOf(at);
    const column = columnOfHidingRemark(text.slice(start, lines.startOf(at + 1)).slice(0, 2000));
    if (column === null) continue;
    return {
      code: 'yaml-syntax',
      message:
        'A “#” behind a space begins a remark, here it hides the rest of the line with its closing bracket; put the text that holds “#” in quotes.',
      offset: start + column,
      near: start + column - 1,
      isOfElement: false,
    };
  }
  return null;
}

function columnOfHidingRemark(line: string): number | null {
  let depth = 0;
  let quote = '';
  for (let at = 0; at < line.length; at++) {
    const mark = line[at]!;
    if (quote) quote = mark === quote ? '' : quote;
    else if (/["']/.test(mark) && /[[{,:-]\s*$/.test(line.slice(0, at))) quote = mark;
    else if (/[[{]/.test(mark)) depth++;
    else if (/[\]}]/.test(mark)) depth--;
    else if (mark === '#' && /\s/.test(line[at - 1] ?? ''))
      return depth > 0 && /[\]}]/.test(line.slice(at)) ? at : null;
  }
  return null;
}

/** `'It doesn't'` and `"Half "way""`: the quotes end inside the text. */
function markInQuotes(error: YAMLError, offset: number, text: string): Slip | null {
  if (error.code !== 'UNEXPECTED_TOKEN' && error.code !== 'MISSING_CHAR') return null;
  const before = text.slice(Math.max(0, offset - 500), offset);
  const mark = /(["'])\s*$/.exec(before)?.[1];
  const next = text.slice(offset, offset + 1);
  if (mark === undefined || !/[^\s,:\]}#]/.test(next)) return null;
  const isApostrophe = mark === "'" && before.endsWith("'") && /\p{L}/u.test(next);
  return {
    code: 'yaml-syntax',
    message: isApostrophe
      ? `An apostrophe ends a text in '…', and “${wordAt(text, offset)}” follows it; put the whole text in "…" instead.`
      : `A text in ${mark}…${mark} ends at the second ${mark}, and “${wordAt(text, offset)}” follows it; put the whole text in ${mark === '"' ? "'…', or write \\\" inside it" : '"…" instead'}.`,
    offset,
    near: offset - 1,
    isOfElement: false,
  };
}

const wordAt = (text: string, offset: number): string =>
  /^[^\s"']{1,20}/.exec(text.slice(offset, offset + 20))?.[0] ?? text.slice(offset, offset + 1);

const ofColumns = ['BAD_INDENT', 'MISSING_CHAR', 'BLOCK_AS_IMPLICIT_KEY', 'MULTILINE_IMPLICIT_KEY'];

/** A line that stands a little to the left or right of where it belongs, or lacks its dash. */
function wrongColumn(error: YAMLError, line: number, text: string, lines: Lines): Slip | null {
  if (!ofColumns.includes(error.code) || /flow|closing|map values|Missing ,|end with/i.test(error.message))
    return null;
  // The parser blames the value above a line that is indented too far.
  const isBlamed = error.code === 'BLOCK_AS_IMPLICIT_KEY';
  const isElement = rowAt(line, text, lines)?.isElement === true;
  for (const at of !isBlamed ? [line] : isElement ? [line, line + 1] : [line + 1, line]) {
    const row = rowAt(at, text, lines);
    if (!row) continue;
    const before = [...rowsBefore(at, text, lines)];
    const slip = missingDash(row, before) ?? firstDashMissing(row, before) ?? shifted(row, before);
    if (slip) return slip;
  }
  return null;
}

/** Keys with which an element begins. */
const beginsElement = /^(id|\{|"?[\w-]+"?:\s*\{|quantity|shape|when)\b|^\{/;

function missingDash(row: Row, before: readonly Row[]): Slip | null {
  if (row.isElement || !/^[\w"{]/.test(row.rest)) return null;
  const siblings: Row[] = [];
  for (const other of before) {
    if (other.column < row.column && !(other.isElement && other.keyColumn >= row.column)) break;
    siblings.push(other);
  }
  const dash = siblings.find(({ isElement, column }) => isElement && column === row.column);
  const above = before[0];
  const isAfterElement =
    above?.isElement === true &&
    above.column < row.column &&
    /^\{.*\}\s*$/.test(above.rest) &&
    row.column <= above.keyColumn;
  if (!dash && !isAfterElement) return null;
  if (!beginsElement.test(row.rest) && dash !== above && !isAfterElement) return null;
  const element = (dash ?? above)!;
  return withoutDash(row, element.start + element.keyColumn - 1);
}

const withoutDash = (row: Row, near: number): Slip => ({
  code: 'missing-dash',
  message: wordsForMissingDash(row.rest),
  offset: row.start + row.column - 1,
  near,
  isOfElement: true,
});

/** @param rest how the line goes on where the dash is missing */
export function wordsForMissingDash(rest: string): string {
  const start = /^[^\s:]+:?(\s+[^\s,]+)?/.exec(rest)?.[0] ?? rest;
  return `Each element of a list begins with a dash and a space, ${quoted(start)} has none; write ${quoted(`- ${start}`)}, the dash in one column with the list’s others.`;
}

/** The first element of a list lacks its dash, and the parser stumbles over the second. */
function firstDashMissing(row: Row, before: readonly Row[]): Slip | null {
  if (!row.isElement) return null;
  let first: Row | null = null;
  for (const other of before) {
    if (other.isElement && other.column <= row.keyColumn) return null;
    if (other.column < row.column) break;
    first = other;
  }
  return first && first.column <= row.keyColumn ? withoutDash(first, first.start) : null;
}

/** By more than this a line isn't meant to stand where its neighbour does. */
const mostShift = 3;

function shifted(row: Row, before: readonly Row[]): Slip | null {
  if (!/^["\w-]+:|^\{|^\w/.test(row.rest)) return null;
  const model = row.isElement
    ? before.find(({ isElement, column }) => isElement && Math.abs(column - row.column) <= mostShift)
    : before.find(({ keyColumn }) => Math.abs(keyColumn - row.column) <= mostShift);
  if (!model) return null;
  const [is, belongs] = row.isElement ? [row.column, model.column] : [row.column, model.keyColumn];
  if (is === belongs) return null;
  const spaces = `${Math.abs(is - belongs)} space${Math.abs(is - belongs) === 1 ? '' : 's'}`;
  const mend = is < belongs ? `put ${spaces} more before it` : `take ${spaces} away before it`;
  const [what, other] = row.isElement
    ? ['dashes of one list', 'dash above']
    : ['keys of one part', quoted(firstWord(model))];
  return {
    code: 'yaml-syntax',
    message: `The ${what} begin in one column, this line in column ${is} and ${row.isElement ? 'the ' : ''}${other} in column ${belongs}; ${mend}.`,
    offset: row.start + is - 1,
    near: model.start + model.keyColumn - 1,
    isOfElement: true,
  };
}

const firstWord = ({ rest }: Row): string => /^[^\s:]+/.exec(rest)?.[0] ?? rest.slice(0, 20);
