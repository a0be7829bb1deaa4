/**
 * What one tab holds of the record: the fold, which of its events aren't sealed yet, and whether a
 * snapshot of the rest is on the disk. Knows nothing of stores; it is told what they said.
 */
import type { Scheduler } from '../memory/types.ts';
import { Fold } from './fold.ts';
import { mergeEvents } from './merge.ts';
import { readSnapshot, writeSnapshot } from './snapshot.ts';
import type { Loaded, Opened, SealMark, SealResult } from './store/store.ts';
import type { EventId, Histories, KeptEvent, PassEvent } from './types.ts';

/** Loose events are worth sealing from here on. */
const worthSealing = 200;

export class HeldRecord {
  readonly #scheduler: Scheduler;
  #fold: Fold;
  /** The fold is that of the events sealed at `#mark`, and of these. */
  #loose = new Map<EventId, KeptEvent>();
  #mark: SealMark | null = null;
  #snapshotKept = false;

  constructor(scheduler: Scheduler) {
    this.#scheduler = scheduler;
    this.#fold = new Fold(scheduler);
  }

  get histories(): Histories {
    return this.#fold.histories;
  }

  passes(deck: string): readonly PassEvent[] {
    return this.#fold.passes(deck);
  }

  /** Which sealed events are held; null when that isn't known, and all must be read. */
  get mark(): SealMark | null {
    return this.#mark;
  }

  /** In the order in which they came. */
  get loose(): Iterable<KeptEvent> {
    return this.#loose.values();
  }

  has(id: EventId): boolean {
    return this.#fold.has(id);
  }

  lastStanding(deck?: string): EventId | null {
    return this.#fold.lastStanding(deck);
  }

  /** Takes in events; those that are held already change nothing. Gives the keys of the cards that changed. */
  adopt(events: readonly KeptEvent[]): ReadonlySet<string> {
    const fresh = events.filter(({ id }) => !this.#fold.has(id) && !this.#loose.has(id));
    for (const event of fresh) this.#loose.set(event.id, event);
    return this.#fold.add(fresh);
  }

  /**
   * Starts from what the store says is there, and what came in meanwhile. Gives the keys of all cards;
   * null when it takes more than that, and all events must be read.
   */
  resume({ snapshot, loose, mark }: Opened & { readonly mark: SealMark }): ReadonlySet<string> | null {
    const restored = snapshot === null ? null : readSnapshot(snapshot, this.#scheduler);
    // With nothing sealed, there is nothing that a snapshot could spare.
    const start = mark === '' ? new Fold(this.#scheduler) : restored;
    // An event both sealed and loose may be there in two versions: only all of them tell which counts.
    if (start === null || loose.some(({ id }) => start.has(id))) return null;
    const before = [...this.histories.keys()];
    const came = [...this.#loose.values()].filter(({ id }) => !start.has(id));
    this.#fold = start;
    this.#loose = new Map();
    this.adopt([...loose, ...came]);
    this.#mark = mark;
    this.#snapshotKept = true;
    return new Set([...before, ...this.histories.keys()]);
  }

  /** Folds everything anew: what the store gave, and what is only here. Gives the keys of all cards. */
  replace({ events, loose, mark }: Loaded): ReadonlySet<string> {
    const before = [...this.histories.keys()];
    const stored = new Set(events.map(({ id }) => id));
    const looseThere = new Set(loose);
    const all = mergeEvents(events, this.#loose.values()).events;
    const stillLoose = all.filter(({ id }) => looseThere.has(id) || !stored.has(id));
    this.#fold = new Fold(this.#scheduler);
    this.#fold.add(all);
    this.#loose = new Map(stillLoose.map((event) => [event.id, event]));
    this.#mark = mark;
    this.#snapshotKept = false;
    return new Set([...before, ...this.histories.keys()]);
  }

  /** Holds nothing, as after an erasure. Gives the keys of the cards that were there. */
  forget(): ReadonlySet<string> {
    const before = new Set(this.histories.keys());
    this.#fold = new Fold(this.#scheduler);
    this.#loose.clear();
    this.#mark = '';
    this.#snapshotKept = true;
    return before;
  }

  /** How many loose events there must be to seal them; null when there is no need. */
  get sealFrom(): number | null {
    if (!this.#snapshotKept) return 1;
    return this.#loose.size < worthSealing ? null : worthSealing;
  }

  /** Takes note of a seal. Gives the keys of the cards that another tab's events changed. */
  sealed({ events, before, after }: SealResult & { readonly ok: true }): ReadonlySet<string> {
    const changed = this.adopt(events);
    for (const { id } of events) this.#loose.delete(id);
    const inTwoVersions = new Set(events.map(({ id }) => id)).size < events.length;
    // What another tab sealed may not be known here.
    this.#mark = before === this.#mark && !inTwoVersions ? after : null;
    if (before !== after) this.#snapshotKept = false;
    return changed;
  }

  /**
   * A snapshot to be kept, which must hold exactly the sealed events; null when the fold holds others
   * too, as answers given while the seal was under way: then the next time will do.
   */
  snapshot(): { readonly text: string; readonly mark: SealMark } | null {
    if (this.#mark === null || this.#loose.size > 0 || this.#snapshotKept) return null;
    return { text: writeSnapshot(this.#fold, this.#scheduler), mark: this.#mark };
  }

  /** Takes note of a snapshot that was written. */
  keptSnapshot(mark: SealMark): void {
    this.#snapshotKept = mark === this.#mark;
  }
}
