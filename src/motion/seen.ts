/** What the gauges show of a state. */
import type { State } from '../rules/types.ts';
import { nearestMultiple } from '../rules/steps.ts';
import type { FlownPhase } from './phase-motion.ts';

export const within = ([lo, hi]: readonly [number, number], value: number): number =>
  Math.min(hi, Math.max(lo, value));

/** The quantities of the phase in their steps, within what can occur in it. */
export function seenIn({ phase, steps }: FlownPhase, state: State): State {
  const seen: Record<string, number> = {};
  for (const [id, range] of Object.entries(phase.state))
    seen[id] = within(range, nearestMultiple(state[id] ?? NaN, steps.get(id)!));
  return seen;
}
