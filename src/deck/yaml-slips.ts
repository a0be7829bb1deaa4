/**
 * The slip of the pen behind an error of the parser, seen from the lines around it: the parser tells where
 * it stumbled, which is often a line later and in words about its own grammar.
 */
import type { YAMLError } from 'yaml';
import type { Lines } from './lines.ts';
import { quoted } from './quoting.ts';
import { slipInBrackets } from './yaml-brackets.ts';
import type { Slip } from './yaml-slip.ts';

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
    slipInBrackets(error, offset, text, lines) ??
    markInQuotes(error, offset, text) ??
    keyWithoutColon(error, line, text, lines) ??
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

/** `gates` or `title:The raft` on a line of its own. */
function keyWithoutColon(error: YAMLError, line: number, text: string, lines: Lines): Slip | null {
  const row = error.code === 'MULTILINE_IMPLICIT_KEY' ? rowAt(line, text, lines) : null;
  const [, key, rest = ''] = /^([A-Za-z][\w-]*)(:\S.*|\s*)$/.exec(row?.rest ?? '') ?? [];
  if (!row || key === undefined) return null;
  const value = rest.replace(/^:/, '').trim();
  return {
    code: 'missing-colon',
    message: value
      ? `A colon needs a space after it, ${quoted(row.rest)} has none; write ${quoted(`${key}: ${value}`)}.`
      : `A key needs a colon after it, ${quoted(key)} has none; write ${quoted(`${key}:`)}.`,
    offset: row.start + row.keyColumn - 1,
    near: row.start,
    isOfElement: true,
  };
}

const ofColumns = ['BAD_INDENT', 'MISSING_CHAR', 'BLOCK_AS_IMPLICIT_KEY', 'MULTILINE_IMPLICIT_KEY'];

/** A line that stands a little to the left or right of where it belongs, or lacks its dash. */
function wrongColumn(error: YAMLError, line: number, text: string, lines: Lines): Slip | null {
  if (!ofColumns.includes(error.code) || /flow|closing|map values|Missing ,|end with/i.test(error.message))
    return null;
  // The parser blames the value above a line that is indented too far.
  const isBlamed = error.code === 'BLOCK_AS_IMPLICIT_KEY';
  const isElement = rowAt(line, text, lines)?.isElement === true;
  const after = isBlamed && !isElement ? [line + 1, line] : [line, line + 1, line + 2];
  for (const at of after) {
    const row = rowAt(at, text, lines);
    if (!row) continue;
    const before = [...rowsBefore(at, text, lines)];
    const slip = missingDash(row, before) ?? firstDashMissing(row, before) ?? shifted(row, before);
    if (slip) return slip;
  }
  return null;
}

/** Keys with which an element begins. */
const beginsElement = /^(id|quantity|shape|when)\b|^\{/;

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
  if (!first || first.column > row.keyColumn) return null;
  if (beginsElement.test(first.rest)) return withoutDash(first, first.start);
  return {
    code: 'yaml-syntax',
    message: `A dash begins an element of a list, and the lines above ${quoted(firstWord(row))} have none; take “- ” away here, or put it before each of them.`,
    offset: row.start + row.column - 1,
    near: first.start + first.column - 1,
    isOfElement: true,
  };
}

/** By more than this a line isn't meant to stand where its neighbour does. */
const mostShift = 3;

function shifted(row: Row, before: readonly Row[]): Slip | null {
  if (!/^["\w-]+:|^\{|^\w/.test(row.rest)) return null;
  const columnOf = (other: Row): number => (row.isElement ? other.column : other.keyColumn);
  const distance = (other: Row): number => Math.abs(columnOf(other) - row.column);
  let model: Row | null = null;
  for (const other of before) {
    const isOfKind = row.isElement ? other.isElement : /^["\w]/.test(other.rest);
    if (isOfKind && distance(other) <= mostShift && (!model || distance(other) < distance(model)))
      model = other;
    if (other.column === 1 || (other.isElement && !row.isElement)) break;
  }
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
