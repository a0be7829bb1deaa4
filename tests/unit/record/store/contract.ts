/** What every store of the record must do: run on each of them. */
import { describe, expect, it } from 'vitest';
import { inOrder } from '../../../../src/record/merge.ts';
import type { KeptEvent } from '../../../../src/record/types.ts';
import type { RecordStore } from '../../../../src/record/store/store.ts';
import { answer, evening, eveningMs, testIds, undo } from '../examples.ts';

/** A new, empty place to keep a record; each call of `open` is another tab. */
export interface Place {
  open(): RecordStore;
}

const written = { ok: true };
const eventsIn = async (store: RecordStore): Promise<readonly KeptEvent[]> => (await store.load()).events;

async function sealed(store: RecordStore, atLeast = 1) {
  const result = await store.seal(atLeast);
  if (!result.ok) throw new Error(result.message);
  return result;
}

export function storeContract(name: string, newPlace: () => Place): void {
  describe(name, () => {
    it('holds nothing at first', async () => {
      const store = newPlace().open();
      expect(await store.load()).toEqual({ events: [], loose: [], mark: '', problems: [] });
      expect(await store.open()).toEqual({ snapshot: null, loose: [], mark: '', problems: [] });
    });

    it('gives back what was appended, in order of id, also to the next tab', async () => {
      const place = newPlace();
      const events = evening(5);
      const store = place.open();
      for (const event of [...events].reverse()) expect(await store.append(event)).toEqual(written);
      expect(store.pending).toEqual([]);
      expect(await eventsIn(place.open())).toEqual(events);
    });

    it('keeps an event once, however often it is appended, and also when it is sealed', async () => {
      const store = newPlace().open();
      const events = evening(3);
      await store.appendMany(events);
      await store.appendMany(events);
      expect(await eventsIn(store)).toEqual(events);
      await sealed(store);
      await store.appendMany(events);
      await sealed(store);
      expect(await eventsIn(store)).toEqual(events);
    });

    it('keeps what it doesn’t understand word for word', async () => {
      const store = newPlace().open();
      const id = testIds().next(eveningMs);
      const raw = { kind: 'wind-log', id, atMs: eveningMs, legs: [{ wind: 20 }] };
      const stranger: KeptEvent = { kind: 'stranger', id, atMs: eveningMs, raw };
      await store.append(stranger);
      expect(await eventsIn(store)).toEqual([stranger]);
      await sealed(store);
      expect(await eventsIn(store)).toEqual([stranger]);
    });

    it('never writes over an event: of two contents under one id the same one counts in any order', async () => {
      const id = testIds().next(eveningMs);
      const [one, other] = [answer(id, { value: 1 }), answer(id, { value: 2 })];
      for (const order of [
        [one, other],
        [other, one],
      ]) {
        const store = newPlace().open();
        for (const event of order) await store.append(event);
        expect(await eventsIn(store)).toEqual([one]);
        const { events } = await sealed(store);
        expect(events).toHaveLength(2);
        expect(await eventsIn(store)).toEqual([one]);
      }
    });

    it('seals when there is enough, and only then', async () => {
      const store = newPlace().open();
      await store.appendMany(evening(9));
      const early = await sealed(store, 10);
      expect(early).toEqual({ ok: true, events: [], before: '', after: '' });
      await store.append(undo(testIds(3).next(eveningMs), testIds(4).next(eveningMs)));
      const { events, before, after } = await sealed(store, 10);
      expect(events).toHaveLength(10);
      expect(before).toBe('');
      expect(after).not.toBe('');
      expect(await store.open()).toEqual({ snapshot: null, loose: [], mark: after, problems: [] });
      expect(await eventsIn(store)).toEqual(inOrder(events));
    });

    it('seals thousands at once, and more later', async () => {
      const store = newPlace().open();
      const events = evening(1234);
      await store.appendMany(events.slice(0, 1000));
      const first = await sealed(store);
      await store.appendMany(events.slice(1000));
      const second = await sealed(store);
      expect(second.before).toBe(first.after);
      expect(second.after).not.toBe(first.after);
      expect(await store.load()).toEqual({ events, loose: [], mark: second.after, problems: [] });
    });

    it('gives a snapshot back as long as nothing was sealed since', async () => {
      const place = newPlace();
      const store = place.open();
      await store.appendMany(evening(5));
      const { after } = await sealed(store);
      expect(await store.writeSnapshot('what it comes to', after)).toEqual(written);
      const late = evening(1, { seed: 2 })[0]!;
      await store.append(late);
      expect(await place.open().open()).toEqual({
        snapshot: 'what it comes to',
        loose: [late],
        mark: after,
        problems: [],
      });
      await sealed(store);
      expect((await place.open().open()).snapshot).toBeNull();
    });

    it('doesn’t believe a snapshot of other sealed events', async () => {
      const store = newPlace().open();
      await store.appendMany(evening(5));
      await sealed(store);
      await store.writeSnapshot('of another time', '');
      expect((await store.open()).snapshot).toBeNull();
    });

    it('loses nothing when two tabs append and seal at once', async () => {
      const place = newPlace();
      const [one, two] = [place.open(), place.open()];
      const here = evening(60, { seed: 1 });
      const there = evening(60, { seed: 2 });
      const work: Promise<unknown>[] = [];
      for (let i = 0; i < 60; i++) {
        work.push(one.append(here[i]!), two.append(there[i]!));
        if (i % 10 === 9) work.push(one.seal(1), two.seal(1));
        if (i % 20 === 0) await Promise.all(work);
      }
      await Promise.all(work);
      const all = inOrder([...here, ...there]);
      expect(await eventsIn(one)).toEqual(all);
      expect(await eventsIn(place.open())).toEqual(all);
      await Promise.all([one.seal(1), two.seal(1)]);
      expect(await place.open().load()).toMatchObject({ events: all, loose: [], problems: [] });
    });

    it('loses nothing when two tabs take in the same backup, and one seals in between', async () => {
      const place = newPlace();
      const [one, two] = [place.open(), place.open()];
      const events = evening(50);
      await one.appendMany(events);
      await sealed(one);
      // The other tab has only half of it still to write: same first and last, fewer between.
      await two.appendMany([...events.slice(0, 5), ...events.slice(-5)]);
      await sealed(two);
      expect(await eventsIn(place.open())).toEqual(events);
    });

    it('keeps deck files, one for each id, until they are removed', async () => {
      const place = newPlace();
      const store = place.open();
      const deck = { id: 'our-circuit', version: '1.0.0', text: 'format: gatecall-deck/1\n' };
      await store.writeDeck(deck);
      await store.writeDeck({ ...deck, version: '1.1.0' });
      await store.writeDeck({ ...deck, id: 'other-circuit' });
      const { decks } = await place.open().readDecks();
      expect(decks).toHaveLength(2);
      expect(decks).toContainEqual({ ...deck, version: '1.1.0' });
      await store.removeDeck('our-circuit');
      expect(await store.readDecks()).toEqual({ decks: [{ ...deck, id: 'other-circuit' }], problems: [] });
    });

    it('keeps settings by name', async () => {
      const place = newPlace();
      const store = place.open();
      expect(await store.readSetting('chosen-deck')).toBeUndefined();
      await store.writeSetting('chosen-deck', { id: 'marram-recovery' });
      expect(await place.open().readSetting('chosen-deck')).toEqual({ id: 'marram-recovery' });
    });

    it('erases the record when told, and leaves decks and settings', async () => {
      const place = newPlace();
      const store = place.open();
      await store.appendMany(evening(5));
      const { after } = await sealed(store);
      await store.writeSnapshot('what it comes to', after);
      await store.appendMany(evening(5, { seed: 2 }));
      await store.writeDeck({ id: 'our-circuit', version: '1.0.0', text: '' });
      await store.writeSetting('theme', 'night');
      expect(await store.erase()).toEqual(written);
      expect(await place.open().load()).toEqual({ events: [], loose: [], mark: '', problems: [] });
      expect((await store.open()).snapshot).toBeNull();
      expect((await store.readDecks()).decks).toHaveLength(1);
      expect(await store.readSetting('theme')).toBe('night');
    });
  });
}

