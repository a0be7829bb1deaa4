/** Offsets in a text -> lines and columns. (The parser's own counter misses lines behind an error.) */
import type { Place } from './findings.ts';

export interface Lines {
  /** Line and column from 1, as text editors count; columns in UTF-16 units. */
  readonly placeAt: (offset: number) => Place;
  /** Where a line begins, counted from 1. */
  readonly startOf: (line: number) => number;
}

export function linesOf(text: string): Lines {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  const placeAt = (offset: number): Place => {
    const within = Math.max(0, Math.min(offset, text.length));
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= within) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: within - starts[low]! + 1 };
  };
  return { placeAt, startOf: (line) => starts[line - 1] ?? text.length };
}
