/** Flies a pass on to where the pilot is stopped and asked. */
import type { Procedure } from '../rules/types.ts';
import { advanceToDecision } from './advance.ts';
import { correct } from './correct.ts';
import { chance } from './restless-air.ts';
import type { DecisionPoint, Pass } from './types.ts';

/** Of the points at which the rules call for nothing, one in so many is asked all the same. */
const oneIn = 3;

/**
 * Flies on to the next decision point that is worth a stop: each at which the rules call for a correction,
 * the first of a pass, and one in three of those at which they call for nothing, so that a stop doesn't
 * give the answer away. Which ones is fixed by the pass's seed. The others are passed by with every
 * control in neutral, which is what the rules call for there.
 */
export function advanceToCall(pass: Pass): Pass {
  let flown = advanceToDecision(pass);
  while (flown.open && !isWorthAStop(flown, flown.open)) flown = advanceToDecision(passBy(flown));
  return flown;
}

function isWorthAStop({ procedure, start }: Pass, point: DecisionPoint): boolean {
  return (
    point.index === 0 ||
    callsForSomething(procedure, point) ||
    (chance(start.seed, 'stop', point.index) + 1) / 2 < 1 / oneIn
  );
}

/** True when the rules ask for another action than neutral on some control. */
export function callsForSomething({ phases }: Procedure, { phase, decision }: DecisionPoint): boolean {
  const { neutral } = phases.get(phase)!;
  return Object.entries(decision.actions).some(([control, action]) => neutral.get(control) !== action);
}

/** Leaves the open point with every control in neutral, unasked and not graded. */
export function passBy(pass: Pass): Pass {
  const answered = correct(pass, {});
  const last = answered.decisions.at(-1)!;
  return { ...answered, decisions: [...answered.decisions.slice(0, -1), { ...last, passedBy: true }] };
}
