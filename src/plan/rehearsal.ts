/**
 * What one rehearsal of a card may lead to. Two outcomes: it is recalled, and answered desired; or it
 * isn't, comes back in the same session, and the last that is done with it is to get it right (see
 * `memory/run.ts`). So the plan reckons with rating 3 after a recall, and 1 then 3 after a miss; a card
 * never answered is always missed at first.
 */
import type { CardMemory, Scheduler } from '../memory/types.ts';

export interface Outcomes {
  /** Chance of recall, 0 to 1. */
  readonly chance: number;
  /** The memory afterwards if it was recalled. */
  readonly recalled: CardMemory;
  /** The memory afterwards if it was not, and learnt again. */
  readonly relearned: CardMemory;
}

/** @param atMs when the session begins; within it no time passes */
export function rehearse(scheduler: Scheduler, memory: CardMemory | null, atMs: number): Outcomes {
  const missed = scheduler.next(memory, 1, atMs, false);
  const relearned = scheduler.next(missed, 3, atMs, false);
  if (memory === null) return { chance: 0, recalled: relearned, relearned };
  return {
    chance: scheduler.retrievability(memory, atMs),
    recalled: scheduler.next(memory, 3, atMs, false),
    relearned,
  };
}
