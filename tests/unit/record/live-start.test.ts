import { describe, expect, it } from 'vitest';
import { foldEvents } from '../../../src/record/fold.ts';
import { openRecord } from '../../../src/record/live.ts';
import { memoryStore } from '../../../src/record/store/memory-store.ts';
import { answersIn, Device } from './device.ts';
import { assessed, dayMs, evening, eveningMs, testIds, testScheduler } from './examples.ts';

const nowMs = eveningMs;

describe('settling', () => {
  it('leaves out of the snapshot an answer that came meanwhile and was never written', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 250; i++) await record.append(assessed(), nowMs + i).saved;
    const settling = record.settle();
    device.disk.fault = 'full';
    await record.append(assessed(), nowMs + 999).saved;
    device.disk.fault = null;
    await settling;
    await record.settle();
    expect(answersIn(record)).toBe(251);
    const again = await device.open();
    expect(answersIn(again)).toBe(250);
    expect(again.histories).toEqual(foldEvents((await again.events()).events, testScheduler));
  });
});

describe('start-up', () => {
  it('goes on from the snapshot: only what came since is folded', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 250; i++)
      await record.append(assessed({}, `note/n${i % 9}`), nowMs + i * dayMs).saved;
    await record.settle();
    await record.append(assessed(), nowMs + 300 * dayMs).saved;
    let steps = 0;
    const counting = {
      ...testScheduler,
      next: (...given: Parameters<typeof testScheduler.next>) => (steps++, testScheduler.next(...given)),
    };
    const again = await device.open(counting);
    expect(again.histories).toEqual(record.histories);
    // One answer, and some steps to see that the snapshot is of the same model.
    expect(steps).toBeLessThan(100);
  });

  it('folds everything when the model is another one than the snapshot’s, and leaves a new snapshot', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 250; i++) await record.append(assessed(), nowMs + i * dayMs).saved;
    await record.settle();
    const before = device.disk.snapshot;
    const other = {
      ...testScheduler,
      next: (...given: Parameters<typeof testScheduler.next>) => ({
        ...testScheduler.next(...given),
        difficulty: 3,
      }),
    };
    const again = await device.open(other);
    const { events } = await again.events();
    expect(again.histories).toEqual(foldEvents(events, other));
    await again.settle();
    expect(device.disk.snapshot).not.toEqual(before);
    expect((await device.open(other)).histories).toEqual(again.histories);
  });

  it('does without a snapshot that is damaged', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 250; i++) await record.append(assessed(), nowMs + i).saved;
    await record.settle();
    device.disk.snapshot = { ...device.disk.snapshot!, text: 'damaged' };
    expect((await device.open()).histories).toEqual(record.histories);
  });

  it('leaves few answers as they are: there is nothing to spare', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 20; i++) await record.append(assessed(), nowMs + i).saved;
    await record.settle();
    expect(device.disk.chunks.size).toBe(0);
    expect(device.disk.snapshot).toBeNull();
  });

  it('of a record that can’t be read says so, and goes on with what is answered from then on', async () => {
    const store = memoryStore();
    await store.appendMany(evening(3));
    const problem = { code: 'cannot-read' as const, message: 'It could not be read.' };
    let readable = false;
    const failing: typeof store = {
      ...store,
      open: async () =>
        readable ? await store.open() : { snapshot: null, loose: [], mark: null, problems: [problem] },
      load: async () =>
        readable ? await store.load() : { events: [], loose: [], mark: null, problems: [problem] },
    };
    const record = await openRecord({ store: failing, scheduler: testScheduler, ids: testIds(2) });
    expect(record.problems).toEqual([problem]);
    await record.append(assessed(), nowMs).saved;
    await record.settle();
    expect(answersIn(record)).toBe(1);
    readable = true;
    await record.lookAgain();
    expect(record.problems).toEqual([]);
    expect(answersIn(record)).toBe(4);
  });
});
