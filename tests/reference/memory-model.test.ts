/**
 * The memory model against fsrs-rs, an independent implementation of FSRS-6 in Rust
 * (@open-spaced-repetition/binding 0.5, MIT), over random histories. It computes in single precision,
 * ours in double, rounded to 8 decimals: that is all that differs. Relative to a stability, a
 * difficulty or a chance of recall:
 *
 * | compared                                 | asked for | achieved |
 * | ---------------------------------------- | --------- | -------- |
 * | stability, answers on different days     | 1e-4      | 4.6e-6   |
 * | stability, answers on the same day too   | 1e-4      | 4.1e-6   |
 * | stability, on the same day only          | 1e-4      | 5.8e-7   |
 * | difficulty, all of these                 | 1e-4      | 1.2e-6   |
 * | both, parameters fitted to a learner     | 1e-4      | 8.5e-6   |
 * | chance of recall                         | 1e-4      | 1.7e-7   |
 *
 * fsrs-rs takes gaps in whole days and leaves it to its caller to count them. Ours is the nearest
 * number, so the histories hold gaps of up to just under half a day to either side of each.
 */
import {
  FSRSBinding,
  FSRSBindingItem,
  FSRSBindingReview,
  type BindingMemoryState,
} from '@open-spaced-repetition/binding';
import { describe, expect, it } from 'vitest';
import type { Rating } from '../../src/grading/types.ts';
import { DAY_MS } from '../../src/memory/local-day.ts';
import { createScheduler } from '../../src/memory/scheduler.ts';
import type { CardMemory, Scheduler } from '../../src/memory/types.ts';
import { seeded, type Random } from '../../src/rules/random.ts';

/** A little more than what is achieved, so that a loss of agreement shows. */
const TOLERANCE = 2e-5;
const HISTORIES = 1000;
const startMs = Date.UTC(2026, 8, 1, 18);

interface Step {
  readonly rating: Rating;
  readonly gapDays: number;
  readonly atMs: number;
}

const pick = <T>(items: readonly T[], random: Random): T => items[Math.floor(random() * items.length)]!;

/** 2 to 30 answers: seconds to half a day apart when on the same day, else a day to a year and a half. */
function history(random: Random, sameDayShare: number): Step[] {
  const steps: Step[] = [];
  let atMs = startMs + Math.floor(random() * 1000 * DAY_MS);
  for (let left = 2 + Math.floor(random() * 29); left > 0; left--) {
    const rating = pick([1, 2, 3, 3, 3, 4] as const, random);
    const sameDay = random() < sameDayShare;
    const gapDays = steps.length === 0 || sameDay ? 0 : Math.ceil(Math.exp(random() * 6.3));
    const offMs = gapDays === 0 ? 1000 + random() * 0.49 * DAY_MS : (random() - 0.5) * 0.98 * DAY_MS;
    if (steps.length > 0) atMs += gapDays * DAY_MS + Math.floor(offMs);
    steps.push({ rating, gapDays, atMs });
  }
  return steps;
}

function theirsAfter(model: FSRSBinding, memory: BindingMemoryState | null, { rating, gapDays }: Step) {
  const states = model.nextStates(memory, 0.9, gapDays);
  return [states.again, states.hard, states.good, states.easy][rating - 1]!;
}

const apart = (ours: number, theirs: number): number => Math.abs(ours - theirs) / Math.abs(theirs);

/** The largest relative differences over a history, each side going on from its own numbers. */
function differences(steps: readonly Step[], scheduler: Scheduler, model: FSRSBinding) {
  let ours: CardMemory | null = null;
  let theirs: BindingMemoryState | null = null;
  const worst = { stability: 0, difficulty: 0 };
  for (const step of steps) {
    ours = scheduler.next(ours, step.rating, step.atMs, false);
    theirs = theirsAfter(model, theirs, step).memory;
    worst.stability = Math.max(worst.stability, apart(ours.stability, theirs.stability));
    worst.difficulty = Math.max(worst.difficulty, apart(ours.difficulty, theirs.difficulty));
  }
  return worst;
}

