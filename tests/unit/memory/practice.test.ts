/** Weeks of practice, all parts of the memory together: scheduler, local days, sessions, runs. */
import { describe, expect, it } from 'vitest';
import { DAY_MS, localDayAt } from '../../../src/memory/local-day.ts';
import { answered, current, startRun } from '../../../src/memory/run.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { buildSession } from '../../../src/memory/session.ts';
import type { SessionCard } from '../../../src/memory/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { card, HOUR_MS, kinds, offsetIn } from './examples.ts';

const scheduler = createScheduler();
const secondsPerShowing = 8;

interface Evening {
  readonly seconds: number;
  readonly expected: number;
  readonly minutesGiven: number;
  readonly leftDue: number;
  /** Due or new, and not in the session. */
  readonly left: number;
}

/** A pilot who rehearses on most evenings, and recalls a card as often as the model says. */
function practise(zone: string, fromMs: number, days: number, count: number, seed: number) {
  const offsetAt = offsetIn(zone);
  const random = seeded(seed);
  let cards: SessionCard[] = Array.from({ length: count }, (_, order) =>
    card(order, {
      kind: kinds[order % 7]!,
      group: `gate ${Math.floor(order / 8)}`,
      critical: order % 9 === 0,
    }),
  );
  const evenings: Evening[] = [];
  for (let day = 0; day < days; day++) {
    if (random() < 0.2) continue;
    let nowMs = fromMs + day * DAY_MS + (random() - 0.5) * 6 * HOUR_MS;
    const minutesGiven = 8 + 4 * random();
    const plan = buildSession({
      cards,
      nowMs,
      minutes: minutesGiven,
      secondsFor: () => secondsPerShowing,
      dayAt: (ms) => localDayAt(ms, offsetAt),
      scheduler,
    });
    let seconds = 0;
    let run = startRun(plan);
    for (let asked = current(run); asked !== null; asked = current(run)) {
      const { id, repeat } = asked;
      const { memory, critical } = cards.find((other) => other.id === id)!;
      const known = random() < (repeat > 0 ? 0.8 : scheduler.retrievability(memory, nowMs));
      const next = scheduler.next(memory, known ? 3 : 1, Math.floor(nowMs), critical);
      cards = cards.map((other) => (other.id === id ? { ...other, memory: next } : other));
      run = answered(run, known ? 'desired' : 'outside');
      nowMs += secondsPerShowing * 1000;
      seconds += secondsPerShowing;
    }
    evenings.push({
      seconds,
      expected: plan.seconds,
      minutesGiven,
      leftDue: plan.leftOver.due,
      left: plan.leftOver.due + plan.leftOver.fresh,
    });
  }
  return { cards, evenings };
}

describe('ten minutes on most evenings', () => {
  // Over the end of summer time in London, 25 October 2026.
  const { cards, evenings } = practise('Europe/London', Date.UTC(2026, 8, 15, 20), 90, 70, 11);

  it('teach all of a deck of seventy cards, and keep it', () => {
    expect(cards.every(({ memory }) => memory !== null)).toBe(true);
    const lastMs = Date.UTC(2026, 8, 15, 20) + 90 * DAY_MS;
    const chances = cards.map(({ memory }) => scheduler.retrievability(memory, lastMs));
    expect(chances.reduce((sum, chance) => sum + chance, 0) / chances.length).toBeGreaterThan(0.9);
  });

  it('take as long as was expected, and about the minutes given while there is enough to do', () => {
    const sum = (part: readonly Evening[], of: (evening: Evening) => number) =>
      part.reduce((total, evening) => total + of(evening), 0);
    const taken = sum(evenings, ({ seconds }) => seconds) / sum(evenings, ({ expected }) => expected);
    expect(taken).toBeGreaterThan(0.9);
    expect(taken).toBeLessThan(1.1);
    const full = evenings.filter(({ left }) => left > 0);
    const filled = sum(full, ({ seconds }) => seconds / 60) / sum(full, ({ minutesGiven }) => minutesGiven);
    expect(full.length).toBeGreaterThan(2);
    expect(filled).toBeGreaterThan(0.8);
    expect(filled).toBeLessThan(1.15);
  });

  it('leave nothing due behind for long', () => {
    expect(evenings.slice(-20).every(({ leftDue }) => leftDue === 0)).toBe(true);
  });

  it('take ever less time', () => {
    const mean = (part: readonly Evening[]) =>
      part.reduce((sum, { seconds }) => sum + seconds, 0) / part.length;
    expect(mean(evenings.slice(-15))).toBeLessThan(mean(evenings.slice(0, 15)) / 2);
  });
});
