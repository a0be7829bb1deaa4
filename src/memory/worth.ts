/**
 * What a rehearsal costs and what it is worth. The idea of Pavlik & Anderson ("Using a model to compute
 * the optimal schedule of practice", J. Exp. Psych.: Applied 2008): rehearse what gains most for
 * the long run per second of practice, so that little time goes into what is far from being forgotten,
 * and none is waited for.
 */
import { DAY_MS } from './local-day.ts';
import type { CardMemory, Scheduler } from './types.ts';

/** A card not answered desired comes back in the same session, at most this often: four tries are enough for one evening. Own choice, no source. */
export const MOST_REPEATS = 3;

/** Share of repeats that are answered desired, the answer having been shown minutes before. Own estimate, no source. */
export const REPEAT_SUCCESS = 0.8;

/** How far ahead a gain counts. A month, own choice: long enough that what was crammed doesn't count, short enough to matter for the next event. */
export const GAIN_HORIZON_DAYS = 30;

/** Expected times a card is shown in a session until it is answered desired: once, and repeats when it isn't recalled. A card never answered isn't. */
export function expectedShowings(retrievability: number): number {
  const repeats = (1 - retrievability) / REPEAT_SUCCESS;
  return 1 + Math.min(repeats, MOST_REPEATS);
}

/**
 * How much a rehearsal now adds to the chance of recall a month from now, over what it would be
 * without: the mean over being recalled now and not, the latter relearned by a repeat.
 */
export function rehearsalGain(
  scheduler: Scheduler,
  memory: CardMemory,
  critical: boolean,
  nowMs: number,
): number {
  const laterMs = nowMs + GAIN_HORIZON_DAYS * DAY_MS;
  const later = (state: CardMemory): number => scheduler.retrievability(state, laterMs);
  const recalled = scheduler.next(memory, 3, nowMs, critical);
  const relearned = scheduler.next(scheduler.next(memory, 1, nowMs, critical), 3, nowMs, critical);
  const chance = scheduler.retrievability(memory, nowMs);
  return chance * later(recalled) + (1 - chance) * later(relearned) - later(memory);
}