function worstOf(seed: number, sameDayShare: number, count = HISTORIES) {
  const random = seeded(seed);
  const scheduler = createScheduler();
  const model = new FSRSBinding();
  const all = Array.from({ length: count }, () =>
    differences(history(random, sameDayShare), scheduler, model),
  );
  return {
    stability: Math.max(...all.map(({ stability }) => stability)),
    difficulty: Math.max(...all.map(({ difficulty }) => difficulty)),
  };
}

/** Within the ranges that both libraries hold parameters to, around the usual ones. */
function fittedParameters(random: Random): number[] {
  const usual = [
    0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835, 0.0614,
    0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542,
  ];
  const around = usual.map((value) => value * (0.7 + 0.6 * random()));
  around[0] = 0.01 + 0.3 * random();
  around[7] = 0.001 + 0.1 * random();
  around[16] = Math.max(1, around[16]!);
  return around;
}

describe('the memory model, against fsrs-rs', () => {
  it('agrees on 1,000 histories of answers on different days', () => {
    const worst = worstOf(1, 0);
    expect(worst.stability).toBeLessThan(TOLERANCE);
    expect(worst.difficulty).toBeLessThan(TOLERANCE);
  });

  it('agrees on 1,000 histories with answers on the same day', () => {
    const worst = worstOf(2, 0.5);
    expect(worst.stability).toBeLessThan(TOLERANCE);
    expect(worst.difficulty).toBeLessThan(TOLERANCE);
  });

  it('agrees on histories of nothing but answers on the same day', () => {
    const worst = worstOf(3, 1, 200);
    expect(worst.stability).toBeLessThan(TOLERANCE);
    expect(worst.difficulty).toBeLessThan(TOLERANCE);
  });

  it('agrees with parameters fitted to a learner', () => {
    const random = seeded(4);
    let all = 0;
    for (let learner = 0; learner < 50; learner++) {
      const parameters = fittedParameters(random);
      const scheduler = createScheduler({ parameters });
      const model = new FSRSBinding(parameters);
      for (let card = 0; card < 10; card++) {
        const worst = differences(history(random, 0.3), scheduler, model);
        all = Math.max(all, worst.stability, worst.difficulty);
      }
    }
    expect(all).toBeLessThan(TOLERANCE);
  });

  // Theirs doesn't tell the chance of recall itself, but the log loss of predicting one answer: -ln of it when recalled.
  it('agrees on the chance of recall', () => {
    const random = seeded(5);
    const scheduler = createScheduler();
    const model = new FSRSBinding();
    let worst = 0;
    for (let i = 0; i < 100; i++) {
      const steps = history(random, 0.2);
      // Theirs leaves out what was answered on one day only.
      if (steps.filter(({ gapDays }) => gapDays > 0).length < 2) continue;
      let memory: CardMemory | null = null;
      for (const { rating, atMs } of steps) memory = scheduler.next(memory, rating, atMs, false);
      const gapDays = 1 + Math.floor(random() * 400);
      const reviews = [...steps, { rating: 3, gapDays }].map(
        (step) => new FSRSBindingReview(step.rating, step.gapDays),
      );
      const theirs = Math.exp(-model.evaluate([new FSRSBindingItem(reviews)]).logLoss);
      worst = Math.max(
        worst,
        apart(scheduler.retrievability(memory, memory!.lastMs + gapDays * DAY_MS), theirs),
      );
    }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(TOLERANCE);
  });

  it('agrees on the interval that leaves a desired chance of recall, which is then rounded to whole days', () => {
    const random = seeded(6);
    const model = new FSRSBinding();
    for (let i = 0; i < 300; i++) {
      const retention = pick([0.8, 0.9, 0.95], random);
      const scheduler = createScheduler({ retention });
      const first = { rating: 3, gapDays: 0, atMs: startMs } as const;
      const gapDays = 1 + Math.floor(random() * 60);
      const rating = pick([2, 3, 4] as const, random);
      const ours = scheduler.next(
        scheduler.next(null, 3, startMs, false),
        rating,
        startMs + gapDays * DAY_MS,
        false,
      );
      const before = theirsAfter(model, null, first).memory;
      const states = model.nextStates(before, retention, gapDays);
      const { interval } = [states.hard, states.good, states.easy][rating - 2]!;
      const days = (ours.dueMs - ours.lastMs) / DAY_MS;
      expect(Math.abs(days - Math.max(1, interval))).toBeLessThanOrEqual(0.5 + TOLERANCE * interval);
    }
  });
});
