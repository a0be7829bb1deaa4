import type { UseStore } from 'idb-keyval';
import { set, keys } from 'idb-keyval';
import { beforeEach, describe, expect, it } from 'vitest';
import { idbStore } from '../../../../src/record/store/idb-store.ts';
import type { KeptEvent } from '../../../../src/record/types.ts';
import { evening, eveningMs, testIds } from '../examples.ts';
import { connect, emptyBrowser, watched } from './browser.ts';
import { failingContract, storeContract } from './contract.ts';

beforeEach(emptyBrowser);

const faults = {
  full: () => new DOMException('no room', 'QuotaExceededError'),
  blocked: () => new DOMException('site data are blocked', 'SecurityError'),
  'lost-connection': () => new DOMException('The database connection is closing.', 'InvalidStateError'),
};

const newPlace = () => {
  let fault: keyof typeof faults | null = null;
  const connectFaulty = (): UseStore =>
    watched(connect(), (operation, transaction, moment) => {
      if (
        moment === 'before' &&
        fault !== null &&
        transaction.mode === 'readwrite' &&
        /add|put|delete/.test(operation)
      )
        throw faults[fault]();
    });
  return {
    open: () => idbStore({ connect: connectFaulty }),
    setFault: (reason: typeof fault) => void (fault = reason),
  };
};

storeContract('a store in the browser’s database', newPlace);
failingContract('a store in the browser’s database', newPlace);

describe('a store in the browser’s database with locks', () => {
  it('seals within a lock', async () => {
    const held: string[] = [];
    const locks = {
      request: <T>(name: string, work: () => Promise<T>): Promise<T> => (held.push(name), work()),
    };
    const store = idbStore({ connect, locks });
    await store.appendMany(evening(3));
    expect(await store.seal(1)).toMatchObject({ ok: true });
    expect(held).toEqual(['gatecall-seal']);
  });
});

describe('a write that is cut off', () => {
  type Work = (store: ReturnType<typeof idbStore>) => Promise<{ readonly ok: boolean }>;

  /** Does the work over a connection that breaks for good at the given moment, counted from 0. */
  async function cutOff(at: number, work: Work): Promise<{ ok: boolean; broken: boolean }> {
    let moments = 0;
    let broken = false;
    const connectUntilThen = (): UseStore => {
      if (broken) return () => Promise.reject(new DOMException('gone', 'InvalidStateError'));
      return watched(connect(), (_, transaction) => {
        if (moments++ !== at) return;
        broken = true;
        transaction.abort();
      });
    };
    const { ok } = await work(idbStore({ connect: connectUntilThen }));
    return { ok, broken };
  }

  /** Cuts the work off at each moment in turn, and looks at what a new tab finds. Gives the number of moments. */
  async function atEachMoment(
    before: readonly KeptEvent[],
    work: Work,
    after: readonly KeptEvent[],
    damage = async (): Promise<void> => {},
  ): Promise<number> {
    for (let at = 0; ; at++) {
      emptyBrowser();
      await idbStore({ connect }).appendMany(before);
      await damage();
      const { ok, broken } = await cutOff(at, work);
      const { events, problems } = await idbStore({ connect }).load();
      expect(problems.filter(({ code }) => code !== 'unreadable-event')).toEqual([]);
      // Never more is claimed than is there, and never half of it.
      expect(events).toEqual(ok ? after : before);
      if (!broken) return at;
    }
  }

  const events = evening(30);

  it('in the midst of an append loses that answer at most, and says so', async () => {
    const moments = await atEachMoment(events.slice(0, 29), (store) => store.append(events[29]!), events);
    expect(moments).toBe(2);
  });

  it('in the midst of taking in a backup takes in all or nothing', async () => {
    const moments = await atEachMoment(
      events.slice(0, 20),
      (store) => store.appendMany(events.slice(15)),
      events,
    );
    expect(moments).toBeGreaterThan(30);
  });

  it('in the midst of sealing loses nothing', async () => {
    const moments = await atEachMoment(events, (store) => store.seal(1), events);
    expect(moments).toBe(12);
  });

  it('in the midst of sealing all but a damaged entry loses nothing', async () => {
    const damaged = async (): Promise<void> => {
      await set(`e:${testIds(5).next(eveningMs)}`, { kind: 'answer' }, connect());
    };
    const moments = await atEachMoment(events, (store) => store.seal(1), events, damaged);
    expect(moments).toBeGreaterThan(60);
  });
});

