/**
 * The memory model: FSRS-6 (difficulty, stability, retrievability), computed by ts-fsrs. The only file
 * that imports it: the import adds methods to `Date.prototype`.
 *
 * Only the library's formulas are used, not its own scheduling: that counts days by the calendar of
 * UTC, so that two answers a minute apart can count as a day apart, and it brings repeats by the
 * minute, which here belong to a session (`run.ts`).
 */
import { CLAMP_PARAMETERS, default_w, FSRSAlgorithm, W17_W18_Ceiling } from 'ts-fsrs';
import type { Rating } from '../grading/types.ts';
import { elapsedMs, gapDaysBetween, lastMsAfter } from './gap.ts';
import { DAY_MS } from './local-day.ts';
import type { CardMemory, Scheduler } from './types.ts';

/**
 * A card not known at the last answer is owed another one: it is due again as soon as this. Normally
 * the repeats of the same session settle it; if the session is broken off, the next one has it.
 */
export const FAILED_DUE_MS = 60_000;

/** The 21 parameters of FSRS-6 that were fitted to many learners, as they come with the library. */
export const usualParameters: readonly number[] = default_w;

/** The least and the greatest that each parameter is held to: the library would clip what lies outside. */
export const parameterBounds: readonly (readonly [least: number, greatest: number])[] = CLAMP_PARAMETERS(
  W17_W18_Ceiling,
).map(([least, greatest]) => [least!, greatest!]);

export interface SchedulerOptions {
  /** The 21 parameters of FSRS-6; without them, those fitted to many learners that come with the library. */
  readonly parameters?: readonly number[];
  /** Chance of recall at which a card falls due, above 0, at most 1. */
  readonly retention?: number;
  /** The same for critical cards. */
  readonly criticalRetention?: number;
}

/**
 * A scheduler over FSRS-6. Throws a RangeError for parameters or a retention that make no sense.
 *
 * Gaps count in whole days, see `gap.ts`; none takes the model's formula for answers on the same day.
 *
 * Intervals are whole days too, from stability and the desired retention, and at least one: what was
 * known today is not due again today. A longer or shorter day than 24 hours is `due.ts`'s to mind.
 *
 * Checked against fsrs-rs in tests/reference/memory-model.test.ts.
 */
export function createScheduler({
  parameters = default_w,
  retention = 0.9,
  criticalRetention = 0.95,
}: SchedulerOptions = {}): Scheduler {
  if (parameters.length !== default_w.length || !parameters.every(Number.isFinite))
    throw new RangeError(`The memory model takes ${default_w.length} finite parameters.`);
  for (const chance of [retention, criticalRetention])
    if (!(chance > 0 && chance <= 1))
      throw new RangeError(`A desired retention of ${chance} is not in (0, 1].`);

  const algorithm = new FSRSAlgorithm({ w: [...parameters], learning_steps: [], relearning_steps: [] });
  const initialStability = algorithm.parameters.w.slice(0, 4);
  const daysPerStability = algorithm.calculate_interval_modifier(retention);
  const criticalDaysPerStability = algorithm.calculate_interval_modifier(criticalRetention);
  const longestDays = algorithm.parameters.maximum_interval;

  function stateAfter(memory: CardMemory | null, gapDays: number, rating: Rating) {
    if (memory) return algorithm.next_state(memory, gapDays, rating);
    // The library never starts below 0.1 days, which FSRS-6 doesn't ask for.
    return { ...algorithm.next_state(null, 0, rating), stability: initialStability[rating - 1]! };
  }

  function intervalMs(stability: number, rating: Rating, critical: boolean): number {
    if (rating === 1) return FAILED_DUE_MS;
    const days = Math.round(stability * (critical ? criticalDaysPerStability : daysPerStability));
    return Math.min(Math.max(1, days), longestDays) * DAY_MS;
  }

  return {
    next(memory, rating, atMs, critical) {
      const gapDays = memory ? gapDaysBetween(memory.lastMs, atMs) : 0;
      const { stability, difficulty } = stateAfter(memory, gapDays, rating);
      const lastMs = lastMsAfter(memory?.lastMs ?? null, atMs);
      return {
        stability,
        difficulty,
        lastMs,
        dueMs: lastMs + intervalMs(stability, rating, critical),
        answers: (memory?.answers ?? 0) + 1,
        // Only after a gap: a miss while relearning on the same day says nothing new.
        lapses: (memory?.lapses ?? 0) + (rating === 1 && gapDays > 0 ? 1 : 0),
      };
    },

    retrievability(memory, atMs) {
      if (memory === null) return 0;
      return algorithm.forgetting_curve(elapsedMs(memory.lastMs, atMs) / DAY_MS, memory.stability);
    },
  };
}
