/** Quantities of the day that are worked out from the others. */
import * as z from 'zod/mini';
import { mostFormulaCharacters } from '../limits.ts';
import { wordsForNumber } from '../words-for-number.ts';
import { about, amount, id, words } from './terms.ts';

export const formula = () => z.string().check(z.minLength(1), z.maxLength(mostFormulaCharacters));

/** A number in quotes is no formula, nor is one with its unit: it stands as a number, as elsewhere. */
const noNumber = z.refine((text) => {
  const isOneWord = !/[_+*^(?]|[^\d\s.,]\s+\S/.test(String(text).slice(1));
  return !isOneWord || wordsForNumber(String(text)).code !== 'number-as-text';
});

/** A number of a band: as it stands, or worked out anew for each day. */
export const amountOrFormula = () => z.union([amount(), formula().check(noNumber)]);
export const rangeOrFormulas = () => z.tuple([amountOrFormula(), amountOrFormula()]);

export const formulaSchema = z.strictObject({
  quantity: about('The quantity of the day that gets the result.', id()),
  expression: about(
    'Numbers with units, quantities of the day and charts by their ids (with “_” for “-”), + - * / ^, comparisons with “? :”, and sqrt, abs, min, max, round, floor, ceil, sin, cos, tan, asin, acos, atan, atan2.',
    formula(),
  ),
  because: z.optional(words()),
  source: z.optional(id()),
});