describe('a browser that drops the connection', () => {
  /** The first `connections` connections are dead. */
  const dropping = (connections: number) => {
    let made = 0;
    const store = idbStore({
      connect: () =>
        made++ < connections
          ? () => Promise.reject(new DOMException('The database connection is closing.', 'InvalidStateError'))
          : connect(),
    });
    return { store, made: () => made };
  };

  it('is met with a new connection and a second try', async () => {
    const { store, made } = dropping(1);
    expect(await store.append(evening(1)[0]!)).toEqual({ ok: true });
    expect(made()).toBe(2);
    expect((await store.load()).events).toEqual(evening(1));
  });

  it('also as Safari words it, and when reading', async () => {
    let lost = true;
    const store = idbStore({
      connect: () => {
        if (!lost) return connect();
        lost = false;
        const words = 'Connection to Indexed Database server lost. Refresh the page to try again';
        return () => Promise.reject(new DOMException(words, 'UnknownError'));
      },
    });
    expect(await store.load()).toMatchObject({ events: [], problems: [] });
  });

  it('is reported when the second try fails too, and met anew at the next write', async () => {
    const { store } = dropping(2);
    expect(await store.append(evening(2)[0]!)).toMatchObject({ ok: false, reason: 'lost-connection' });
    expect(await store.append(evening(2)[1]!)).toEqual({ ok: true });
    expect((await store.load()).events).toEqual(evening(2));
  });
});

describe('a browser without a database', () => {
  it('says that it keeps nothing, and the answers can still be had from memory', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB');
    const store = idbStore();
    expect(await store.append(evening(1)[0]!)).toMatchObject({ ok: false, reason: 'blocked' });
    const loaded = await store.load();
    expect(loaded).toMatchObject({ events: evening(1), mark: null, problems: [{ code: 'cannot-read' }] });
    expect(await store.open()).toMatchObject({ snapshot: null, loose: evening(1), mark: null });
    expect(await store.readDecks()).toMatchObject({ decks: [], problems: [{ code: 'cannot-read' }] });
    expect(await store.readSetting('theme')).toBeUndefined();
  });
});

describe('a database with damage in it', () => {
  it('gives up no more than what is damaged, and never throws it away', async () => {
    const store = idbStore({ connect });
    const events = evening(900);
    await store.appendMany(events);
    await store.seal(1);
    const [first] = (await keys<string>(connect())).filter((key) => key.startsWith('c:'));
    await set(first!, 'not a chunk', connect());
    await set(`e:${testIds(5).next(eveningMs)}`, { kind: 'answer', rating: 9 }, connect());
    const { events: read, problems } = await store.load();
    expect(read).toEqual(events.slice(300));
    expect(problems.map(({ code }) => code)).toEqual(['damaged-chunk', 'unreadable-event']);
    const late = evening(2, { seed: 8 });
    await store.appendMany(late);
    expect(await store.seal(1)).toMatchObject({ ok: true, events: late });
    const there = await keys<string>(connect());
    expect(there.filter((key) => key.startsWith('e:'))).toHaveLength(1);
    expect(there).toContain(first);
  });

  it('says when one event lies there in two versions', async () => {
    const store = idbStore({ connect });
    const [event] = evening(1);
    await store.append(event!);
    await store.append({ ...event!, value: 1 });
    expect((await store.load()).problems.map(({ code }) => code)).toEqual(['same-id']);
  });

  it('leaves out deck files that are none', async () => {
    await set('d:broken', { id: 'broken' }, connect());
    const store = idbStore({ connect });
    expect((await store.readDecks()).decks).toEqual([]);
  });
});
