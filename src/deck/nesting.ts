/** How deep lists and mappings lie in each other, found without recursion, before the parser runs. */
import { Lexer } from 'yaml';

export interface Nesting {
  /** Where the text first lies deeper than allowed, in UTF-16 units from its start; null when nowhere. */
  readonly tooDeepAt: number | null;
  /** Where the text holds more pieces than allowed; null when nowhere. */
  readonly tooManyAt: number | null;
}

/** Marks that the lexer puts between pieces and that don't stand in the text. */
const controls: ReadonlySet<string> = new Set(['\u0002', '\u0018', '\u001f']);
const indicators: ReadonlySet<string> = new Set(['-', '?', ':']);
const isSpace = (piece: string): boolean => /^\s*$/.test(piece);

/**
 * Reads the pieces of a YAML text. The parser is recursive and would exhaust the stack on a text of
 * thousands of levels; the lexer is not. Levels are the open brackets and the open indentations: what
 * begins a line opens one at its column, and so does every further indicator on that line. Never fewer
 * than the parser's own, but for a list at the indentation of its key, which at most doubles them.
 */
export function measureNesting(text: string, mostLevels: number, mostPieces: number): Nesting {
  let offset = 0;
  let lineStart = 0;
  let pieces = 0;
  let brackets = 0;
  let lineHasBegun = false;
  let lineHasKey = false;
  const columns: number[] = [];
  for (const piece of new Lexer().lex(text)) {
    if (controls.has(piece)) continue;
    if (++pieces > mostPieces) return { tooDeepAt: null, tooManyAt: offset };
    if (piece === '[' || piece === '{') brackets++;
    else if (piece === ']' || piece === '}') brackets = Math.max(0, brackets - 1);
    else if (brackets === 0 && !isSpace(piece) && !piece.startsWith('#')) {
      const endsKey = piece === ':' && lineHasBegun && !lineHasKey;
      if (endsKey) lineHasKey = true;
      else if (!lineHasBegun || indicators.has(piece)) open(columns, offset - lineStart);
      lineHasBegun = !indicators.has(piece) || lineHasBegun;
    }
    if (brackets + columns.length > mostLevels) return { tooDeepAt: offset, tooManyAt: null };
    const lineBreak = piece.lastIndexOf('\n');
    if (lineBreak >= 0) {
      lineStart = offset + lineBreak + 1;
      lineHasBegun = false;
      lineHasKey = false;
    }
    offset += piece.length;
  }
  return { tooDeepAt: null, tooManyAt: null };
}

function open(columns: number[], column: number): void {
  while (columns.length > 0 && columns[columns.length - 1]! >= column) columns.pop();
  columns.push(column);
}
