/** The settings of the day, and the wind that follows from them. */
import type { Deck } from '../deck/types.ts';
import type { State } from '../rules/types.ts';
import { windOver } from './wind.ts';

/**
 * Every quantity of the day with its value, and the wind over the reference point that they make.
 * @param changed quantity -> value in place of the deck's; others than those of the day have no say.
 */
export function dayOf(deck: Deck, changed: Readonly<Record<string, number>> = {}): State {
  const day: Record<string, number> = {};
  for (const setting of deck.day ?? []) day[setting.quantity] = changed[setting.quantity] ?? setting.default;
  const { wind } = deck;
  if (!wind) return day;
  const felt = windOver({
    windKt: day[wind.speed] ?? 0,
    fromDeg: day[wind.angle] ?? 0,
    shipKt: wind.ship === undefined ? 0 : (day[wind.ship] ?? 0),
  });
  day[wind.along] = felt.alongKt;
  if (wind.across !== undefined) day[wind.across] = felt.fromRightKt;
  return day;
}
