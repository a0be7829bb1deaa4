import { describe, expect, it } from 'vitest';
import { writeBackup } from '../../../src/record/backup.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import { Device } from './device.ts';
import { answer, assessed, evening, eveningMs, testIds, undo } from './examples.ts';

const nowMs = eveningMs + 86_400_000;
const backupOf = (events: readonly KeptEvent[], more: object = {}): string =>
  writeBackup({ events, ...more }, nowMs);
const deck = { id: 'our-circuit', version: '1.2.0', text: 'format: gatecall-deck/1\n' };

describe('importing a backup', () => {
  it('adds what is missing and says how much that was', async () => {
    const device = new Device();
    const record = await device.open();
    const events = evening(312);
    await record.importBackup(backupOf(events.slice(0, 300)), nowMs);
    const undone = undo(testIds(7).next(nowMs), events[0]!.id);
    const report = await record.importBackup(backupOf([...events, undone]), nowMs);
    expect(report).toEqual({
      ok: true,
      said: '312 answers, 12 new; 1 answer taken back, 1 new.',
      added: 13,
      newDecks: [],
      otherDecks: [],
      settings: null,
      problems: [],
      saved: { ok: true },
    });
    expect((await record.events()).events).toHaveLength(313);
    expect((await device.open()).histories).toEqual(record.histories);
  });

  it('of what was exported here changes nothing', async () => {
    const record = await new Device().open();
    record.append(assessed(), nowMs);
    record.append(assessed({}, 'note/a'), nowMs);
    record.undoLast(nowMs);
    const before = new Map(record.histories);
    const { text } = await record.exportBackup(nowMs);
    expect(await record.importBackup(text, nowMs)).toMatchObject({
      said: '2 answers, 0 new; 1 answer taken back, 0 new.',
      added: 0,
    });
    expect(record.histories).toEqual(before);
  });

  it('both ways brings two devices to the same state', async () => {
    const [phone, laptop] = [await new Device(1).open(), await new Device(2).open()];
    for (let i = 0; i < 30; i++) {
      phone.append(assessed({}, `note/n${i % 4}`), nowMs + i * 7);
      laptop.append(assessed({}, `note/n${i % 5}`), nowMs + i * 5);
    }
    phone.undoLast(nowMs + 500);
    const [fromPhone, fromLaptop] = [await phone.exportBackup(nowMs), await laptop.exportBackup(nowMs)];
    await phone.importBackup(fromLaptop.text, nowMs);
    await laptop.importBackup(fromPhone.text, nowMs);
    expect(phone.histories).toEqual(laptop.histories);
    expect((await phone.events()).events).toEqual((await laptop.events()).events);
  });

  it('restores a new device whole: answers, decks and settings', async () => {
    const old = new Device(1);
    const record = await old.open();
    for (let i = 0; i < 250; i++) await record.append(assessed({}, `note/n${i % 9}`), nowMs + i).saved;
    await record.settle();
    await record.append(assessed(), nowMs + 999).saved;
    old.disk.decks.set(deck.id, deck);
    const { text, fileName, problems } = await record.exportBackup(nowMs, { theme: 'night' });
    expect([fileName, problems]).toEqual(['gatecall-record-2026-09-02.json', []]);
    const fresh = new Device(2);
    const restored = await fresh.open();
    const report = await restored.importBackup(text, nowMs);
    expect(report).toMatchObject({
      said: '251 answers, 251 new; 1 deck file, 1 new.',
      settings: { theme: 'night' },
    });
    expect(restored.histories).toEqual(record.histories);
    expect(fresh.disk.decks.get(deck.id)).toEqual(deck);
  });

  it('never replaces a deck that is here, but hands the other one over', async () => {
    const device = new Device();
    const newer = { ...deck, version: '1.3.0', text: 'format: gatecall-deck/1\n# newer\n' };
    device.disk.decks.set(deck.id, deck);
    const record = await device.open();
    const report = await record.importBackup(backupOf([], { decks: [newer] }), nowMs);
    expect(report).toMatchObject({ said: '0 answers, 0 new; 1 deck file, 0 new.', otherDecks: [newer] });
    expect(report.problems.map(({ code }) => code)).toEqual(['deck-kept']);
    expect(device.disk.decks.get(deck.id)).toEqual(deck);
  });

  it('of a bad file changes nothing and says why', async () => {
    const record = await new Device().open();
    record.append(assessed(), nowMs);
    for (const text of [
      '',
      '{"format": "gatecall-record/1", "events": [',
      '{"format": "gatecall-record/9", "events": []}',
    ]) {
      const report = await record.importBackup(text, nowMs);
      expect(report).toMatchObject({ ok: false, said: '', added: 0 });
      expect(report.problems).toHaveLength(1);
    }
    expect((await record.events()).events).toHaveLength(1);
  });

  it('takes the sound entries of a partly bad file, and names the others', async () => {
    const record = await new Device().open();
    const text = backupOf(evening(3)).replace('"performance":"', '"performance":"not ');
    const report = await record.importBackup(text, nowMs);
    expect(report).toMatchObject({ ok: true, added: 2 });
    expect(report.problems.map(({ code }) => code)).toEqual(['bad-event']);
  });

  it('keeps both versions of an entry that differs, and the same one counts on both devices', async () => {
    const id = testIds(5).next(eveningMs);
    const [one, other] = [answer(id, { value: 1 }), answer(id, { value: 2 })];
    const states = [];
    for (const [here, there] of [
      [one, other],
      [other, one],
    ] as const) {
      const device = new Device();
      const record = await device.open();
      await record.importBackup(backupOf([here]), nowMs);
      const report = await record.importBackup(backupOf([there]), nowMs);
      expect(report.problems.map(({ code }) => code)).toEqual(['same-id']);
      expect(device.disk.loose.size).toBe(2);
      expect((await device.open()).histories).toEqual(record.histories);
      await record.settle();
      states.push(record.histories);
    }
    expect(states[0]).toEqual(states[1]);
  });

  it('on a full disk holds what doesn’t fit in memory and says so', async () => {
    const device = new Device();
    device.disk.room = 10;
    const record = await device.open();
    const report = await record.importBackup(backupOf(evening(30)), nowMs);
    expect(report).toMatchObject({ ok: true, added: 30, saved: { ok: false, reason: 'full' } });
    expect(record.unsaved).toHaveLength(20);
    expect((await record.events()).events).toEqual(evening(30));
    device.disk.room = Infinity;
    expect(await record.flush()).toEqual({ ok: true });
  });

  it('reaches the other tabs', async () => {
    const device = new Device();
    const [one, two] = [await device.open(), await device.open()];
    const heard = new Promise<ReadonlySet<string>>((resolve) => two.subscribe(resolve));
    await one.importBackup(backupOf(evening(40)), nowMs);
    expect((await heard).size).toBe(7);
    expect(two.histories).toEqual(one.histories);
  });

  it('brings back what was lost to damage', async () => {
    const device = new Device();
    const record = await device.open();
    await record.importBackup(backupOf(evening(250)), nowMs);
    const { text } = await record.exportBackup(nowMs);
    await record.settle();
    device.disk.chunks.clear();
    device.disk.snapshot = null;
    const hurt = await device.open();
    expect(hurt.histories.size).toBe(0);
    expect(await hurt.importBackup(text, nowMs)).toMatchObject({ added: 250 });
    expect(hurt.histories).toEqual(record.histories);
  });
});
