/** Random tasks for the planner, from a seed, and the best plan there is, found by trying all. */
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import type { CardMemory } from '../../../src/memory/types.ts';
import { expectedShowings } from '../../../src/memory/worth.ts';
import type { PlanCard, PlanInput, PracticeSession } from '../../../src/plan/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { eveningMs } from '../memory/examples.ts';

export const scheduler = createScheduler();

const kindSeconds = [6.5, 7, 7, 8, 8, 11, 19, 19, 23];

/** Evenings in succession, the event a day after the last; three cards in ten are new. */
export function randomTask(cards: number, sessions: number, minutes: number, seed: number): PlanInput {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + random() * (high - low);
  const memory = (): CardMemory => {
    const lastMs = eveningMs - between(0, 20) * DAY_MS;
    return {
      stability: Math.exp(between(-1, 4)),
      difficulty: between(1, 10),
      lastMs,
      dueMs: lastMs + DAY_MS,
      answers: 1,
      lapses: 0,
    };
  };
  const made = Array.from({ length: cards }, (_, i): PlanCard => ({
    id: `card ${i}`,
    memory: random() < 0.3 ? null : memory(),
    seconds: kindSeconds[Math.floor(between(0, kindSeconds.length))]!,
    weight: random() < 0.3 ? 3 : 1,
  }));
  const evenings = Array.from({ length: sessions }, (_, k): PracticeSession => ({
    atMs: eveningMs + k * DAY_MS,
    minutes,
  }));
  return { cards: made, sessions: evenings, eventMs: eveningMs + sessions * DAY_MS, scheduler };
}

interface Tried {
  readonly value: number;
  readonly seconds: readonly number[];
}

/** Every way to treat one card: written for clarity, and apart from the planner's own code. */
function everyCourse(input: PlanInput, card: PlanCard, memory: CardMemory | null, from: number): Tried[] {
  const { sessions, eventMs, scheduler } = input;
  const none = sessions.map(() => 0);
  const found: Tried[] = [{ value: scheduler.retrievability(memory, eventMs), seconds: none }];
  for (let k = from; k < sessions.length; k++) {
    const { atMs } = sessions[k]!;
    const recall = scheduler.retrievability(memory, atMs);
    const missed = scheduler.next(scheduler.next(memory, 1, atMs, false), 3, atMs, false);
    const known = memory === null ? missed : scheduler.next(memory, 3, atMs, false);
    for (const ifKnown of everyCourse(input, card, known, k + 1))
      for (const ifMissed of everyCourse(input, card, missed, k + 1))
        found.push({
          value: recall * ifKnown.value + (1 - recall) * ifMissed.value,
          seconds: none.map(
            (_, m) =>
              recall * ifKnown.seconds[m]! +
              (1 - recall) * ifMissed.seconds[m]! +
              (m === k ? card.seconds * expectedShowings(recall) : 0),
          ),
        });
  }
  return found;
}

/** The highest weighted mean chance at the event of all combinations that keep within the minutes. */
export function bestOfAll(input: PlanInput): number {
  const room = input.sessions.map(({ minutes }) => minutes * 60);
  // Card by card, all totals that can be reached; of those, the ones that no other beats in all respects.
  let reached: Tried[] = [{ value: 0, seconds: room.map(() => 0) }];
  input.cards.forEach((card, i) => {
    const courses = unbeaten(everyCourse(input, card, card.memory, 0));
    const next = reached.flatMap((so) =>
      courses.map(({ value, seconds }) => ({
        value: so.value + card.weight * value,
        seconds: so.seconds.map((used, k) => used + seconds[k]!),
      })),
    );
    const within = next.filter(({ seconds }) => seconds.every((used, k) => used <= room[k]! + 1e-9));
    reached = i < input.cards.length - 1 ? unbeaten(within) : within;
  });
  const weight = input.cards.reduce((sum, card) => sum + card.weight, 0);
  return Math.max(...reached.map(({ value }) => value)) / weight;
}

function unbeaten(tried: readonly Tried[]): Tried[] {
  const kept: Tried[] = [];
  for (const one of [...tried].sort((a, b) => b.value - a.value))
    if (!kept.some((other) => other.seconds.every((used, k) => used <= one.seconds[k]!))) kept.push(one);
  return kept;
}
