/** The cards of decision rules. Apart from how they are asked: the first page counts cards and asks none. */
import { actionOf, controlOf, gateIndexOf } from '../deck/lookup.ts';
import type { Phase } from '../deck/types.ts';
import type { Budget } from '../rules/cover.ts';
import { findRule } from '../rules/region.ts';
import type { Procedure } from '../rules/types.ts';
import { canDecide, witnessWork } from '../rules/witness.ts';
import { cardId } from './ids.ts';
import type { Card } from './types.ts';
import { instructionOf } from './wording.ts';

/**
 * A rule that can never decide (the analysis names it) gives no card: there is nothing to show. In a
 * table too tangled to find out (the analysis says so) it gives one: the work here is bounded.
 */
export function ruleCards(procedure: Procedure): Card[] {
  const { deck } = procedure;
  const budget: Budget = { left: witnessWork };
  return (deck.tables ?? []).flatMap((table) =>
    table.rules.flatMap((rule) => {
      const phase = homeOf(procedure, table.id, rule.id, budget);
      if (!phase) return [];
      return [
        {
          id: cardId('rule', table.id, rule.id),
          kind: 'rule' as const,
          gate: phase.from,
          group: `phase/${phase.id}`,
          label: `${table.label} · ${rule.id.replaceAll('-', ' ')}`,
          critical: rule.critical === true || table.overriding === true,
          windowMs: windowMs(phase),
          expected: instructionOf(actionOf(controlOf(deck, table.control), rule.then)),
        },
      ];
    }),
  );
}

/** The first phase, as the procedure is flown, in which the rule can decide a state that can be read off. */
function homeOf(procedure: Procedure, tableId: string, ruleId: string, budget: Budget): Phase | undefined {
  const { deck, phases } = procedure;
  const place = (phase: Phase) => gateIndexOf(deck, phase.from);
  return [...phases.values()]
    .filter((rules) => {
      const found = findRule(rules, tableId, ruleId);
      return found && canDecide(procedure, rules, found.table, found.rule, budget);
    })
    .map(({ phase }) => phase)
    .sort((one, other) => place(one) - place(other))[0];
}

/** In which a call of the phase is prompt. */
export const windowMs = (phase: Phase): number => phase.windowS * 1000;
