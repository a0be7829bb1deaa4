/**
 * The record as the app holds it: in memory first, so that what an answer came to is there at once, then
 * on its way to the store, and told to the other tabs. No page, no clock: both come from outside.
 */
import type { Scheduler } from '../memory/types.ts';
import { answerEvent, type AssessedAnswer } from './answer-event.ts';
import type { EventIds } from './event-id.ts';
import { cardKey } from './fold.ts';
import { HeldRecord } from './held.ts';
import type { ImportPlan } from './import-plan.ts';
import { mergeEvents } from './merge.ts';
import { passEvent, type FlownPass } from './pass-event.ts';
import type { RecordProblem } from './problem.ts';
import type { RecordStore, WriteFailure, WriteResult } from './store/store.ts';
import { Tabs, type TabChannel } from './tabs.ts';
import type {
  AnswerEvent,
  CardHistory,
  EventId,
  Histories,
  KeptEvent,
  PassEvent,
  UndoEvent,
} from './types.ts';

export interface RecordParts {
  readonly store: RecordStore;
  readonly scheduler: Scheduler;
  readonly ids: EventIds;
  /** To the other tabs with the same record. */
  readonly channel?: TabChannel | undefined;
}

/** Called with the keys of the cards whose history changed, and `passesKey` of decks; with none when only the state of saving did. */
export type RecordListener = (changed: ReadonlySet<string>) => void;

export interface Appended<E extends KeptEvent> {
  readonly event: E;
  /** How the writing went. Nobody needs to wait for it: `failure` says the same, and subscribers are told. */
  readonly saved: Promise<WriteResult>;
}

export interface ImportReport extends Omit<ImportPlan, 'fresh' | 'contested'> {
  /** False when the file is no backup: the problem says why. */
  readonly ok: boolean;
  /** Events that were not here before. */
  readonly added: number;
  /** Settings that came along, for the app to take or leave. */
  readonly settings: Readonly<Record<string, unknown>> | null;
  readonly saved: WriteResult;
}

export interface Export {
  readonly text: string;
  readonly fileName: string;
  /** What could not be read, and so is missing in it. */
  readonly problems: readonly RecordProblem[];
}

const nothingToWrite: WriteResult = { ok: true };

/** Reads what there is and folds it. Never fails: what can't be read is among `problems`. */
export async function openRecord(parts: RecordParts): Promise<LiveRecord> {
  const record = new LiveRecord(parts);
  await record.lookAgain();
  return record;
}

/** Made by `openRecord`. */
export class LiveRecord {
  readonly #store: RecordStore;
  readonly #ids: EventIds;
  readonly #held: HeldRecord;
  readonly #tabs: Tabs;
  readonly #listeners = new Set<RecordListener>();
  #problems: readonly RecordProblem[] = [];
  #failure: WriteFailure | null = null;

