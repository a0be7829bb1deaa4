/** The settings of the day that make the wind, and the quantities that get it. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted } from '../quoting.ts';
import { ifUnknown, mendOf } from './unknown-name.ts';

export function* checkWind(parts: DeckParts): Generator<Draft> {
  const { wind } = parts;
  if (!wind) return;
  const set = new Set(parts.day.map(({ quantity }) => quantity));
  for (const key of ['speed', 'angle', 'ship'] as const) {
    const id = wind[key];
    if (id === undefined || !parts.isComplete('day') || set.has(id)) continue;
    yield {
      code: 'quantity-not-of-day',
      message: `Wind is made from quantities that are set for the day, found ${quoted(id)}; ${mendOf(parts, id, set, 'add it to “day”')}.`,
      path: ['wind', key],
    };
  }
  for (const key of ['along', 'across'] as const) {
    const id = wind[key];
    if (id === undefined) continue;
    yield* ifUnknown(parts, 'quantity', id, ['wind', key]);
    if (set.has(id))
      yield {
        code: 'second-origin',
        message: `A quantity has one origin, ${quoted(id)} is set for the day and worked out from the wind; take it out of one of the two.`,
        path: ['wind', key],
      };
  }
}
