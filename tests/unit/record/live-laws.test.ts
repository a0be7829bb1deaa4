import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { foldEvents } from '../../../src/record/fold.ts';
import { openRecord, type LiveRecord } from '../../../src/record/live.ts';
import { inOrder } from '../../../src/record/merge.ts';
import { idbStore } from '../../../src/record/store/idb-store.ts';
import { MemoryDisk, memoryStore } from '../../../src/record/store/memory-store.ts';
import type { RecordStore } from '../../../src/record/store/store.ts';
import type { FlownPass } from '../../../src/record/pass-event.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import { shippedDeck } from '../../reference/shipped-deck.ts';
import { TabHub } from './device.ts';
import { assessed, eveningMs, testIds, testScheduler } from './examples.ts';
import { connect, emptyBrowser } from './store/browser.ts';

const deck = shippedDeck('marram-recovery');

/** What can happen in an evening with two tabs, on a clock that may be set back. */
const happening = fc.record({
  tab: fc.nat(1),
  what: fc.constantFrom(
    'answer',
    'answer',
    'pass',
    'many',
    'undo',
    'redo',
    'settle',
    'look',
    'deaf',
    'reopen',
    'at-once',
  ),
  card: fc.nat(3),
  laterMs: fc.integer({ min: -50_000, max: 100_000 }),
});
type Happening = typeof happening extends fc.Arbitrary<infer T> ? T : never;

/** Misses a rule, and a value that the answers are to as well. */
const flownPass = (card: number): FlownPass => ({
  deck,
  start: { fromGate: 'abeam', seed: card },
  pace: 'steps',
  assessment: {
    ...{ crossings: [], decisions: [], limitsPassed: [], performance: 'outside', headline: 'Flown.' },
    rules: [{ table: 'abeam-height', rule: 'low-abeam', asked: 2, missed: 1 }],
    gatesMissed: [{ gate: 'alongside', quantities: ['altitude'] }],
    ended: { kind: 'complete', tMs: 1 },
  },
  card: (id) => ({ ...assessed({}, id).prompt.card, kind: 'rule', id }),
});

async function evening(happenings: readonly Happening[], openStore: () => RecordStore): Promise<void> {
  const hub = new TabHub();
  let opened = 0;
  const open = (): Promise<LiveRecord> =>
    openRecord({
      store: openStore(),
      scheduler: testScheduler,
      ids: testIds(++opened),
      channel: hub.channel(),
    });
  const tabs = [await open(), await open()];
  const given: KeptEvent[] = [];
  const saved: Promise<unknown>[] = [];
  let nowMs = eveningMs;
  for (const { tab, what, card, laterMs } of happenings) {
    nowMs += laterMs;
    const record = tabs[tab]!;
    const note = (appended: ReturnType<LiveRecord['undo' | 'append' | 'appendPass']>): void => {
      if (appended === null) return;
      given.push(appended.event);
      saved.push(appended.saved);
    };
    if (what === 'answer') note(record.append(assessed({}, card === 0 ? undefined : `note/n${card}`), nowMs));
    if (what === 'pass') note(record.appendPass(flownPass(card), nowMs));
    if (what === 'many')
      for (let i = 0; i < 90; i++) note(record.append(assessed({}, `note/n${i % 4}`), nowMs + i));
    if (what === 'undo') note(record.undoLast(nowMs));
    if (what === 'redo') note(record.undo(given.findLast(({ kind }) => kind === 'undo')?.id ?? '', nowMs));
    if (what === 'settle') await record.settle();
    if (what === 'look') await record.lookAgain();
    if (what === 'deaf') hub.deaf = !hub.deaf;
    if (what === 'at-once') saved.push(tabs[0]!.settle(), tabs[1]!.settle(), record.lookAgain());
    if (what === 'reopen') {
      await Promise.all(saved);
      record.close();
      tabs[tab] = await open();
    }
  }
  await Promise.all(saved);
  const expected = foldEvents(given, testScheduler);
  expect((await open()).histories).toEqual(expected);
  for (const record of tabs) {
    await record.lookAgain();
    expect(record.histories).toEqual(expected);
    expect((await record.events()).events).toEqual(inOrder(given));
    await record.settle();
    await record.settle();
  }
  const last = await open();
  expect(last.histories).toEqual(expected);
  expect(last.problems).toEqual([]);
}

const evenings = fc.array(happening, { minLength: 3, maxLength: 25 });

describe('whatever two tabs do in an evening', () => {
  beforeEach(emptyBrowser);

  it('nothing is lost, and the next start knows the same as a fold of everything, in memory', async () => {
    await fc.assert(
      fc.asyncProperty(evenings, async (happenings) => {
        const disk = new MemoryDisk();
        await evening(happenings, () => memoryStore(disk));
      }),
      { numRuns: 60 },
    );
  });

  it('the same in the browser’s database', async () => {
    await fc.assert(
      fc.asyncProperty(evenings, async (happenings) => {
        emptyBrowser();
        await evening(happenings, () => idbStore({ connect }));
      }),
      { numRuns: 25 },
    );
  }, 30_000);
});
