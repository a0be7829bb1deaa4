/** The quantities that have one value for the whole day. */
import type { DeckParts } from '../parts.ts';

/** Set for it, made from the wind, or worked out by a formula. */
export function quantitiesOfDay({ day, wind, formulas }: DeckParts): string[] {
  const made = wind ? [wind.along, wind.across] : [];
  return [
    ...day.map(({ quantity }) => quantity),
    ...made.filter((id) => id !== undefined),
    ...formulas.map(({ quantity }) => quantity),
  ];
}