  constructor({ store, scheduler, ids, channel }: RecordParts) {
    this.#store = store;
    this.#ids = ids;
    this.#held = new HeldRecord(scheduler);
    this.#tabs = new Tabs(channel, (message) => {
      if (message.about === 'events') this.#adopt(message.events);
      else if (message.about === 'more-in-store') void this.#readAnew();
      else this.#forget();
    });
  }

  /** Histories by `cardKey(deck, card)`. A history is replaced when it changes; the map may be, too. */
  get histories(): Histories {
    return this.#held.histories;
  }

  /** What is known of one card; null when no answer to it stands. */
  history(deck: string, card: string): CardHistory | null {
    return this.#held.histories.get(cardKey(deck, card)) ?? null;
  }

  /** A deck's passes that stand, oldest first. */
  passes(deck: string): readonly PassEvent[] {
    return this.#held.passes(deck);
  }

  /** What could not be read, and that something could not be written. */
  get problems(): readonly RecordProblem[] {
    if (this.#failure === null) return this.#problems;
    return [...this.#problems, { code: 'not-saved', message: this.#failure.message }];
  }

  /** Why the last write failed; null when all is well. */
  get failure(): WriteFailure | null {
    return this.#failure;
  }

  /** Events that are in memory only, or on their way to the store. */
  get unsaved(): readonly KeptEvent[] {
    return this.#store.pending;
  }

  /** Calls back after each change, also one that another tab made. Gives the way to stop it. */
  subscribe(listener: RecordListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  append(answer: AssessedAnswer, nowMs: number): Appended<AnswerEvent> {
    const event = answerEvent(answer, this.#ids.next(nowMs), nowMs);
    return { event, saved: this.#take(event) };
  }

  /** Puts a pass on record, with all that it comes to on its cards. */
  appendPass(flown: FlownPass, nowMs: number): Appended<PassEvent> {
    const event = passEvent(flown, this.#ids.next(nowMs), nowMs);
    return { event, saved: this.#take(event) };
  }

  /** Takes back an answer, a pass, or an earlier undo, which is a redo; null when the record doesn't hold it. */
  undo(of: EventId, nowMs: number): Appended<UndoEvent> | null {
    if (!this.#held.has(of)) return null;
    const atMs = Math.max(0, Math.floor(nowMs));
    const event: UndoEvent = { kind: 'undo', id: this.#ids.next(nowMs), atMs, of };
    return { event, saved: this.#take(event) };
  }

  /** Takes back the answer or pass of last that still stands, of one deck or of all; null when there is none. */
  undoLast(nowMs: number, deck?: string): Appended<UndoEvent> | null {
    const last = this.#held.lastStanding(deck);
    return last === null ? null : this.undo(last, nowMs);
  }

  /** Tries again to write what could not be written. */
  async flush(): Promise<WriteResult> {
    return this.#noted(await this.#store.flush());
  }

  /** Every event, from the store and from memory, in order of id. */
  async events(): Promise<{
    readonly events: readonly KeptEvent[];
    readonly problems: readonly RecordProblem[];
  }> {
    const { events, problems } = await this.#store.load();
    return { events: mergeEvents(events, this.#held.loose).events, problems };
  }

  /** The whole record as a backup file, with the opened decks; what is in memory also when the store fails. */
  async exportBackup(nowMs: number, settings?: Readonly<Record<string, unknown>>): Promise<Export> {
    const [{ events, problems }, read] = await Promise.all([this.events(), this.#store.readDecks()]);
    const contents = { events, decks: read.decks, ...(settings === undefined ? {} : { settings }) };
    // Files are written and read on one page only: no part of the first one.
    const { backupFileName, writeBackup } = await import('./backup.ts');
    const text = writeBackup(contents, nowMs);
    return { text, fileName: backupFileName(nowMs), problems: [...problems, ...read.problems] };
  }

  /** Takes in a backup: the union of what is here and what is in it. */
  async importBackup(text: string, nowMs: number): Promise<ImportReport> {
    const [{ readBackup }, { planImport }] = await Promise.all([
      import('./read-backup.ts'),
      import('./import-plan.ts'),
    ]);
    const backup = readBackup(text, nowMs);
    const [{ events }, { decks }] = await Promise.all([this.events(), this.#store.readDecks()]);
    const { fresh, contested, ...plan } = planImport(backup, { events, decks });
    const report = { ...plan, ok: backup.ok, added: fresh.length, settings: backup.settings };
    if (!backup.ok) return { ...report, said: '', saved: nothingToWrite };
    const results = [await this.#takeIn(fresh, contested)];
    for (const deck of plan.newDecks) results.push(await this.#store.writeDeck(deck));
    return { ...report, saved: results.find(({ ok }) => !ok) ?? nothingToWrite };
  }

  /**
   * Packs what has gathered, and leaves a snapshot for the next start. For a quiet moment: after the
   * first paint, after a session. Whatever comes between, nothing is lost but the time it would spare.
   */
  async settle(): Promise<void> {
    if (this.#held.mark === null) await this.#readAnew();
    const { mark, sealFrom } = this.#held;
    if (mark === null || sealFrom === null) return;
    const sealed = await this.#store.seal(sealFrom);
    if (!sealed.ok) return;
    this.#notify(this.#held.sealed(sealed));
    const snapshot = this.#held.snapshot();
    if (snapshot === null) return;
    const kept = await this.#store.writeSnapshot(snapshot.text, snapshot.mark);
    if (kept.ok) this.#held.keptSnapshot(snapshot.mark);
  }

  /** Takes in what other tabs have written: for a return to the page, when the channel may have missed something. */
  async lookAgain(): Promise<void> {
    const opened = await this.#store.open();
    const { loose, mark, problems } = opened;
    if (mark === null) this.#problems = problems;
    else if (mark === this.#held.mark) this.#adopt(loose);
    else {
      const changed = this.#held.resume({ ...opened, mark });
      if (changed === null) return await this.#readAnew();
      this.#problems = problems;
      this.#notify(changed);
    }
  }

  /** Removes every answer, here, in the store and in the other tabs. Decks stay. Only when the pilot says so. */
  async erase(): Promise<WriteResult> {
    const result = this.#noted(await this.#store.erase());
    if (result.ok) {
      this.#notify(this.#held.forget());
      this.#tabs.tell({ about: 'erased' });
    }
    return result;
  }

  /** Stops listening to the other tabs, and calling back. */
  close(): void {
    this.#tabs.close();
    this.#listeners.clear();
  }

  /** When the store can't be read, what is in memory stays. */
  async #readAnew(): Promise<void> {
    const loaded = await this.#store.load();
    this.#problems = loaded.problems;
    if (loaded.mark !== null) this.#notify(this.#held.replace(loaded));
  }

  #take(event: KeptEvent): Promise<WriteResult> {
    this.#adopt([event]);
    this.#tabs.tell({ about: 'events', events: [event] });
    return this.#store.append(event).then((result) => this.#noted(result));
  }

  async #takeIn(fresh: readonly KeptEvent[], contested: readonly KeptEvent[]): Promise<WriteResult> {
    if (fresh.length + contested.length === 0) return nothingToWrite;
    this.#adopt(fresh);
    const result = this.#noted(await this.#store.appendMany([...fresh, ...contested]));
    if (contested.length > 0) await this.#readAnew();
    this.#tabs.tell({ about: 'more-in-store' });
    return result;
  }

  #adopt(events: readonly KeptEvent[]): void {
    const changed = this.#held.adopt(events);
    if (changed.size > 0) this.#notify(changed);
  }

  /** Another tab erased the record. What this one has yet to write was not in it. */
  #forget(): void {
    const before = this.#held.forget();
    this.#notify(new Set([...before, ...this.#held.adopt(this.#store.pending)]));
  }

  #noted(result: WriteResult): WriteResult {
    const failure = result.ok ? null : result;
    const changed = failure?.reason !== this.#failure?.reason;
    this.#failure = failure;
    if (changed) this.#notify(new Set());
    return result;
  }

  #notify(changed: ReadonlySet<string>): void {
    for (const listener of [...this.#listeners]) listener(changed);
  }
}
