/** A number that was written as a text: what to write instead. */
import type { DeckCode } from './codes.ts';
import { sayFound } from './quoting.ts';

/** "140 ft" -> 140; "1,500" and "1_500" -> 1500; "−3" with a true minus sign -> -3; else null. */
export function numberIn(text: string): number | null {
  const parts = /^\s*([-+−]?)\s*(\d[\d,_' \u00a0\u202f]*(?:\.\d+)?|\.\d+)\s*([^\d.,]*)\s*$/.exec(text);
  if (!parts) return null;
  const [, sign, digits] = parts;
  const value = Number(digits!.replace(/[,_' \u00a0\u202f]/g, ''));
  return Number.isFinite(value) ? (sign === '-' || sign === '−' ? -value : value) : null;
}

export function wordsForNumber(text: string): { readonly code: DeckCode; readonly message: string } {
  const found = sayFound(text);
  const value = text.length <= 200 ? numberIn(text) : null;
  if (value === null)
    return { code: 'wrong-type', message: `A number must stand here, found ${found}; write one.` };
  const hasUnit = /[^\d\s.,_'+−-]/.test(text);
  const reason = hasUnit
    ? ', the unit comes from the quantity'
    : ', without quotes or marks between its digits';
  return {
    code: 'number-as-text',
    message: `A number must stand alone, found ${found}; write ${value}${reason}.`,
  };
}
