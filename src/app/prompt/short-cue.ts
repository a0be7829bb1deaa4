/** A state in a few words: what the rule looked at that decided it, not all that the instruments said. */
import { cueOf } from '../../cards/cue.ts';
import { phaseOf, quantityOf, tableOf } from '../../deck/lookup.ts';
import { tellingInputs } from '../../drill/decision-map.ts';
import type { Procedure, Reason, State } from '../../rules/types.ts';
import { sayCondition } from '../rule-sentence.ts';

/**
 * "Crossing, drift 1 kt to the right, closure 5 kt". Of a rule without conditions, and where no rule decided,
 * the two values are said that matter most there.
 */
export function shortCue(
  procedure: Procedure,
  phaseId: string,
  state: State,
  decidedBy: Pick<Reason, 'table' | 'rule'> | null,
): string {
  const phase = phaseOf(procedure.deck, phaseId);
  const asked = decidedBy ? conditionsOf(procedure, decidedBy) : [];
  const inPhase = asked.filter((id) => phase.state[id]);
  const shown = inPhase.length > 0 ? inPhase : (tellingInputs(procedure, phaseId, state) ?? undefined);
  return cueOf(procedure, phase, state, shown);
}

function conditionsOf({ deck }: Procedure, { table, rule }: Pick<Reason, 'table' | 'rule'>): string[] {
  const when = tableOf(deck, table).rules.find(({ id }) => id === rule)?.when ?? {};
  return Object.entries(when).flatMap(([id, condition]) =>
    sayCondition(condition, quantityOf(deck, id)) === null ? [] : [id],
  );
}
