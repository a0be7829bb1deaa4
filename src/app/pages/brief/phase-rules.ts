/** What the briefing sheet lists of a phase: its tables, what they ask for, and its limits. */
import { actionOf, controlOf, quantityOf } from '../../../deck/lookup.ts';
import { sayValue } from '../../../deck/say.ts';
import type { Deck, DecisionTable, Phase } from '../../../deck/types.ts';

/** Id of a phase's element on the sheet, to jump to. */
export const phaseAnchor = (phaseId: string): string => `phase-${phaseId}`;

/** The tables that decide in a phase, those that beat all others first. */
export function tablesOf(deck: Deck, phase: Phase): readonly DecisionTable[] {
  const own = (deck.tables ?? []).filter((table) => table.phases.includes(phase.id));
  return [...own.filter((table) => table.overriding), ...own.filter((table) => !table.overriding)];
}

/** An action of the table's control as an instruction: "Nose up". */
export function instructionIn(deck: Deck, table: DecisionTable, action: string): string {
  const found = actionOf(controlOf(deck, table.control), action);
  const said = found.spoken ?? found.label;
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** The phase's limits in words: "Bank never above 35°". */
export function limitsOf(
  deck: Deck,
  phase: Phase,
): readonly { readonly words: string; readonly because: string | undefined }[] {
  return Object.entries(phase.limits ?? {}).flatMap(([id, { floor, ceiling, because }]) => {
    const quantity = quantityOf(deck, id);
    const words = [
      ...(floor === undefined ? [] : [`${quantity.label} never below ${sayValue(floor, quantity)}`]),
      ...(ceiling === undefined ? [] : [`${quantity.label} never above ${sayValue(ceiling, quantity)}`]),
    ];
    return words.map((said) => ({ words: said, because }));
  });
}
