/** The bands that formulas make, as plain numbers of a day. */
import type { ComputedNumber } from '../deck/computed.ts';
import { decimalsOf, sayRange, sayValue } from '../deck/say.ts';
import type { Band, Quantity } from '../deck/types.ts';
import { evaluate, type Surroundings } from './evaluate.ts';

export type BandOfDay =
  { readonly ok: true; readonly band: Band } | { readonly ok: false; readonly why: string };

/** The nearest value that can be called: a multiple of the step, without what doubles add to it. */
export function onStep(value: number, step: number): number {
  if (!(step > 0)) return value;
  const called = Number((Math.round(value / step + 1e-9) * step).toFixed(decimalsOf(step)));
  return called + 0;
}

/**
 * A band with the numbers that its formulas come to, each rounded to the step in which the quantity is
 * called. It is not looked at whether they fit together.
 */
export function bandWith(
  band: Band,
  numbers: readonly ComputedNumber[],
  quantity: Quantity,
  surroundings: Surroundings,
): BandOfDay {
  const made: Writable = { ...band, desired: [...band.desired], adequate: [...band.adequate] };
  for (const { number, expression } of numbers) {
    const worked = evaluate(expression, surroundings);
    if (!worked.ok) return worked;
    const value = onStep(worked.value, quantity.step);
    switch (number[0]) {
      case 'desired':
      case 'adequate':
        made[number[0]][number[1]] = value;
        break;
      default:
        made[number[0]] = value;
    }
  }
  return { ok: true, band: made };
}

type Writable = { -readonly [K in keyof Omit<Band, 'desired' | 'adequate'>]: Band[K] } & {
  desired: [number, number];
  adequate: [number, number];
};

/** What keeps a band from being one: its parts don't lie inside each other; null when they do. */
export function whyNoBand(band: Band, quantity: Quantity): string | null {
  const { target, desired, adequate, floor, ceiling } = band;
  const say = (ends: readonly [number, number]): string => sayRange(ends, quantity);
  if (desired[0] > desired[1] || adequate[0] > adequate[1]) return 'an upper end lies below its lower end';
  if (target < desired[0] || target > desired[1])
    return `the target ${sayValue(target, quantity)} lies outside of desired ${say(desired)}`;
  if (desired[0] < adequate[0] || desired[1] > adequate[1])
    return `desired ${say(desired)} reaches beyond adequate ${say(adequate)}`;
  if (adequate[0] < quantity.range[0] || adequate[1] > quantity.range[1])
    return `adequate ${say(adequate)} reaches beyond what can occur, ${say(quantity.range)}`;
  if (floor !== undefined && floor > adequate[0])
    return `the floor ${sayValue(floor, quantity)} lies inside adequate ${say(adequate)}`;
  if (ceiling !== undefined && ceiling < adequate[1])
    return `the ceiling ${sayValue(ceiling, quantity)} lies inside adequate ${say(adequate)}`;
  return null;
}
