/** A number that was written as a text: what to write instead. */
import type { DeckCode } from './codes.ts';
import { sayFound } from './quoting.ts';

const signed = /^\s*([-+−]?)\s*(\d[\d.,_' \u00a0\u202f]*|\.\d+)\s*([^\d.,]*)$/;
const grouped = /^(?!0)\d{1,3}([,_' \u00a0\u202f]\d{3})+(?=$|\.)/;

/**
 * "140 ft" -> 140; "1,500" and "1 500" -> 1500; "9,5" -> 9.5; "−3" with a true minus sign -> -3; null when
 * it is no number, or one that could be read in two ways.
 */
export function numberIn(text: string): number | null {
  const [, sign = '', written = ''] = signed.exec(text) ?? [];
  const trimmed = written.trim();
  const digits = grouped.test(trimmed)
    ? trimmed.replace(/[,_' \u00a0\u202f]/g, '')
    : trimmed.replace(/^(\d+),(\d+)$/, '$1.$2');
  if (!/^(\d+(\.\d+)?|\.\d+)$/.test(digits)) return null;
  const value = Number(digits);
  if (!Number.isFinite(value)) return null;
  return sign === '-' || sign === '−' ? -value : value;
}

export function wordsForNumber(text: string): { readonly code: DeckCode; readonly message: string } {
  const found = sayFound(text);
  const value = text.length <= 200 ? numberIn(text.replace(/^[“”„‘’«»"']+|[“”„‘’«»"']+$/g, '')) : null;
  const [, over, under] = /^\s*(\d{1,6})\s*\/\s*(\d{1,6})\s*$/.exec(text) ?? [];
  if (value === null && Number(under) > 0) {
    const quotient = Number((Number(over) / Number(under)).toFixed(4));
    return {
      code: 'number-as-text',
      message: `A number is written with a point, found ${found}; write ${quotient}.`,
    };
  }
  if (value === null)
    return { code: 'wrong-type', message: `A number must stand here, found ${found}; write one.` };
  const hasUnit = /[\p{L}°%]/u.test(text);
  const reason = hasUnit ? ' without the unit' : ', without quotes or marks between its digits';
  return {
    code: 'number-as-text',
    message: `A number must stand alone, found ${found}; write ${value}${reason}.`,
  };
}
