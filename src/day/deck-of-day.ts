/** The deck in the numbers of a day. */
import type { ComputedNumber } from '../deck/computed.ts';
import { quantityOf } from '../deck/lookup.ts';
import type { Band, Deck, Gate } from '../deck/types.ts';
import { bandWith, whyNoBand } from './band-of-day.ts';
import { valuesOfDay, type ValuesOfDay } from './day-of.ts';
import { evaluate } from './evaluate.ts';
import { becauseOf } from './moved.ts';
import type { DayDeck, MovedValue, NoValue } from './types.ts';

/**
 * The deck as of a day, with every value that moves and why. Without a change it is the deck itself.
 * A band that can't be worked out is taken out of its gate and listed.
 * @param changed quantity -> value in place of the deck's, in its unit; others than those set for the day
 * have no say.
 */
export function deckOfDay(deck: Deck, changed: Readonly<Record<string, number>>): DayDeck {
  const settings = (deck.day ?? []).map((setting) => ({
    ...setting,
    default: changed[setting.quantity] ?? setting.default,
  }));
  const isSame = settings.every(({ default: value }, at) => value === deck.day?.[at]?.default);
  const today = valuesOfDay(deck, changed);
  const { values } = today;
  if (isSame) return { deck, values, missing: today.missing, moved: [] };

  const before = valuesOfDay(deck);
  const moved: MovedValue[] = [];
  const missing: NoValue[] = [...today.missing];
  const numbersOf = grouped(deck.computed?.numbers ?? [], 'gate');
  const gates = deck.gates.map((gate) => {
    const numbers = numbersOf.get(gate.id);
    const placed = placeOfDay(deck, gate, today);
    return numbers ? gateOfDay(deck, placed, numbers, { before, today }, moved) : placed;
  });
  return { deck: { ...deck, day: settings, gates }, values, missing, moved };
}

/** The gate where it lies today; where it always lies when no place can be worked out. */
function placeOfDay(deck: Deck, gate: Gate, { surroundings }: ValuesOfDay): Gate {
  const own = deck.computed?.positions.filter((position) => position.gate === gate.id) ?? [];
  if (own.length === 0) return gate;
  const place = { ...gate.position };
  for (const { side, expression } of own) {
    const worked = evaluate(expression, surroundings);
    if (worked.ok) place[side] = worked.value;
  }
  return { ...gate, position: place };
}

function gateOfDay(
  deck: Deck,
  gate: Gate,
  numbers: readonly ComputedNumber[],
  days: { readonly before: ValuesOfDay; readonly today: ValuesOfDay },
  moved: MovedValue[],
): Gate {
  const values: Record<string, Band> = {};
  const byQuantity = grouped(numbers, 'quantity');
  for (const [id, band] of Object.entries(gate.values)) {
    const own = byQuantity.get(id);
    if (!own) {
      values[id] = band;
      continue;
    }
    const quantity = quantityOf(deck, id);
    const made = bandWith(band, own, quantity, days.today.surroundings);
    const why = made.ok ? whyNoBand(made.band, quantity) : made.why;
    if (!made.ok || why !== null) {
      moved.push({ gate: gate.id, quantity: id, before: band, after: null, because: why ?? '' });
      continue;
    }
    values[id] = made.band;
    if (sayNumbers(band) !== sayNumbers(made.band))
      moved.push({
        gate: gate.id,
        quantity: id,
        before: band,
        after: made.band,
        because: becauseOf(
          deck,
          own,
          quantity,
          { before: band, after: made.band },
          { before: days.before.values, after: days.today.values },
        ),
      });
  }
  return { ...gate, values };
}

const sayNumbers = ({ target, desired, adequate, floor, ceiling }: Band): string =>
  JSON.stringify([target, desired, adequate, floor ?? null, ceiling ?? null]);

/** Formulas of bands by the gate or the quantity they belong to, each in its order. */
export function grouped(
  numbers: readonly ComputedNumber[],
  by: 'gate' | 'quantity',
): ReadonlyMap<string, readonly ComputedNumber[]> {
  const groups = new Map<string, ComputedNumber[]>();
  for (const number of numbers) {
    const group = groups.get(number[by]);
    if (group) group.push(number);
    else groups.set(number[by], [number]);
  }
  return groups;
}
