import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardsOf } from '../../../src/cards/registry.ts';
import type { PassAssessment, RuleTally } from '../../../src/motion/types.ts';
import { isDue } from '../../../src/memory/due.ts';
import { decodeChunk, encodeChunk } from '../../../src/record/codec.ts';
import { cardKey, Fold, foldEvents, passesKey } from '../../../src/record/fold.ts';
import { mergeEvents } from '../../../src/record/merge.ts';
import { effectsOf, passEvent, type FlownPass } from '../../../src/record/pass-event.ts';
import { readBackup } from '../../../src/record/read-backup.ts';
import { writeBackup } from '../../../src/record/backup.ts';
import { most, parseEvent, rawEvent } from '../../../src/record/schema.ts';
import type { PassEvent } from '../../../src/record/types.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { shippedDeck } from '../../reference/shipped-deck.ts';
import { Device } from './device.ts';
import {
  answer,
  anyPass,
  anyRecord,
  dayMs,
  eveningMs,
  shuffledInPieces,
  testIds,
  testScheduler,
  undo,
} from './examples.ts';

const deck = shippedDeck('marram-recovery');
const procedure = compileRules(deck).procedure!;
const cards = new Map(cardsOf(procedure).map((card) => [card.id, card]));
const altitude = cardKey(deck.id, 'value/alongside/altitude');

const assessment = (change: Partial<PassAssessment> = {}): FlownPass['assessment'] => ({
  crossings: [],
  decisions: [],
  rules: [],
  gatesMissed: [],
  limitsPassed: [],
  performance: 'adequate',
  headline: 'Flown to the end.',
  ...change,
  ended: { kind: 'complete', tMs: 60_000 },
});

const flown = (change: Partial<PassAssessment> = {}): FlownPass => ({
  deck,
  start: { fromGate: 'abeam', seed: 7 },
  pace: 'compressed',
  assessment: assessment(change),
  card: (id) => cards.get(id) ?? null,
});

const tally = (rule: string, asked: number, missed: number, table = 'abeam-height'): RuleTally => ({
  ...{ table, rule, asked, missed },
});

const pass = (change: Partial<PassEvent> = {}): PassEvent => ({
  ...passEvent(flown(), testIds(5).next(eveningMs + dayMs), eveningMs + dayMs),
  ...change,
});