/** What a store must do when writing fails. `setFault` makes every write fail, or mends it. */
export function failingContract(
  name: string,
  newPlace: () => Place & { setFault(reason: 'full' | 'blocked' | 'lost-connection' | null): void },
): void {
  describe(`${name}, when it can’t write`, () => {
    it.each(['full', 'blocked', 'lost-connection'] as const)(
      'says so (%s), and holds on to the answer',
      async (reason) => {
        const place = newPlace();
        const store = place.open();
        const [first, second, third] = evening(3);
        await store.append(first!);
        place.setFault(reason);
        const result = await store.append(second!);
        expect(result).toMatchObject({ ok: false, reason });
        expect(result.ok ? '' : result.message).toMatch(/memory.*save the record as a file/s);
        expect(store.pending).toEqual([second]);
        place.setFault(null);
        expect(await eventsIn(place.open())).toEqual([first]);
        expect(await eventsIn(store)).toEqual([first, second]);
        expect(await store.append(third!)).toEqual(written);
        expect(store.pending).toEqual([]);
        expect(await eventsIn(place.open())).toEqual([first, second, third]);
      },
    );

    it('tries again when asked to', async () => {
      const place = newPlace();
      const store = place.open();
      place.setFault('full');
      await store.appendMany(evening(4));
      expect(await store.flush()).toMatchObject({ ok: false, reason: 'full' });
      expect(store.pending).toEqual(evening(4));
      place.setFault(null);
      expect(await store.flush()).toEqual(written);
      expect(store.pending).toEqual([]);
      expect(await eventsIn(place.open())).toEqual(evening(4));
    });

    it('seals nothing and loses nothing', async () => {
      const place = newPlace();
      const store = place.open();
      await store.appendMany(evening(20));
      place.setFault('full');
      expect(await store.seal(1)).toMatchObject({ ok: false, reason: 'full' });
      expect(await store.writeSnapshot('what it comes to', '')).toMatchObject({ ok: false, reason: 'full' });
      expect(await store.erase()).toMatchObject({ ok: false, reason: 'full' });
      expect(await store.writeSetting('theme', 'night')).toMatchObject({ ok: false, reason: 'full' });
      place.setFault(null);
      expect(await store.load()).toMatchObject({ events: evening(20), mark: '' });
    });
  });
}
