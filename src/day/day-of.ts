/** The quantities of the day: set for it, made by the wind, worked out by formulas. */
import type { Computed } from '../deck/computed.ts';
import { quantityOf } from '../deck/lookup.ts';
import { sayRange, sayValue } from '../deck/say.ts';
import type { Chart, Deck, Quantity, Wind } from '../deck/types.ts';
import { chartValue } from './chart.ts';
import { evaluate, type Surroundings, type Worked } from './evaluate.ts';
import type { NoValue, State } from './types.ts';
import { windOver } from './wind-over.ts';

/** What of a deck makes the values of its day. */
export interface DaySources {
  readonly day?: Deck['day'];
  readonly wind?: Wind | undefined;
  readonly computed?: Computed | undefined;
  readonly charts?: readonly Chart[] | undefined;
  readonly quantities: readonly Quantity[];
}

export interface ValuesOfDay {
  readonly values: State;
  readonly missing: readonly NoValue[];
  /** What a formula of this day can ask for. */
  readonly surroundings: Surroundings;
}

/**
 * Every quantity of the day with its value, in its unit: what is set, the wind over the reference point
 * that this makes, and the results of formulas. Those without a value today are absent.
 * @param changed quantity -> value in place of the deck's; others than those set for the day have no say.
 */
export const dayOf = (deck: Deck, changed: Readonly<Record<string, number>> = {}): State =>
  valuesOfDay(deck, changed).values;

/** The same with what has no value today, and why. */
export function valuesOfDay(
  sources: DaySources,
  changed: Readonly<Record<string, number>> = {},
): ValuesOfDay {
  const values: Record<string, number> = {};
  for (const setting of sources.day ?? [])
    values[setting.quantity] = changed[setting.quantity] ?? setting.default;
  if (sources.wind) addWind(sources.wind, values);

  const missing = new Map<string, string>();
  const surroundings: Surroundings = {
    quantity: (id) => {
      const value = values[id];
      if (value !== undefined) return { ok: true, value };
      return { ok: false, why: missing.get(id) ?? 'it has no value for the day' };
    },
    chart: (id, inputs) => {
      const chart = sources.charts?.find((one) => one.id === id);
      return chart ? chartValue(chart, inputs) : { ok: false, why: 'there is no such chart' };
    },
  };
  for (const { quantity, expression } of sources.computed?.quantities ?? []) {
    const worked = withinRange(evaluate(expression, surroundings), quantityIn(sources, quantity));
    if (worked.ok) values[quantity] = worked.value;
    else missing.set(quantity, worked.why);
  }
  return {
    values,
    missing: [...missing].map(([quantity, why]) => ({ quantity, why })),
    surroundings,
  };
}

const quantityIn = (sources: DaySources, id: string): Quantity => quantityOf(sources as Deck, id);

/** A result that the quantity can have: rounding errors at an end of its range are no fault. */
export function withinRange(worked: Worked, quantity: Quantity): Worked {
  if (!worked.ok) return worked;
  const [lowest, highest] = quantity.range;
  const slack = 1e-9 * Math.max(1, highest - lowest);
  if (worked.value >= lowest - slack && worked.value <= highest + slack) return worked;
  return {
    ok: false,
    why: `it comes to ${sayValue(worked.value, quantity)}, outside of ${sayRange(quantity.range, quantity)}`,
  };
}

function addWind(wind: Wind, values: Record<string, number>): void {
  const felt = windOver({
    windKt: values[wind.speed] ?? 0,
    fromDeg: values[wind.angle] ?? 0,
    shipKt: wind.ship === undefined ? 0 : (values[wind.ship] ?? 0),
  });
  values[wind.along] = felt.alongKt;
  if (wind.across !== undefined) values[wind.across] = felt.fromRightKt;
}
