/** Where the record is kept, as an interface: the browser's database and its twin in memory do the same. */
import type { RecordProblem } from '../problem.ts';
import type { DeckFile, EventId, KeptEvent } from '../types.ts';

export interface WriteFailure {
  readonly ok: false;
  readonly reason: 'full' | 'blocked' | 'lost-connection' | 'unknown';
  /** What happened and what to do, for the pilot. */
  readonly message: string;
}

export type WriteResult = { readonly ok: true } | WriteFailure;

/**
 * Names the sealed events of a moment: equal marks, equal events. It changes with every seal.
 */
export type SealMark = string;

export interface Loaded {
  /** Every event that can be read, sealed, loose or waiting to be written; merged, in order of id. */
  readonly events: readonly KeptEvent[];
  /** Ids of those that aren't sealed. */
  readonly loose: readonly EventId[];
  /** null when the store couldn't be read. */
  readonly mark: SealMark | null;
  readonly problems: readonly RecordProblem[];
}

/** The short way in: a snapshot of the sealed events, and those that aren't sealed. */
export interface Opened {
  /** Text that stands for exactly the sealed events; null when there is none that does. */
  readonly snapshot: string | null;
  readonly loose: readonly KeptEvent[];
  readonly mark: SealMark | null;
  readonly problems: readonly RecordProblem[];
}

export type SealResult =
  | {
      readonly ok: true;
      /** What this call sealed; none when there was too little. */
      readonly events: readonly KeptEvent[];
      readonly before: SealMark;
      readonly after: SealMark;
    }
  | WriteFailure;

export interface RecordStore {
  /** Everything. Reads all chunks: at start-up, `open` is quicker. */
  load(): Promise<Loaded>;
  open(): Promise<Opened>;

  /**
   * Writes an event, with all that still waits. Never overwrites an event of other content. On a
   * failure it stays in `pending`, and is tried again with the next append or `flush`.
   */
  append(event: KeptEvent): Promise<WriteResult>;
  /** The same for many: all at once, or, on a full disk, as many of the first as fit. */
  appendMany(events: readonly KeptEvent[]): Promise<WriteResult>;
  /** Events not known to be written yet, oldest first. */
  readonly pending: readonly KeptEvent[];
  flush(): Promise<WriteResult>;

  /**
   * Packs all loose events into chunks when there are at least so many, in one transaction: another
   * tab, or a crash in the midst of it, sees either the one or the other.
   */
  seal(atLeast: number): Promise<SealResult>;
  /** Keeps a snapshot of exactly the events sealed at `mark`. It takes the place of the one before. */
  writeSnapshot(snapshot: string, mark: SealMark): Promise<WriteResult>;

  /** Removes events, chunks, snapshot and what is pending; decks and settings stay. Only when the pilot says so. */
  erase(): Promise<WriteResult>;

  readDecks(): Promise<{ readonly decks: readonly DeckFile[]; readonly problems: readonly RecordProblem[] }>;
  /** Takes the place of a deck with the same id. */
  writeDeck(deck: DeckFile): Promise<WriteResult>;
  removeDeck(id: string): Promise<WriteResult>;

  /** Plain data by name; undefined when there is none, or it can't be read. */
  readSetting(name: string): Promise<unknown>;
  writeSetting(name: string, value: unknown): Promise<WriteResult>;
}

/** Most events in one chunk. */
export const chunkLength = 400;

/** Events in runs of nearly equal length, none over `chunkLength`. */
export function inChunks(events: readonly KeptEvent[]): KeptEvent[][] {
  const count = Math.ceil(events.length / chunkLength);
  const edges = Array.from({ length: count + 1 }, (_, i) => Math.round((i * events.length) / count));
  return edges.slice(1).map((edge, i) => events.slice(edges[i], edge));
}
