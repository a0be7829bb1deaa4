/** Where a scenario of Recall stood: told from its grade, so that it counts as one of a drill does. */
import { partsOf } from '../cards/ids.ts';
import type { Prompt } from '../cards/types.ts';
import type { Assessment } from '../grading/types.ts';
import type { Decision, Edge, Reason } from '../rules/types.ts';
import type { DrillMark, Side } from './types.ts';

/** As far from an edge as a scenario drawn near it may lie: three steps further in than the last value. */
const nearSteps = 4;

/**
 * The mark of an answer to a rule's card that was shown as a state, as `markOf` gives it in a drill: at
 * the nearest edge of the rule that is within a few steps, else at none. An edge of another control that
 * comes first along the same input hides the rule's. Nothing has to be drawn again
 * from the seed, which a later version of the program might do otherwise.
 * Null for other cards, and where the rule on the card does not decide the state.
 */
export function markOfRecall({ card, ask }: Prompt, { detail }: Assessment): DrillMark | null {
  if (card.kind !== 'rule' || ask.form !== 'controls') return null;
  const scenario = detail.form === 'controls' ? detail : detail.form === 'none' ? detail.scenario : undefined;
  const [table, rule] = partsOf(card.id);
  const reason = scenario?.decision.reasons.find((one) => one.table === table && one.rule === rule);
  if (!scenario || !reason) return null;
  const near = scenario.edges.flatMap(({ quantity, below, above }) => {
    const step = ask.gauges.find((gauge) => gauge.quantity === quantity)?.step;
    const sides: readonly (readonly [Side, Edge | null])[] = [
      ['below', below],
      ['above', above],
    ];
    return sides.flatMap(([side, edge]) => {
      if (step === undefined || !edge || !changes(edge, reason, scenario.decision)) return [];
      const steps = edge.distance / step;
      return steps <= nearSteps ? [{ edge: quantity, side, steps }] : [];
    });
  });
  const [nearest] = near.sort((one, other) => one.steps - other.steps);
  if (!nearest) return { phase: ask.phase, closeness: 'wide' };
  const { edge, side, steps } = nearest;
  return { phase: ask.phase, closeness: steps < 1 ? 'edge' : 'near', edge, side };
}

/** True when beyond the edge something else is asked of the rule's control, or an overriding action comes or goes. */
function changes({ actions }: Edge, { control, action }: Reason, decision: Decision): boolean {
  if (decision.overriding) return true;
  const isOverridden = Object.keys(actions).length < Object.keys(decision.actions).length;
  return isOverridden || actions[control] !== action;
}
