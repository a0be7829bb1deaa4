/** The record in memory: for tests, for a browser that keeps nothing, and as the measure of the other store. */
import { canonical, mergeEvents } from '../merge.ts';
import { parseEvent, rawEvent } from '../schema.ts';
import type { DeckFile, KeptEvent } from '../types.ts';
import { failure } from './failure.ts';
import { PendingQueue } from './pending.ts';
import { inChunks, type RecordStore, type WriteFailure, type WriteResult } from './store.ts';

/** What several stores, like several tabs, can share. */
export class MemoryDisk {
  /** How many entries fit. */
  room = Infinity;
  /** Set, to have every write fail. */
  fault: WriteFailure['reason'] | null = null;
  readonly loose = new Map<string, unknown>();
  readonly chunks = new Map<string, readonly unknown[]>();
  readonly decks = new Map<string, DeckFile>();
  readonly settings = new Map<string, unknown>();
  /** Never used twice, so that equal marks mean equal events. */
  nextChunk = 0;
  snapshot: { readonly text: string; readonly mark: string } | null = null;

  get used(): number {
    return this.loose.size + this.chunks.size + this.decks.size + this.settings.size;
  }
}

const written: WriteResult = { ok: true };

export function memoryStore(disk = new MemoryDisk()): RecordStore {
  const pending = new PendingQueue((events) => write(events.length, () => events.forEach(add)));
  const markOf = (): string => [...disk.chunks.keys()].sort().join('\n');

  function write(entries: number, change: () => void): Promise<WriteResult> {
    if (disk.fault !== null) return Promise.resolve(failure(disk.fault));
    if (disk.used + entries > disk.room) return Promise.resolve(failure('full'));
    change();
    return Promise.resolve(written);
  }

  function add(event: KeptEvent): void {
    // Like a database, a copy: later changes of the object are not kept.
    const raw = structuredClone(rawEvent(event));
    const there = disk.loose.get(event.id);
    if (there === undefined) disk.loose.set(event.id, raw);
    else if (canonical(there) !== canonical(raw)) disk.loose.set(`${event.id}#${canonical(raw)}`, raw);
  }

  return {
    load() {
      const loose = read(disk.loose.values());
      const sealed = [...disk.chunks.values()].map(read);
      const { events } = mergeEvents(...sealed, loose, pending.events);
      const ids = new Set([...loose, ...pending.events].map(({ id }) => id));
      return Promise.resolve({ events, loose: [...ids], mark: markOf(), problems: [] });
    },
    open() {
      const mark = markOf();
      const snapshot = disk.snapshot?.mark === mark ? disk.snapshot.text : null;
      const loose = mergeEvents(read(disk.loose.values()), pending.events).events;
      return Promise.resolve({ snapshot, loose, mark, problems: [] });
    },
    append: (event) => pending.push([event]),
    appendMany: (events) => pending.push(events),
    get pending() {
      return pending.events;
    },
    flush: () => pending.flush(),
    async seal(atLeast) {
      const before = markOf();
      const events = read(disk.loose.values());
      if (events.length < Math.max(1, atLeast)) return { ok: true, events: [], before, after: before };
      const result = await write(0, () => {
        for (const chunk of inChunks(events)) disk.chunks.set(`${disk.nextChunk++}`, chunk.map(rawEvent));
        disk.loose.clear();
      });
      return result.ok ? { ok: true, events, before, after: markOf() } : result;
    },
    writeSnapshot: (text, mark) => write(0, () => void (disk.snapshot = { text, mark })),
    async erase() {
      await pending.clear();
      return await write(-disk.used, () => {
        disk.loose.clear();
        disk.chunks.clear();
        disk.snapshot = null;
      });
    },
    readDecks: () => Promise.resolve({ decks: [...disk.decks.values()], problems: [] }),
    writeDeck: (deck) => write(disk.decks.has(deck.id) ? 0 : 1, () => disk.decks.set(deck.id, { ...deck })),
    removeDeck: (id) => write(-1, () => disk.decks.delete(id)),
    readSetting: (name) => Promise.resolve(structuredClone(disk.settings.get(name))),
    writeSetting: (name, value) =>
      write(disk.settings.has(name) ? 0 : 1, () => disk.settings.set(name, structuredClone(value))),
  };
}

function read(raws: Iterable<unknown>): KeptEvent[] {
  return [...raws].flatMap((raw) => {
    const parsed = parseEvent(raw);
    return parsed.ok ? [parsed.event] : [];
  });
}