describe('the event of a pass', () => {
  it('counts a rule that was missed once as missed, however often it was right', () => {
    const { rules } = passEvent(flown({ rules: [tally('low-abeam', 4, 1)] }), testIds().next(1), 1);
    expect(rules).toEqual([
      {
        card: 'rule/abeam-height/low-abeam',
        asked: 4,
        missed: 1,
        critical: false,
        expected: 'more power',
      },
    ]);
  });

  it('counts a right call once, but doing nothing where nothing was called for not at all', () => {
    const rules = [tally('steady-abeam', 9, 0), tally('high-abeam', 3, 0)];
    expect(passEvent(flown({ rules }), testIds().next(1), 1).rules.map(({ card }) => card)).toEqual([
      'rule/abeam-height/high-abeam',
    ]);
    const missed = [tally('steady-abeam', 9, 2)];
    expect(passEvent(flown({ rules: missed }), testIds().next(1), 1).rules).toHaveLength(1);
  });

  it('says of a go-around whether the rules demanded it', () => {
    const endOf = (demanded: boolean): string =>
      passEvent(
        { ...flown(), assessment: { ...assessment(), ended: { kind: 'go-around', tMs: 1, demanded } } },
        testIds().next(1),
        1,
      ).end;
    expect([endOf(true), endOf(false)]).toEqual(['go-around', 'needless-go-around']);
  });

  it('is what is read again, and never longer than an older version carries', () => {
    const long = (id: string) => ({
      ...cards.get('rule/abeam-height/low-abeam')!,
      id,
      expected: 'x'.repeat(900),
    });
    const rules = Array.from({ length: 900 }, (_, i) => tally(`rule-${i}`, 3, i < 30 ? 1 : 2));
    const event = passEvent({ ...flown({ rules }), card: long }, testIds().next(1), 1);
    expect(JSON.stringify(event).length).toBeLessThanOrEqual(most.strangerJson);
    expect(event.rules.length).toBeGreaterThan(40);
    expect(parseEvent(JSON.parse(JSON.stringify(event)))).toEqual({ ok: true, event });
  });

  it.each([
    ['an end that there is not', { end: 'crashed' }],
    ['a rule without a card', { rules: [{ asked: 1, missed: 0, critical: false, expected: '' }] }],
    ['too many gates', { gates: Array.from({ length: 61 }, () => ({ gate: 'a', performance: 'desired' })) }],
    ['a roughness beyond all measure', { roughness: 1e9 }],
    ['more than an older version would carry', { log: 'x'.repeat(20_000) }],
  ])('is refused with %s', (_, change) => {
    expect(parseEvent({ ...pass(), ...change }).ok).toBe(false);
  });

  it('goes through a sealed chunk and a backup as it is, with what a newer version added', () => {
    fc.assert(
      fc.property(anyPass, (event) => {
        const further = { ...event, wind: { speedKt: 12 } } as PassEvent;
        expect(decodeChunk(encodeChunk([event])).events).toEqual([event]);
        expect(decodeChunk(encodeChunk([further])).events.map(rawEvent)).toEqual([further]);
        const text = writeBackup({ events: [further] }, event.atMs);
        expect(readBackup(text, event.atMs).events).toEqual([further]);
      }),
    );
  });
});

