import type { Performance } from '../rules/types.ts';
import type { Timing } from './timeliness.ts';
import type { Rating } from './types.ts';

/** Desired answers in a row, before this one, from which a quick one counts for more. */
export const desiredForQuick = 2;

/** What the memory model is told. Better performance never gives less, nor does a quicker answer. */
export function ratingOf(performance: Performance, timing: Timing, desiredInARow: number): Rating {
  if (performance === 'outside' || timing.timeliness === 'timed-out') return 1;
  if (performance === 'adequate' || timing.timeliness === 'late') return 2;
  return timing.quick && desiredInARow >= desiredForQuick ? 4 : 3;
}
