import { describe, expect, it } from 'vitest';
import { App } from '../../../src/app/state/app.svelte.ts';
import { RecallSession } from '../../../src/app/state/recall-session.svelte.ts';
import { Settings } from '../../../src/app/state/settings.svelte.ts';
import { changesBetween } from '../../../src/cards/changes.ts';
import { cardsOf } from '../../../src/cards/registry.ts';
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import type { SessionPlan } from '../../../src/memory/types.ts';
import { eventIds } from '../../../src/record/event-id.ts';
import { openRecord } from '../../../src/record/live.ts';
import { memoryStore } from '../../../src/record/store/memory-store.ts';
import type { DaySet } from '../../../src/record/types.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { formulaDeck, narrowDeck } from '../formula-deck.ts';
import { pilotOf, storage, type Pilot } from './drilling.ts';

const closure = 'value/far/closure';
const calm = { wind: 2, gust: 0 };

const takeDay = ({ training }: Pilot, set: DaySet): void =>
  training.takeDay({ set, day: deckOfDay(training.ownDeck, set) });

function sessionOf(pilot: Pilot, ids: readonly string[]): RecallSession {
  const items = ids.map((id) => ({ id, why: 'due' as const, showings: 1 }));
  const plan: SessionPlan = { items, seconds: 20, leftOver: { due: 0, fresh: 0 }, nextDueMs: null };
  return new RecallSession(plan, pilot.training, pilot.settings, () => pilot.nowMs);
}

function call(pilot: Pilot, session: RecallSession, text: string): void {
  pilot.nowMs += 1000;
  session.answering!.submit({ form: 'number', text });
  pilot.nowMs += 1000;
}

describe('a value that the day moves', () => {
  it('is asked and graded by the day, and kept by the deck’s own', async () => {
    const pilot = await pilotOf(formulaDeck);
    takeDay(pilot, { wind: 18 });
    expect(pilot.training.dayWords).toBe('wind 18\u00a0kt');
    const session = sessionOf(pilot, [closure]);
    call(pilot, session, '52');
    expect(session.answering!.assessment).toMatchObject({ performance: 'desired' });
    expect(pilot.training.cardToday(closure)!.expected).toBe('52\u00a0kt');
    expect(pilot.training.history(closure)!.calls).toMatchObject([
      { value: 52, signedError: 0, expected: '60\u00a0kt', day: { wind: 18 } },
    ]);
  });

  it('is learnt as on any other day: the interval is the same', async () => {
    const dueOf = async (set: DaySet, text: string): Promise<number> => {
      const pilot = await pilotOf(formulaDeck);
      takeDay(pilot, set);
      call(pilot, sessionOf(pilot, [closure]), text);
      return pilot.training.history(closure)!.memory!.dueMs;
    };
    expect(await dueOf({ wind: 18 }, '52')).toBe(await dueOf({}, '60'));
  });

  it('is no edit of the deck', async () => {
    const pilot = await pilotOf(formulaDeck);
    const before = [...pilot.training.cards];
    takeDay(pilot, { wind: 18 });
    expect(changesBetween(before, pilot.training.cards)).toMatchObject({ changed: [], added: 0, gone: 0 });
    // Compared as decks they would differ: so it is the cards of the deck's own day that are compared.
    const today = cardsOf(compileRules(deckOfDay(formulaDeck, { wind: 18 }).deck).procedure!);
    expect(changesBetween(before, today).changed.map(({ card }) => card.id)).toContain(closure);
  });

  it('shows calls of the same day only beside today’s band', async () => {
    const pilot = await pilotOf(formulaDeck);
    call(pilot, sessionOf(pilot, [closure]), '60');
    takeDay(pilot, { wind: 18 });
    const session = sessionOf(pilot, [closure]);
    call(pilot, session, '53');
    expect(session.earlierCalls).toEqual([53]);
    pilot.training.takeDay(null);
    expect(session.earlierCalls).toEqual([60]);
    expect(pilot.training.dayWords).toBe('');
  });
});