describe('a pass in the fold', () => {
  const ids = testIds();
  const known = answer(ids.next(eveningMs));
  const missedAltitude = pass({
    id: ids.next(eveningMs + dayMs),
    gatesMissed: [{ gate: 'alongside', quantities: ['altitude'] }],
  });

  it('brings a value that was missed back at once, and leaves what is remembered of it', () => {
    const before = foldEvents([known], testScheduler).get(altitude)!;
    const after = foldEvents([known, missedAltitude], testScheduler).get(altitude)!;
    expect(before.memory!.dueMs).toBeGreaterThan(missedAltitude.atMs);
    expect(after).toEqual({ ...before, memory: { ...before.memory, dueMs: missedAltitude.atMs } });
    const today = { key: 1, startMs: missedAltitude.atMs - 1, endMs: missedAltitude.atMs + dayMs };
    expect(isDue(after.memory!, today)).toBe(true);
  });

  it('brings it back also on the day it was answered', () => {
    const soon = { ...missedAltitude, id: ids.next(eveningMs + 60_000), atMs: eveningMs + 60_000 };
    const { memory } = foldEvents([known, soon], testScheduler).get(altitude)!;
    expect(isDue(memory!, { key: 1, startMs: eveningMs - 1, endMs: eveningMs + dayMs })).toBe(true);
  });

  it('says nothing of a value that was never answered', () => {
    expect(foldEvents([missedAltitude], testScheduler)).toEqual(new Map());
    const later = { ...known, id: ids.next(eveningMs + 2 * dayMs) };
    expect(foldEvents([missedAltitude, later], testScheduler)).toEqual(foldEvents([later], testScheduler));
  });

  it('is over with the next answer: the model takes it from where it was', () => {
    const later = { ...known, id: ids.next(eveningMs + 2 * dayMs), atMs: eveningMs + 2 * dayMs };
    expect(foldEvents([known, missedAltitude, later], testScheduler).get(altitude)?.memory).toEqual(
      foldEvents([known, later], testScheduler).get(altitude)?.memory,
    );
  });

  it('is an answer to each of its rules', () => {
    const event = pass({
      rules: [
        { card: 'rule/a/missed', asked: 3, missed: 1, critical: true, expected: 'nose up' },
        { card: 'rule/a/right', asked: 3, missed: 0, critical: false, expected: 'nose down' },
      ],
    });
    const histories = foldEvents([event], testScheduler);
    const missed = histories.get(cardKey(deck.id, 'rule/a/missed'))!;
    expect(missed.calls).toEqual([
      {
        event: event.id,
        atMs: event.atMs,
        performance: 'outside',
        timeliness: 'prompt',
        elapsedMs: 0,
        pass: true,
        expected: 'nose up',
      },
    ]);
    expect(missed.memory).toEqual(testScheduler.next(null, 1, event.atMs, true));
    expect(histories.get(cardKey(deck.id, 'rule/a/right'))?.memory).toEqual(
      testScheduler.next(null, 3, event.atMs, false),
    );
  });

  it('comes to one thing on each card', () => {
    fc.assert(
      fc.property(anyPass, (event) => {
        const touched = effectsOf(event).map(({ card }) => card);
        expect(new Set(touched).size).toBe(touched.length);
      }),
    );
  });

  it('is taken back whole, and put back whole', () => {
    const undone = undo(ids.next(eveningMs + 2 * dayMs), missedAltitude.id);
    const redone = undo(ids.next(eveningMs + 2 * dayMs), undone.id);
    const growing = new Fold(testScheduler);
    growing.add([known, missedAltitude]);
    const flownOnce = growing.histories.get(altitude);
    expect(growing.passes(deck.id)).toEqual([missedAltitude]);
    expect(growing.lastStanding(deck.id)).toBe(missedAltitude.id);
    expect([...growing.add([undone])].sort()).toEqual([passesKey(deck.id), altitude].sort());
    expect(growing.histories).toEqual(foldEvents([known], testScheduler));
    expect(growing.passes(deck.id)).toEqual([]);
    expect(growing.lastStanding(deck.id)).toBe(known.id);
    growing.add([redone]);
    expect(growing.histories.get(altitude)).toEqual(flownOnce);
    expect(growing.passes(deck.id)).toEqual([missedAltitude]);
  });

  it('stands with the same passes in any order and pieces', () => {
    const cases = anyRecord.chain((record) => fc.tuple(fc.constant(record), shuffledInPieces(record)));
    fc.assert(
      fc.property(cases, ([record, pieces]) => {
        const whole = new Fold(testScheduler);
        whole.add(mergeEvents(record).events);
        const growing = new Fold(testScheduler);
        for (const piece of pieces) growing.add(piece);
        expect(growing.passes('marram-recovery')).toEqual(whole.passes('marram-recovery'));
        const restored = Fold.restore(structuredClone(growing.state()), testScheduler);
        expect(restored.passes('marram-recovery')).toEqual(whole.passes('marram-recovery'));
        expect(restored.histories).toEqual(whole.histories);
      }),
    );
  });
});

describe('a live record', () => {
  it('keeps a pass through a restart, tells the other tabs, and takes it back with the last answer', async () => {
    const device = new Device();
    const [record, other] = [await device.open(), await device.open()];
    const told: string[] = [];
    other.subscribe((changed) => told.push(...changed));
    const { event, saved } = record.appendPass(flown({ rules: [tally('low-abeam', 2, 1)] }), eveningMs);
    expect(await saved).toEqual({ ok: true });
    expect(told).toContain(passesKey(deck.id));
    expect(other.passes(deck.id)).toEqual([event]);
    await record.settle();
    await record.settle();
    const again = await device.open();
    expect(again.passes(deck.id)).toEqual([event]);
    expect(again.history(deck.id, 'rule/abeam-height/low-abeam')?.calls).toHaveLength(1);
    expect(again.undoLast(eveningMs + 1, deck.id)?.event.of).toBe(event.id);
    expect(record.passes(deck.id)).toEqual([]);
    expect(record.histories).toEqual(new Map());
  });
});
