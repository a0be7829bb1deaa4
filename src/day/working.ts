/** How a quantity of the day comes about, line by line. */
import type { Deck } from '../deck/types.ts';
import type { WorkingLine } from './types.ts';
import { valuesOfDay, type ValuesOfDay } from './day-of.ts';
import { windLine } from './working-of-wind.ts';
import { formulaLine } from './working-of-formula.ts';
import { quantitiesIn } from './evaluate.ts';

/**
 * The steps to a quantity of the day, inputs first, each once; none for what is only set for the day.
 * @returns null when it has no value on that day.
 */
export function workingOf(
  deck: Deck,
  quantity: string,
  changed: Readonly<Record<string, number>>,
): readonly WorkingLine[] | null {
  const day = valuesOfDay(deck, changed);
  if (day.values[quantity] === undefined) return null;
  const lines = new Map<string, WorkingLine | null>();
  addLines(deck, quantity, day, lines);
  return [...lines.values()].filter((line) => line !== null);
}

function addLines(deck: Deck, id: string, day: ValuesOfDay, lines: Map<string, WorkingLine | null>): void {
  if (lines.has(id)) return;
  const formula = deck.computed?.quantities.find(({ quantity }) => quantity === id);
  if (formula) {
    for (const input of quantitiesIn(formula.expression)) addLines(deck, input, day, lines);
    lines.set(id, formulaLine(deck, formula, day));
  } else lines.set(id, windLine(deck, id, day.values));
}
