/** How clear of every edge of every table a state stands. */
import { rulesOfPhase } from '../rules/decide.ts';
import { edgesOf } from '../rules/edges.ts';
import type { Procedure, State } from '../rules/types.ts';
import type { Closeness, Scenario } from './types.ts';

/** Of an input's range in the phase, between a state and its nearest edge, for it to count as clear. Own choice, no source. */
export const clearShare = 0.05;

/**
 * The distance to the nearest edge of any control along any one input, as a share of the input's range in
 * the phase; Infinity where there is none. The ends of what can occur are no edges.
 */
export function clearanceOf(procedure: Procedure, phase: string, state: State): number {
  const { box } = rulesOfPhase(procedure, phase);
  const shares = edgesOf(procedure, phase, state).flatMap(({ quantity, below, above }) => {
    const { lo, hi } = box.get(quantity)!;
    return [below, above].flatMap((edge) =>
      edge === null || edge.at === lo || edge.at === hi ? [] : [edge.distance / (hi - lo)],
    );
  });
  return Math.min(Infinity, ...shares);
}

/** How close to an edge a scenario lies in fact; `narrow` where its rule leaves no room to stand clear. */
export function closenessOf(procedure: Procedure, scenario: Scenario): Closeness | 'narrow' {
  const { phase, state, closeness } = scenario;
  const isNarrow = closeness === 'wide' && clearanceOf(procedure, phase, state) < clearShare;
  return isNarrow ? 'narrow' : closeness;
}
