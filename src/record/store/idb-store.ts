/**
 * The record in the browser's database, over idb-keyval. Each change is one transaction, whole or not at
 * all, and takes what it builds on from the database itself, never from what this tab remembers of it.
 */
import { createStore, promisifyRequest, type UseStore } from 'idb-keyval';
import { crcWord } from '../checksum.ts';
import { decodeChunk } from '../codec.ts';
import { parseDeckFile } from '../deck-file.ts';
import { canonical, inOrder, mergeEvents } from '../merge.ts';
import { rawEvent } from '../schema.ts';
import type { KeptEvent } from '../types.ts';
import { failureOf, isLostConnection, unreadable } from './failure.ts';
import {
  chunkOf,
  markOf,
  prefixes,
  readLoose,
  readsBack,
  snapshotFor,
  snapshotKey,
  twoContents,
  under,
} from './idb-layout.ts';
import { PendingQueue } from './pending.ts';
import { inChunks, type RecordStore, type SealResult, type WriteResult } from './store.ts';

export interface IdbParts {
  /** A new connection. Called once at the start, and again when a connection turns out to be lost. */
  readonly connect?: () => UseStore;
  /** The browser's locks. Without them two tabs may seal at once, which is only wasted work. */
  readonly locks?: Locks | undefined;
}

/** What is needed of `navigator.locks`. */
export interface Locks {
  request<T>(name: string, work: () => Promise<T>): Promise<T>;
}

const written: WriteResult = { ok: true };

