import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { makePlan, type TrainingPlan } from '../../../src/plan/planner/make-plan.ts';
import type { PlanInput } from '../../../src/plan/types.ts';
import { bestOfAll, randomTask } from './instances.ts';

/** Small enough to try everything: up to nine cards in one session, five in two, three in three. */
const smallTasks = Array.from({ length: 50 }, (_, i) => {
  const sessions = 1 + (i % 3);
  const cards = [9, 5, 3][sessions - 1]! - (i % 2);
  const minutes = [0.35, 0.6, 1, 1.5][Math.floor(i / 3) % 4]!;
  return {
    name: `${cards} cards, ${sessions} sessions of ${minutes} min`,
    cards,
    sessions,
    minutes,
    seed: i,
  };
});

const anyTask = fc
  .record({
    cards: fc.integer({ min: 1, max: 25 }),
    sessions: fc.integer({ min: 1, max: 5 }),
    minutes: fc.double({ min: 0.1, max: 12, noNaN: true }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ cards, sessions, minutes, seed }) => randomTask(cards, sessions, minutes, seed));

const withMinutes = (task: PlanInput, times: number): PlanInput => ({
  ...task,
  sessions: task.sessions.map(({ atMs, minutes }) => ({ atMs, minutes: minutes * times })),
});

const gap = ({ value, bound }: TrainingPlan): number => 1 - value / bound;

describe('a plan for a task small enough to try everything', () => {
  it.each(smallTasks)('is within 1 % of the best, and its bound not below: $name, seed $seed', (small) => {
    const task = randomTask(small.cards, small.sessions, small.minutes, small.seed);
    const best = bestOfAll(task);
    const plan = makePlan(task);
    expect(plan.value).toBeGreaterThanOrEqual(0.99 * best);
    expect(plan.value).toBeLessThanOrEqual(best * (1 + 1e-9));
    expect(plan.bound).toBeGreaterThanOrEqual(best);
  });
});

describe('a plan', () => {
  it('keeps within the minutes, stays below its bound, and is no worse than doing nothing', () => {
    fc.assert(
      fc.property(anyTask, (task) => {
        const plan = makePlan(task);
        for (const { seconds, minutes } of plan.sessions)
          expect(seconds).toBeLessThanOrEqual(minutes * 60 * (1 + 1e-9));
        expect(plan.value).toBeLessThanOrEqual(plan.bound);
        expect(plan.value).toBeGreaterThanOrEqual(plan.untouched - 1e-12);
        expect(plan.bound).toBeLessThanOrEqual(1);
      }),
      { numRuns: 25 },
    );
  });

  it('comes close to its bound with many cards', () => {
    expect(gap(makePlan(randomTask(400, 7, 8, 3)))).toBeLessThan(0.01);
  });

  it('is the same for the same input', () => {
    const task = randomTask(30, 4, 3, 5);
    expect(makePlan(task)).toEqual(makePlan(task));
  });

  it('leaves nothing of the first session to chance', () => {
    const [first, second] = makePlan(randomTask(60, 4, 4, 7)).sessions;
    expect(first!.cards.length).toBeGreaterThan(3);
    expect(first!.cards.every(({ chance }) => chance === 1)).toBe(true);
    expect(second!.cards.every(({ chance }) => chance > 0 && chance <= 1 + 1e-9)).toBe(true);
  });

  it('takes in new cards', () => {
    const task = randomTask(40, 5, 4, 11);
    const fresh = new Set(task.cards.filter(({ memory }) => memory === null).map(({ id }) => id));
    const plan = makePlan(task);
    const learnt = plan.cards.filter(({ id, atEvent }) => fresh.has(id) && atEvent > 0.5);
    expect(learnt.length).toBeGreaterThan(fresh.size / 2);
  });

  it('leaves alone what is longer than any session', () => {
    const plan = makePlan(randomTask(5, 3, 0.01, 2));
    expect(plan.value).toBe(plan.untouched);
    expect(plan.sessions.every(({ cards }) => cards.length === 0)).toBe(true);
  });

  it('says for each card what is to be expected, and adds up to its own value', () => {
    const task = randomTask(30, 4, 3, 13);
    const plan = makePlan(task);
    const weight = task.cards.reduce((sum, card) => sum + card.weight, 0);
    const total = plan.cards.reduce((sum, card, c) => sum + task.cards[c]!.weight * card.atEvent, 0);
    expect(total / weight).toBeCloseTo(plan.value, 12);
  });
});

describe('the bound', () => {
  it('does not fall when there are more minutes, but for the third digit of the prices', () => {
    fc.assert(
      fc.property(anyTask, fc.double({ min: 1.1, max: 3, noNaN: true }), (task, times) => {
        const less = makePlan(task).bound;
        const more = makePlan(withMinutes(task, times)).bound;
        expect(more).toBeGreaterThanOrEqual(less * 0.995);
      }),
      { numRuns: 15 },
    );
  });

  it('is not below the plan of many more minutes than are needed', () => {
    const task = randomTask(12, 4, 60, 17);
    const plan = makePlan(task);
    expect(gap(plan)).toBeLessThan(0.01);
  });

  it('holds for other parameters of the memory model: strong mean reversion, slow growth', () => {
    const parameters = [
      0.5, 1.5, 3, 9, 7, 1.2, 2, 0.3, 1, 0.5, 1.5, 1.2, 0.2, 0.6, 0.8, 0.3, 2.5, 0.9, 0.4, 0.4, 0.3,
    ];
    for (let seed = 1; seed <= 6; seed++) {
      const task = { ...randomTask(4, 2, 0.8, seed), scheduler: createScheduler({ parameters }) };
      const best = bestOfAll(task);
      const plan = makePlan(task);
      expect(plan.bound).toBeGreaterThanOrEqual(best);
      expect(plan.value).toBeGreaterThanOrEqual(0.99 * best);
    }
  });
});

describe('planning anew', () => {
  it('after a missed evening gives a plan for those left', () => {
    const task = randomTask(60, 4, 3, 19);
    const later = makePlan({ ...task, sessions: task.sessions.slice(1) });
    expect(later.sessions).toHaveLength(3);
    expect(later.value).toBeLessThanOrEqual(makePlan(task).bound);
  });

  it('works with two sessions on one day', () => {
    const task = randomTask(20, 2, 2, 23);
    const [first] = task.sessions;
    const plan = makePlan({
      ...task,
      sessions: [first!, { atMs: first!.atMs + DAY_MS / 8, minutes: 2 }],
    });
    expect(plan.value).toBeGreaterThan(plan.untouched);
    expect(plan.value).toBeLessThanOrEqual(plan.bound);
  });
});

describe('watching a plan being made', () => {
  it('hears of progress up to the end', () => {
    const heard: number[] = [];
    makePlan(randomTask(50, 5, 3, 29), { onProgress: (done) => heard.push(done) });
    expect(heard).toEqual([...heard].sort((one, other) => one - other));
    expect(heard.at(-1)).toBe(1);
  });

  it('can be stopped, and still gives a plan within the minutes and a bound above it', () => {
    let asked = 0;
    const plan = makePlan(randomTask(80, 5, 3, 31), { shouldStop: () => ++asked > 20 });
    expect(plan.stopped).toBe(true);
    for (const { seconds, minutes } of plan.sessions)
      expect(seconds).toBeLessThanOrEqual(minutes * 60 * (1 + 1e-9));
    expect(plan.value).toBeLessThanOrEqual(plan.bound);
  });
});
