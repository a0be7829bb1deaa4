/**
 * A called number, as typed: "140", "140 ft", "1,000", "−5". The dot is the decimal mark, commas and
 * spaces may group thousands, and an exponent is read as one ("1e2" is 100) so that it can be refused
 * by its size rather than by its spelling. Never throws, whatever is typed.
 */
import { sayRange } from '../deck/say.ts';
import { units } from '../deck/units.ts';
import type { Quantity } from '../deck/types.ts';
import { spokenOf } from '../cards/wording.ts';
import type { Unreadable } from './types.ts';
import { areSameMeasure, measuredBy, spellingsOf, unitSpelt } from './unit-words.ts';

export type ReadNumber =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly problem: Unreadable };

/** No number anyone calls is longer; what is longer isn't looked at. */
const longestText = 60;
const longestEcho = 24;

const number = /^([+-]?) ?((?:[1-9]\d{0,2}(?:[, ]\d{3})+|\d+)(?:\.\d*)?|\.\d+)(e[+-]?\d+)?/;
/** One comma that groups nothing: "1,5" in a country where the comma is the decimal mark. */
const decimalComma = /^[+-]? ?\d+,\d+/;

/** The number in the quantity's unit and within its range, or what to type instead. */
export function readNumber(text: string, quantity: Quantity): ReadNumber {
  const typed = plain(text);
  if (typed === '')
    return refuse('empty', `Type a number: ${spokenOf(quantity)} is called ${howCalled(quantity)}.`);
  const notANumber = () =>
    refuse(
      'not-a-number',
      `“${echo(text)}” is not a number. Type the ${spokenOf(quantity)} in digits, without words.`,
    );
  if (typed.length > longestText) return notANumber();

  const match = number.exec(typed);
  if (!match) return notANumber();
  const [read, sign, digits, exponent = ''] = match;
  const rest = typed.slice(read.length);
  if (/^[\d.,]/.test(rest))
    return decimalComma.test(typed) && !rest.slice(1).includes(',')
      ? refuse(
          'not-a-number',
          `“${echo(text)}” has a comma that groups no thousands. Type a decimal with a point, like 1.5.`,
        )
      : notANumber();

  const wrongUnit = judgeUnit(rest.trim().replace(/\.$/, ''), `${sign}${digits}${exponent}`, quantity);
  if (wrongUnit === 'unknown') return notANumber();
  if (wrongUnit) return wrongUnit;

  const value = Number(`${sign}${digits!.replace(/[, ]/g, '')}${exponent}`);
  const [lowest, highest] = quantity.range;
  if (!(value >= lowest && value <= highest))
    return refuse(
      'out-of-range',
      `${echo(text)}${rest.trim() === '' ? suffix(quantity) : ''} is outside what ${spokenOf(quantity)} can be (${sayRange([lowest, highest], quantity)}).`,
    );
  // -0 is a way of typing 0, not an error to the left of it.
  return { ok: true, value: value === 0 ? 0 : value };
}

/** One kind of space, minus and apostrophe, whatever the keyboard made of them. */
function plain(text: string): string {
  return text
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u3000]+/g, ' ')
    .replace(/[\u2212\u2010-\u2015]/g, '-')
    .replace(/[\u2018\u2019\u2032]/g, "'")
    .trim()
    .toLowerCase();
}

function judgeUnit(unit: string, called: string, quantity: Quantity): ReadNumber | 'unknown' | null {
  if (unit === '' || spellingsOf(quantity.unit).includes(unit)) return null;
  const other = unitSpelt(unit, quantity.unit);
  if (!other) return 'unknown';
  const name = capital(spokenOf(quantity));
  const what = areSameMeasure(other, quantity.unit)
    ? `is in ${units[other].spoken}`
    : `is ${measuredBy(other)}`;
  const otherSymbol = units[other].symbol || unit;
  const said = otherSymbol === '°' ? `${called}°` : `${called} ${otherSymbol}`;
  return refuse(
    'wrong-unit',
    `${name} is called ${howCalled(quantity)}; ${said} ${what}. Type the number alone.`,
  );
}

const refuse = (code: Unreadable['code'], message: string): ReadNumber => ({
  ok: false,
  problem: { code, message },
});

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** "in ft", "in degrees", "as a bare number". */
const howCalled = ({ unit }: Quantity) => {
  const { symbol, spoken } = units[unit];
  if (symbol === '') return 'as a bare number';
  return `in ${symbol === '°' ? spoken : symbol}`;
};

const suffix = ({ unit }: Quantity) => {
  const { symbol } = units[unit];
  return symbol === '' || symbol === '°' ? symbol : ` ${symbol}`;
};

/** What was typed, short enough for one line and without control characters. */
function echo(text: string): string {
  const letters = [
    ...text
      .slice(0, 4 * longestEcho)
      .replace(/[\p{C}\s]+/gu, ' ')
      .trim(),
  ];
  return letters.length > longestEcho ? `${letters.slice(0, longestEcho).join('')}…` : letters.join('');
}
