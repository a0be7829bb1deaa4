import { describe, expect, it } from 'vitest';
import { cardKey, foldEvents } from '../../../src/record/fold.ts';
import { answersIn, Device } from './device.ts';
import { assessed, eveningMs, testIds, testScheduler } from './examples.ts';

const key = cardKey('marram-recovery', 'value/alongside/altitude');
const nowMs = eveningMs;

describe('a live record', () => {
  it('knows at once what an answer came to, before it is written', async () => {
    const record = await new Device().open();
    expect(record.history('marram-recovery', 'value/alongside/altitude')).toBeNull();
    const { event, saved } = record.append(assessed(), nowMs);
    expect(record.histories).toEqual(foldEvents([event], testScheduler));
    expect(record.history('marram-recovery', 'value/alongside/altitude')?.calls[0]?.value).toBe(160);
    expect(record.unsaved).toEqual([event]);
    expect(await saved).toEqual({ ok: true });
    expect(record.unsaved).toEqual([]);
  });

  it('is the same when it is opened again', async () => {
    const device = new Device();
    const record = await device.open();
    for (let i = 0; i < 5; i++) await record.append(assessed({}, `note/n${i % 2}`), nowMs + i).saved;
    await record.undoLast(nowMs + 9)?.saved;
    const again = await device.open();
    expect(again.histories).toEqual(record.histories);
    expect(answersIn(again)).toBe(4);
    expect(again.problems).toEqual([]);
  });

  it('takes back the last answer, then the one before, and gives it again', async () => {
    const record = await new Device().open();
    const values = () => record.histories.get(key)?.calls.map(({ atMs }) => atMs - nowMs) ?? [];
    for (const second of [1, 2, 3]) record.append(assessed(), nowMs + second);
    const first = record.undoLast(nowMs + 4);
    expect(values()).toEqual([1, 2]);
    record.undoLast(nowMs + 5);
    expect(values()).toEqual([1]);
    record.undo(first!.event.id, nowMs + 6);
    expect(values()).toEqual([1, 3]);
    record.undoLast(nowMs + 7);
    record.undoLast(nowMs + 8);
    expect(record.histories.size).toBe(0);
    expect(record.undoLast(nowMs + 9)).toBeNull();
  });

  it('takes back the last answer of one deck, and nothing that it doesn’t hold', async () => {
    const record = await new Device().open();
    const here = record.append(assessed(), nowMs).event;
    record.append(assessed({ deck: { id: 'light-aircraft-circuit', version: '2.0.0' } }), nowMs + 1);
    expect(record.undoLast(nowMs + 2, 'marram-recovery')?.event.of).toBe(here.id);
    expect(record.undo(testIds(99).next(nowMs), nowMs + 3)).toBeNull();
    expect([...record.histories.keys()]).toEqual(['light-aircraft-circuit/value/alongside/altitude']);
  });

  it('tells its subscribers which cards changed, until they have heard enough', async () => {
    const record = await new Device().open();
    const heard: string[][] = [];
    const stop = record.subscribe((changed) => heard.push([...changed]));
    record.append(assessed(), nowMs);
    record.append(assessed({}, 'note/a'), nowMs);
    stop();
    record.append(assessed(), nowMs);
    expect(heard).toEqual([[key], ['marram-recovery/note/a']]);
  });
});

describe('a live record whose store fails', () => {
  it('says so, keeps the answers, exports them, and writes them when it can', async () => {
    const device = new Device();
    const record = await device.open();
    const told: number[] = [];
    record.subscribe((changed) => told.push(changed.size));
    await record.append(assessed(), nowMs).saved;
    device.disk.fault = 'full';
    const { event, saved } = record.append(assessed(), nowMs + 1);
    expect(await saved).toMatchObject({ ok: false, reason: 'full' });
    expect(record.failure?.reason).toBe('full');
    expect(record.problems.map(({ code }) => code)).toEqual(['not-saved']);
    expect(record.unsaved).toEqual([event]);
    expect(told).toEqual([1, 1, 0]);
    expect(answersIn(record)).toBe(2);
    const { text } = await record.exportBackup(nowMs);
    expect(text).toContain(event.id);
    device.disk.fault = null;
    expect(await record.flush()).toEqual({ ok: true });
    expect(record.problems).toEqual([]);
    expect(told).toEqual([1, 1, 0, 0]);
    expect(answersIn(await device.open())).toBe(2);
  });
});

describe('two tabs with one record', () => {
  it('hear of each other’s answers and undos at once', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    const heard: string[][] = [];
    two.subscribe((changed) => heard.push([...changed]));
    one.append(assessed(), nowMs);
    expect(two.histories).toEqual(one.histories);
    expect(heard).toEqual([[key]]);
    two.undoLast(nowMs + 1);
    expect(one.histories.size).toBe(0);
    expect(device.hub.sent).toBe(2);
  });

  it('catch up when they could not hear', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    device.hub.deaf = true;
    await one.append(assessed(), nowMs).saved;
    await two.append(assessed({}, 'note/a'), nowMs).saved;
    await two.lookAgain();
    expect(answersIn(two)).toBe(2);
    for (let i = 0; i < 250; i++) await one.append(assessed({}, `note/n${i % 9}`), nowMs + i).saved;
    await one.settle();
    await two.append(assessed({}, 'note/b'), nowMs).saved;
    await two.lookAgain();
    expect(answersIn(two)).toBe(253);
    await one.lookAgain();
    expect(one.histories).toEqual(two.histories);
  });

  it('may settle at the same time', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    const saved: Promise<unknown>[] = [];
    for (let i = 0; i < 300; i++)
      saved.push((i % 2 ? one : two).append(assessed({}, `note/n${i % 9}`), nowMs + i).saved);
    await Promise.all([...saved, one.settle(), two.settle()]);
    await Promise.all([one.settle(), two.settle()]);
    expect(answersIn(one)).toBe(300);
    const again = await device.open();
    expect(again.histories).toEqual(one.histories);
    expect(two.histories).toEqual(one.histories);
  });

  it('don’t mind what else is said on the channel', async () => {
    const device = new Device();
    const record = await device.open();
    record.append(assessed(), nowMs);
    const stranger = device.hub.channel();
    for (const message of [
      null,
      7,
      'events',
      {},
      { about: 'events' },
      { about: 'events', events: [1, { kind: 'answer' }] },
    ])
      stranger.postMessage(message);
    expect(answersIn(record)).toBe(1);
  });

  it('no longer listen once closed', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    two.close();
    one.append(assessed(), nowMs);
    expect(two.histories.size).toBe(0);
  });

  it('keep what they have yet to write when another erases the record', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    await one.append(assessed(), nowMs).saved;
    device.disk.fault = 'full';
    await two.append(assessed({}, 'note/a'), nowMs).saved;
    device.disk.fault = null;
    await one.erase();
    expect([...two.histories.keys()]).toEqual(['marram-recovery/note/a']);
    await two.flush();
    expect(answersIn(await device.open())).toBe(1);
  });

  it('both forget when one erases, and go on', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    await one.append(assessed(), nowMs).saved;
    await one.append(assessed({}, 'note/a'), nowMs).saved;
    expect(await one.erase()).toEqual({ ok: true });
    expect([one.histories.size, two.histories.size]).toEqual([0, 0]);
    expect((await device.open()).histories.size).toBe(0);
    await two.append(assessed(), nowMs).saved;
    expect(answersIn(one)).toBe(1);
    expect(answersIn(await device.open())).toBe(1);
  });
});