describe('a value that the day leaves without a number', () => {
  it('is not planned for today, and its memory waits', async () => {
    const pilot = await pilotOf(narrowDeck);
    const planned = (): readonly string[] => pilot.training.plan(600).items.map(({ id }) => id);
    expect(planned()).toContain(closure);
    takeDay(pilot, calm);
    expect(planned()).not.toContain(closure);
    expect(planned().length).toBeGreaterThan(0);
    expect(pilot.training.card(closure)).not.toBeNull();
  });

  it('is passed over in a session under way, both ways', async () => {
    const pilot = await pilotOf(narrowDeck);
    const altitude = 'value/far/altitude';
    const session = sessionOf(pilot, [altitude, closure, 'order/gates']);
    call(pilot, session, pilot.training.card(altitude)!.expected);
    takeDay(pilot, calm);
    session.takeDay();
    // What was graded stays on the screen; what comes next goes by the new day.
    expect(session.answering!.prompt.card.id).toBe(altitude);
    session.next();
    expect(session.answering!.prompt.card.id).toBe('order/gates');
    expect(session.takeBack()).toBe(true);
    expect(session.answering!.prompt.card.id).toBe(altitude);
    expect(session.takeBack()).toBe(false);
  });
});

describe('an open question when the day changes', () => {
  it('is asked anew by the day’s numbers, and waits for the pilot to come back', async () => {
    const pilot = await pilotOf(formulaDeck);
    const session = sessionOf(pilot, [closure]);
    takeDay(pilot, { wind: 18 });
    session.takeDay();
    expect(session.answering!.paused).toBe(true);
    session.answering!.resume();
    call(pilot, session, '52');
    expect(session.answering!.assessment).toMatchObject({ performance: 'desired', headline: 'on target' });
  });
});

describe('the app', () => {
  async function appWith(settings: Settings): Promise<App> {
    const scheduler = createScheduler();
    const store = memoryStore();
    let bytes = 0;
    const ids = eventIds((count) =>
      Uint8Array.from({ length: count }, () => (bytes = (bytes * 31 + 7) % 251)),
    );
    const record = await openRecord({ store, scheduler, ids });
    let hash = '';
    const app = new App({
      ...{ settings, record, store, scheduler },
      nowMs: () => Date.UTC(2026, 8, 1, 19),
      monotonicMs: () => 0,
      newSeed: () => 1,
      stillness: () => true,
      hash: () => hash,
      goTo: (to) => (hash = to),
    });
    await app.chooseDeck('marram-recovery');
    return app;
  }

  it('sets a day for all pages, keeps it, and finds it again at the next start', async () => {
    const kept = storage();
    const app = await appWith(new Settings(kept));
    await app.setDay({ 'wind-speed': 20, 'ship-speed': 12 });
    expect(app.training!.daySet).toEqual({ 'wind-speed': 20 });
    const day = app.training!.deck.day!.find(({ quantity }) => quantity === 'wind-speed')!;
    expect(day.default).toBe(20);
    const later = await appWith(new Settings(kept));
    expect(later.training!.daySet).toEqual({ 'wind-speed': 20 });
    await later.startPass('groove');
    expect(later.flight!.setup.start.day).toEqual({ 'wind-speed': 20 });
    expect(later.flight!.moment.state['wind-over-deck']).toBe(32);
  });

  it('takes one press after the other: each goes on from what the one before has set', async () => {
    const app = await appWith(new Settings(storage()));
    await app.readyDays();
    for (const kt of [9, 10, 11]) {
      void app.setDay({ ...app.training!.daySet, 'wind-speed': kt });
      expect(app.training!.daySet).toEqual({ 'wind-speed': kt });
    }
  });

  it('goes back to the deck’s day, and keeps a day for each deck', async () => {
    const settings = new Settings(storage());
    const app = await appWith(settings);
    await app.setDay({ 'wind-speed': 20 });
    await app.chooseDeck('light-aircraft-circuit');
    expect(app.training!.daySet).toEqual({});
    await app.chooseDeck('marram-recovery');
    expect(app.training!.daySet).toEqual({ 'wind-speed': 20 });
    await app.setDay({});
    expect(app.training!.day).toBeNull();
    expect(app.training!.deck).toBe(app.training!.ownDeck);
    expect(settings.days).toEqual({});
  });

  it('takes nothing from the storage that the deck can’t have', async () => {
    const kept = storage();
    kept.setItem(
      'gatecall.settings',
      JSON.stringify({ days: { 'marram-recovery': { 'wind-speed': 900, rain: 3, temperature: 'hot' } } }),
    );
    expect((await appWith(new Settings(kept))).training!.day).toBeNull();
  });
});