export function idbStore(parts: IdbParts = {}): RecordStore {
  const connect = parts.connect ?? (() => createStore('gatecall', 'record'));
  let use = connect();
  const pending = new PendingQueue((events) =>
    write((store) => events.forEach((event) => add(store, event))),
  );

  /** One transaction; a second try over a new connection when the first turns out to be lost. */
  async function run<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => Promise<T>): Promise<T> {
    try {
      return await use(mode, work);
    } catch (error) {
      if (!isLostConnection(error)) throw error;
      use = connect();
      return await use(mode, work);
    }
  }

  async function write(change: (store: IDBObjectStore) => void): Promise<WriteResult> {
    try {
      await run('readwrite', async (store) => {
        wholeOrNot(store, change);
        await finished(store.transaction);
      });
      return written;
    } catch (error) {
      return failureOf(error);
    }
  }

  async function sealNow(atLeast: number): Promise<SealResult> {
    try {
      return await run('readwrite', async (store) => {
        const [keys, raws, chunkKeys] = await results(
          store.getAllKeys(under('loose')),
          store.getAll(under('loose')) as IDBRequest<unknown[]>,
          store.getAllKeys(under('chunk')),
        );
        const before = markOf(chunkKeys);
        const { events, keyOf } = readLoose(raws, keys);
        if (events.length < Math.max(1, atLeast)) return { ok: true, events: [], before, after: before };
        const chunks = inChunks(events).map(chunkOf).filter(readsBack);
        const sealed = chunks.flatMap((chunk) => chunk.events);
        wholeOrNot(store, () => {
          for (const { key, text } of chunks) store.put(text, key);
          // The transaction is alone with the store, so nothing came in since: much quicker than one by one.
          if (sealed.length === keys.length) store.delete(under('loose'));
          else for (const event of sealed) store.delete(keyOf.get(event)!);
        });
        const after = promisifyRequest(store.getAllKeys(under('chunk')));
        const [nowThere] = await Promise.all([after, finished(store.transaction)]);
        return { ok: true, events: sealed, before, after: markOf(nowThere) };
      });
    } catch (error) {
      return failureOf(error);
    }
  }

  return {
    async load() {
      try {
        const [chunkKeys, texts, raws] = await run('readonly', (store) =>
          results(
            store.getAllKeys(under('chunk')),
            store.getAll(under('chunk')) as IDBRequest<unknown[]>,
            store.getAll(under('loose')) as IDBRequest<unknown[]>,
          ),
        );
        const chunks = texts.map(decodeChunk);
        const loose = readLoose(raws);
        const sealed = chunks.map(({ events }) => events);
        const { events, conflicts } = mergeEvents(...sealed, loose.events, pending.events);
        const problems = [...chunks.flatMap((chunk) => chunk.problems), ...loose.problems];
        if (conflicts.length > 0) problems.push(twoContents(conflicts.length));
        const ids = new Set([...loose.events, ...pending.events].map(({ id }) => id));
        return { events, loose: [...ids], mark: markOf(chunkKeys), problems };
      } catch (error) {
        const ids = pending.events.map(({ id }) => id);
        return { events: inOrder(pending.events), loose: ids, mark: null, problems: [unreadable(error)] };
      }
    },

    async open() {
      try {
        const [chunkKeys, snapshot, raws] = await run('readonly', (store) =>
          results(
            store.getAllKeys(under('chunk')),
            store.get(snapshotKey) as IDBRequest<unknown>,
            store.getAll(under('loose')) as IDBRequest<unknown[]>,
          ),
        );
        const { events, problems } = readLoose(raws);
        const mark = markOf(chunkKeys);
        const loose = mergeEvents(events, pending.events).events;
        return { snapshot: snapshotFor(mark, snapshot), loose, mark, problems };
      } catch (error) {
        return { snapshot: null, loose: inOrder(pending.events), mark: null, problems: [unreadable(error)] };
      }
    },

    append: (event) => pending.push([event]),
    appendMany: (events) => pending.push(events),
    get pending() {
      return pending.events;
    },
    flush: () => pending.flush(),

    seal: (atLeast) =>
      parts.locks ? parts.locks.request('gatecall-seal', () => sealNow(atLeast)) : sealNow(atLeast),
    writeSnapshot: (text, mark) => write((store) => store.put({ mark, text }, snapshotKey)),

    async erase() {
      await pending.clear();
      return await write((store) => {
        for (const range of [under('loose'), under('chunk'), snapshotKey]) store.delete(range);
      });
    },

    async readDecks() {
      try {
        const raws = await run('readonly', (store) =>
          promisifyRequest<unknown[]>(store.getAll(under('deck'))),
        );
        const decks = raws.map(parseDeckFile).filter((deck) => deck !== null);
        return { decks, problems: [] };
      } catch (error) {
        return { decks: [], problems: [unreadable(error)] };
      }
    },
    writeDeck: ({ id, version, text }) =>
      write((store) => store.put({ id, version, text }, prefixes.deck + id)),
    removeDeck: (id) => write((store) => store.delete(prefixes.deck + id)),

    async readSetting(name) {
      try {
        return await run('readonly', (store) =>
          promisifyRequest<unknown>(store.get(prefixes.setting + name)),
        );
      } catch {
        return undefined;
      }
    },
    writeSetting: (name, value) => write((store) => store.put(value, prefixes.setting + name)),
  };
}

/** Without this, what was asked for before an exception would still be written. */
function wholeOrNot(store: IDBObjectStore, change: (store: IDBObjectStore) => void): void {
  try {
    change(store);
  } catch (error) {
    store.transaction.abort();
    throw error;
  }
}

/**
 * What requests come to. They are all made before any is waited for: a promise for the first would
 * reject with nobody there if making the second threw.
 */
function results<A, B, C>(a: IDBRequest<A>, b: IDBRequest<B>, c: IDBRequest<C>): Promise<[A, B, C]> {
  return Promise.all([promisifyRequest(a), promisifyRequest(b), promisifyRequest(c)]);
}

/** Settles when the transaction is on its way to the disk for good. Its reason for failing is known only at the abort. */
function finished(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error as Error);
  });
}

/** Adds an event. One that is there is left alone: the same content is there already, another is kept beside it. */
function add(store: IDBObjectStore, event: KeptEvent): void {
  const raw = rawEvent(event);
  const key = prefixes.loose + event.id;
  const adding = store.add(raw, key);
  adding.onerror = (failed) => {
    if (adding.error?.name !== 'ConstraintError') return;
    failed.preventDefault();
    failed.stopPropagation();
    const reading: IDBRequest<unknown> = store.get(key);
    reading.onsuccess = () => {
      const text = canonical(raw);
      if (canonical(reading.result) !== text) store.put(raw, `${key}#${crcWord(text)}`);
    };
  };
}
