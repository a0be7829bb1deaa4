import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { checkEvent, type EventSource } from '../../../src/plan/check-event.ts';
import { planCard } from '../../../src/plan/plan-cards.ts';
import { sessionsLeft } from '../../../src/plan/practice-sessions.ts';
import type { PracticeTime, TrainingEvent } from '../../../src/plan/types.ts';
import { card, eveningMs, HOUR_MS, MINUTE_MS, offsetIn } from '../memory/examples.ts';

const gate = (id: string): EventSource['deck']['gates'][number] =>
  ({ id, label: id }) as EventSource['deck']['gates'][number];
const source: EventSource = {
  deck: { id: 'circuit', gates: [gate('abeam'), gate('ninety')] },
  cards: [card(0, { gate: 'abeam', critical: true }), card(1, { gate: 'ninety' }), card(2, { gate: null })],
};
const utc = () => 0;

const event = (change: Partial<TrainingEvent> = {}): TrainingEvent => ({
  name: 'Deck week',
  atMs: eveningMs + 3 * DAY_MS,
  decks: [{ deck: 'circuit', gates: null }],
  time: { form: 'sessions', sessions: [{ atMs: eveningMs + HOUR_MS, minutes: 15 }] },
  weights: { critical: 3, other: 1 },
  ...change,
});
const sessions = (...list: { atMs: number; minutes: number }[]): { time: PracticeTime } => ({
  time: { form: 'sessions', sessions: list },
});
const check = (change: Partial<TrainingEvent> = {}, sources = [source]) =>
  checkEvent(event(change), sources, eveningMs, utc);

describe('an event', () => {
  it('that makes sense has its cards and sessions, and no problem', () => {
    const { cards, sessions: left, problems } = check();
    expect(problems).toEqual([]);
    expect(cards.map((counting) => counting.card.id)).toEqual(['card 0', 'card 1', 'card 2']);
    expect(left).toEqual([{ atMs: eveningMs + HOUR_MS, minutes: 15 }]);
  });

  it('may count some gates only', () => {
    const { cards } = check({ decks: [{ deck: 'circuit', gates: ['ninety'] }] });
    expect(cards.map((counting) => counting.card.id)).toEqual(['card 1']);
  });

  it.each([
    ['in the past', { atMs: eveningMs - 1 }, [source], 'event-past'],
    ['without a date', { atMs: Number.NaN }, [source], 'bad-date'],
    ['without minutes', sessions({ atMs: eveningMs + HOUR_MS, minutes: 0 }), [source], 'no-minutes'],
    ['with fewer minutes than none', sessions({ atMs: eveningMs, minutes: -5 }), [source], 'bad-minutes'],
    [
      'after all its sessions',
      sessions({ atMs: eveningMs - DAY_MS, minutes: 5 }),
      [source],
      'no-session-left',
    ],
    [
      'before all its sessions',
      sessions({ atMs: eveningMs + 9 * DAY_MS, minutes: 5 }),
      [source],
      'no-session-left',
    ],
    ['with a deck that was removed', {}, [], 'unknown-deck'],
    ['with a gate that is gone', { decks: [{ deck: 'circuit', gates: ['deck'] }] }, [source], 'unknown-gate'],
    ['without decks', { decks: [] }, [source], 'no-decks'],
    ['with a deck without cards', {}, [{ ...source, cards: [] }], 'no-cards'],
    ['with a weight of nothing', { weights: { critical: 0, other: 1 } }, [source], 'bad-weight'],
  ] as const)('%s is told what to mend', (_what, change, sources, code) => {
    const { problems } = check(change as Partial<TrainingEvent>, [...sources]);
    expect(problems.map((problem) => problem.code)).toContain(code);
    for (const { message } of problems)
      expect(message).toMatch(/^[A-Z].*\. [A-Z].*\.$|^[A-Z].*needs.*\.$|: .*\.$/);
  });

  it('with more sessions than can be planned is told so', () => {
    const daily: PracticeTime = { form: 'weekly', minutes: Array<number>(7).fill(10), startMinute: 19 * 60 };
    const { problems } = check({ atMs: eveningMs + 400 * DAY_MS, time: daily });
    expect(problems.map(({ code }) => code)).toEqual(['too-many-sessions']);
  });
});

describe('the sessions left', () => {
  it('are those from now to the event, in order of time', () => {
    const at = (days: number) => ({ atMs: eveningMs + days * DAY_MS, minutes: 10 });
    const left = sessionsLeft(event(sessions(at(2), at(-1), at(1), at(3))), eveningMs, utc);
    expect(left).toEqual([at(1), at(2)]);
  });

  it('hold what is left of one that has begun', () => {
    const begun = sessions({ atMs: eveningMs - 8 * MINUTE_MS, minutes: 20 });
    expect(sessionsLeft(event(begun), eveningMs, utc)).toEqual([{ atMs: eveningMs, minutes: 12 }]);
  });

  it('of a week fall on its weekdays', () => {
    // 1 September 2026 is a Tuesday.
    const minutes = [0, 20, 0, 0, 5, 0, 0];
    const time: PracticeTime = { form: 'weekly', minutes, startMinute: 20 * 60 };
    const left = sessionsLeft(event({ atMs: eveningMs + 10 * DAY_MS, time }), eveningMs, utc);
    expect(left.map(({ atMs, minutes: some }) => [new Date(atMs).toISOString(), some])).toEqual([
      ['2026-09-01T20:00:00.000Z', 20],
      ['2026-09-04T20:00:00.000Z', 5],
      ['2026-09-08T20:00:00.000Z', 20],
    ]);
  });

  it('keep their local hour when summer time ends', () => {
    const time: PracticeTime = { form: 'weekly', minutes: Array<number>(7).fill(10), startMinute: 19 * 60 };
    const fromMs = Date.UTC(2026, 9, 24, 12);
    const left = sessionsLeft({ atMs: fromMs + 3 * DAY_MS, time }, fromMs, offsetIn('Europe/Berlin'));
    expect(left.map(({ atMs }) => new Date(atMs).toISOString())).toEqual([
      '2026-10-24T17:00:00.000Z',
      '2026-10-25T18:00:00.000Z',
      '2026-10-26T18:00:00.000Z',
    ]);
  });
});

describe('a card of the plan', () => {
  it('has the weight of its sort and the seconds of its kind', () => {
    const weights = { critical: 3, other: 1 };
    expect(planCard(card(0, { critical: true }), weights, () => 7)).toEqual({
      id: 'card 0',
      memory: null,
      seconds: 7,
      weight: 3,
    });
    expect(planCard(card(1), weights, () => 7).weight).toBe(1);
  });
});
