/** A learner whose memory follows FSRS-6 under known parameters, and the record it leaves. */
import type { CardAnswers, RatedAnswer } from '../../../src/fit/types.ts';
import type { Rating } from '../../../src/grading/types.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler, parameterBounds, usualParameters } from '../../../src/memory/scheduler.ts';
import type { CardMemory } from '../../../src/memory/types.ts';
import { seeded, type Random } from '../../../src/rules/random.ts';

const startMs = Date.UTC(2026, 0, 5, 19);

/** Forgets sooner than most after a first answer, learns more from each that is known, finds all of it harder. */
export const quickLearner: readonly number[] = [
  ...[0.1, 0.5, 1.1, 3.6, 7.2, 0.6, 2.4, 0.05, 2.3, 0.25, 1.2, 1.1, 0.1, 0.35, 1.2, 0.45, 2.3, 0.7, 0.2],
  ...[0.1, 0.3],
];

/** Within the bounds, and by about the usual spread away from the usual parameters. */
export function someParameters(random: Random): number[] {
  const around = usualParameters.map((value) => value * (0.6 + 0.8 * random()));
  around[0] = 0.05 + 0.3 * random();
  around[7] = 0.001 + 0.2 * random();
  around[20] = 0.1 + 0.3 * random();
  for (const i of [1, 2, 3]) around[i] = Math.max(around[i]!, around[i - 1]!);
  return around.map((value, i) => Math.min(Math.max(value, parameterBounds[i]![0]), parameterBounds[i]![1]));
}

const ratingOf = (recalled: boolean, random: Random): Rating => {
  if (!recalled) return 1;
  const kind = random();
  return kind < 0.15 ? 2 : kind < 0.85 ? 3 : 4;
};

const RECORD_DAYS = 365;
const NEW_CARDS_DAYS = 240;

/**
 * A year of one learner, cut off at `count` answers. Cards come in over the first eight months, and then when
 * the usual scheduler has them due, up to a third sooner and two thirds later; half of the misses are
 * repeated on the same day.
 */
export function recordOf(parameters: readonly number[], count: number, seed: number): CardAnswers[] {
  const random = seeded(seed);
  const own = createScheduler({ parameters });
  const planned = createScheduler();
  const cards: CardAnswers[] = [];
  const endMs = startMs + RECORD_DAYS * DAY_MS;
  for (let left = count; left > 0; left -= cards.at(-1)!.length) {
    const answers: RatedAnswer[] = [];
    let memory: CardMemory | null = null;
    let plan: CardMemory | null = null;
    let atMs = startMs + Math.floor(random() * NEW_CARDS_DAYS) * DAY_MS;
    while (answers.length < left && atMs < endMs) {
      const chance = memory === null ? 0.6 : own.retrievability(memory, atMs);
      const rating = ratingOf(random() < chance, random);
      answers.push({ atMs, rating });
      memory = own.next(memory, rating, atMs, false);
      plan = planned.next(plan, rating, atMs, false);
      const days = Math.round(((plan.dueMs - atMs) / DAY_MS) * (2 / 3 + random()));
      atMs += rating === 1 && random() < 0.5 ? 120_000 : Math.max(1, days) * DAY_MS;
    }
    cards.push(answers);
  }
  return cards;
}
