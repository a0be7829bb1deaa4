/** The days at the ends of what can be set. */
import type { DeckParts } from '../deck/parts.ts';
import type { Quantity } from '../deck/types.ts';

export interface OtherDay {
  readonly changed: Readonly<Record<string, number>>;
  /** What is set to something else than the default. */
  readonly quantities: readonly Quantity[];
}

/** Settings that are combined with each other; of more, one is changed at a time. */
const mostCombined = 5;

/** Each setting at its default and at both ends of its range, few changes before many. */
export function outermostDays(parts: DeckParts): OtherDay[] {
  const settings = parts.day.flatMap(({ quantity: id, default: usual }) => {
    const quantity = parts.known.quantity.get(id);
    if (!quantity) return [];
    return [{ quantity, ends: quantity.range.filter((end) => end !== usual) }];
  });
  let days: OtherDay[] = [{ changed: {}, quantities: [] }];
  for (const { quantity, ends } of settings) {
    const from = settings.length <= mostCombined ? days : days.slice(0, 1);
    const more = from.flatMap(({ changed, quantities }) =>
      ends.map((end) => ({
        changed: { ...changed, [quantity.id]: end },
        quantities: [...quantities, quantity],
      })),
    );
    days = [...days, ...more];
  }
  return days.slice(1).sort((a, b) => a.quantities.length - b.quantities.length);
}
