/** What a quantity of the day is worked out from. */
import type { Expression } from '../deck/computed.ts';
import type { Deck } from '../deck/types.ts';
import { partsOf } from './evaluate.ts';

export interface Needs {
  /** Settings of the day, in the deck's order. */
  readonly settings: readonly string[];
  /** Charts to be read, in the deck's order. */
  readonly charts: readonly string[];
}

/** Every setting and every chart that can have a say in a quantity, through formulas and the wind. */
export function needsOf(deck: Deck, quantity: string): Needs {
  const seen = new Set<string>();
  const charts = new Set<string>();
  const look = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    const formula = deck.computed?.quantities.find((one) => one.quantity === id);
    if (formula) lookIn(formula.expression);
    else for (const maker of windMakersOf(deck, id)) look(maker);
  };
  const lookIn = (expression: Expression): void => {
    if (expression.kind === 'quantity') look(expression.quantity);
    if (expression.kind === 'chart') charts.add(expression.chart);
    for (const part of partsOf(expression)) lookIn(part);
  };
  look(quantity);
  const settings = (deck.day ?? []).map((setting) => setting.quantity).filter((id) => seen.has(id));
  return {
    settings,
    charts: (deck.charts ?? []).map(({ id }) => id).filter((id) => charts.has(id)),
  };
}

/** The settings that make the wind over the reference point, for a quantity that the wind gives. */
function windMakersOf({ wind }: Deck, id: string): readonly string[] {
  if (!wind || (wind.along !== id && wind.across !== id)) return [];
  return [wind.speed, wind.angle, wind.ship].filter((maker) => maker !== undefined);
}
