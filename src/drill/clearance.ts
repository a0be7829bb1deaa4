/** How clear of every edge of every table a state stands. */
import { answerGridOf } from '../rules/answer-grid.ts';
import { rulesOfPhase } from '../rules/decide.ts';
import type { Procedure, State } from '../rules/types.ts';
import type { Closeness, Scenario } from './types.ts';

/** Of an input's range in the phase, between a state and its nearest edge, for it to count as clear. Own choice, no source. */
export const clearShare = 0.05;

/**
 * The distance to the nearest edge of any control along any one input, as a share of the input's range in
 * the phase; Infinity where there is none. The ends of what can occur are no edges.
 */
export function clearanceOf(procedure: Procedure, phase: string, state: State): number {
  const grid = answerGridOf(procedure, rulesOfPhase(procedure, phase));
  const place = grid.placeOf(state);
  const shares = grid.axes.flatMap(({ quantity, range: { lo, hi } }, axis) => {
    const value = state[quantity]!;
    const { below, above } = grid.reach(place, axis);
    return [
      below && below.piece.hi > lo ? (value - below.piece.hi) / (hi - lo) : Infinity,
      above && above.piece.lo < hi ? (above.piece.lo - value) / (hi - lo) : Infinity,
    ];
  });
  return Math.min(Infinity, ...shares);
}

/** How close to an edge a scenario lies in fact; `narrow` where its rule leaves no room to stand clear. */
export function closenessOf(procedure: Procedure, scenario: Scenario): Closeness | 'narrow' {
  const { phase, state, closeness } = scenario;
  const isNarrow = closeness === 'wide' && clearanceOf(procedure, phase, state) < clearShare;
  return isNarrow ? 'narrow' : closeness;
}
