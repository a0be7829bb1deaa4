/** Numbers to be worked out for a day: asked with conditions drawn anew, graded around their result. */
import { onStep } from '../day/band-of-day.ts';
import { dayOf } from '../day/day-of.ts';
import { needsOf } from '../day/needs-of.ts';
import { quantityOf, sourceOf } from '../deck/lookup.ts';
import type { Band, Deck, Quantity, WorkedValue } from '../deck/types.ts';
import { interval } from '../rules/intervals.ts';
import type { Random } from '../rules/random.ts';
import { saySigned } from '../rules/say-signed.ts';
import { multipleOf, multiplesIn } from '../rules/steps.ts';
import type { CardKindEntry } from './card-kind.ts';
import { partsOf } from './ids.ts';
import type { Card, Given } from './types.ts';
import { gatePlace } from './wording.ts';
import { workedCards } from './worked-cards.ts';

/** Draws that come to no value, outside of a chart perhaps, before the day is taken as the deck has it. */
const mostDraws = 60;

/** What a worked card asks for. The deck has it, or the card was made from another deck: a bug. */
export function workedOf(deck: Deck, card: Pick<Card, 'id'>): WorkedValue {
  const worked = deck.worked?.find(({ id }) => id === partsOf(card.id)[0]);
  if (!worked) throw new Error(`No worked value “${card.id}” in the deck.`);
  return worked;
}

/**
 * Around the result, called to the quantity's step: so far either way is desired, so far adequate, as far
 * as the quantity goes.
 */
export function workedBand(result: number, worked: WorkedValue, quantity: Quantity): Band {
  const target = onStep(result, quantity.step);
  const [lowest, highest] = quantity.range;
  // 0.7 + 0.1 is 0.8, not a hair less: a bound must hold the number typed for it.
  const within = (value: number) => Math.min(highest, Math.max(lowest, Number(value.toFixed(9))));
  const around = (off: number) => [within(target - off), within(target + off)] as const;
  return { target: within(target), desired: around(worked.desired), adequate: around(worked.adequate) };
}

/** The settings drawn, each a value that is called; with its result. */
function drawnDay(deck: Deck, worked: WorkedValue, random: Random) {
  for (let draw = 0; draw < mostDraws; draw++) {
    const day: Record<string, number> = {};
    for (const [id, ends] of Object.entries(worked.draw)) day[id] = drawn(ends, quantityOf(deck, id), random);
    const result = dayOf(deck, day)[worked.quantity];
    if (result !== undefined) return { day, result };
  }
  const result = dayOf(deck)[worked.quantity];
  if (result === undefined) throw new Error(`“${worked.quantity}” has no value on the deck’s day.`);
  return { day: {}, result };
}

function drawn([lo, hi]: readonly [number, number], { step }: Quantity, random: Random): number {
  const { first, count } = multiplesIn(interval(lo, hi), step);
  return count > 0 ? multipleOf(step, first + Math.floor(random() * count)) : lo;
}

/** Everything the result can depend on, drawn or not, and what was drawn without a say in it. */
function givenOf(deck: Deck, worked: WorkedValue, day: Readonly<Record<string, number>>): Given {
  const needs = needsOf(deck, worked.quantity);
  const shown = (deck.day ?? []).filter(
    ({ quantity }) => needs.settings.includes(quantity) || worked.draw[quantity] !== undefined,
  );
  return {
    day: Object.fromEntries(
      shown.map((setting) => [setting.quantity, day[setting.quantity] ?? setting.default]),
    ),
    values: shown.map((setting) => {
      const quantity = quantityOf(deck, setting.quantity);
      return { label: quantity.label, value: saySigned(day[quantity.id] ?? setting.default, quantity) };
    }),
    charts: needs.charts,
  };
}

export const worked: CardKindEntry = {
  kind: 'worked',

  make: workedCards,

  show({ deck }, card, random, seed) {
    const asked = workedOf(deck, card);
    const { day, result } = drawnDay(deck, asked, random);
    return {
      card,
      seed,
      place: asked.gate === undefined ? 'The day’s numbers' : gatePlace(deck, asked.gate),
      title: asked.ask,
      detail: '',
      ask: {
        form: 'number',
        quantity: asked.quantity,
        band: workedBand(result, asked, quantityOf(deck, asked.quantity)),
        limit: null,
        given: givenOf(deck, asked, day),
      },
    };
  },

  ground({ deck }, card) {
    const asked = workedOf(deck, card);
    const formula = deck.formulas?.find(({ quantity }) => quantity === asked.quantity);
    return {
      because: asked.because ?? formula?.because ?? null,
      source: sourceOf(deck, asked.source ?? formula?.source),
    };
  },
};
