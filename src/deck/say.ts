/** Numbers in words and print: one way to write a value, its unit and its error, everywhere. */
import type { Quantity } from './types.ts';
import { units } from './units.ts';

/** Decimals that a step needs: 10 -> 0, 0.5 -> 1, 0.25 -> 2. */
export function decimalsOf(step: number): number {
  for (let decimals = 0; decimals < 6; decimals++) {
    const scaled = step * 10 ** decimals;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-9) return decimals;
  }
  return 6;
}

/** Shown when a value is finer than its step: what was typed, or worked out, to a thousandth. */
const mostExtraDecimals = 3;

/**
 * "1,000", "−250", "0.5": grouped thousands, a true minus sign, as many decimals as the step has, and more
 * only when the value has them.
 */
export function sayNumber(value: number, step = 1): string {
  const ofStep = decimalsOf(step);
  const ofValue = Number.isFinite(value) ? decimalsOf(value) : 0;
  const most = Math.max(ofStep, Math.min(ofValue, mostExtraDecimals));
  const text = formatOf(ofStep, most).format(Math.abs(value));
  // What rounds to nothing has no sign.
  return value < 0 && /[1-9∞]/.test(text) ? `−${text}` : text;
}

/** By the least and most decimals: making a format takes many times as long as using it. */
const formats = new Map<string, Intl.NumberFormat>();

function formatOf(minimumFractionDigits: number, maximumFractionDigits: number): Intl.NumberFormat {
  const key = `${minimumFractionDigits} ${maximumFractionDigits}`;
  let format = formats.get(key);
  if (!format) {
    format = new Intl.NumberFormat('en-US', { minimumFractionDigits, maximumFractionDigits });
    formats.set(key, format);
  }
  return format;
}

/** "140 ft", "60°", "12 %": a degree sign stands close, other units after a no-break space. */
export function sayValue(value: number, quantity: Quantity): string {
  return sayNumber(value, quantity.step) + unitSuffix(quantity);
}

/** The unit as it follows a number, with its space. */
export function unitSuffix(quantity: Pick<Quantity, 'unit'>): string {
  const { symbol } = units[quantity.unit];
  if (symbol === '') return '';
  return symbol === '°' ? symbol : `\u00a0${symbol}`;
}

/** "20 ft high", "5 kt slow", "on target". The error is value minus target, in the quantity's unit. */
export function sayError(signedError: number, quantity: Quantity): string {
  const size = Math.abs(signedError);
  if (!/[1-9∞]/.test(sayNumber(size, quantity.step))) return 'on target';
  const word = signedError > 0 ? (quantity.above ?? 'over') : (quantity.below ?? 'under');
  return `${sayValue(size, quantity)} ${word}`;
}

/** "130 to 150 ft"; "140 ft" when both ends are the same. */
export function sayRange(range: readonly [number, number], quantity: Quantity): string {
  if (range[0] === range[1]) return sayValue(range[0], quantity);
  return `${sayNumber(range[0], quantity.step)} to ${sayValue(range[1], quantity)}`;
}

/** "a", "a and b", "a, b and c". */
export function sayList(items: readonly string[], word = 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${word} ${items[items.length - 1]}`;
}
