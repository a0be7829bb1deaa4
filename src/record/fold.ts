/**
 * Events -> what is remembered of each card. The order of ids decides, not that of arrival: any
 * permutation, in any pieces, with any repeats, gives the same.
 *
 * An undo takes back what it names: an answer, or another undo. So an undone undo is a redo, and an
 * answer stands when no standing undo names it. Each undo names one event, so the undos above an
 * answer form a tree, and every answer has one verdict, whatever undos of undos there are. One that
 * names an event not yet known waits for it.
 */
import type { Rating } from '../grading/types.ts';
import type { CardMemory, Scheduler } from '../memory/types.ts';
import type { AnswerEvent, Call, CardHistory, EventId, Histories, KeptEvent } from './types.ts';

/** The key of a card's history. Deck ids hold no slash, so it is unambiguous. */
export const cardKey = (deck: string, card: string): string => `${deck}/${card}`;

/** One answer, standing or not: what it takes to fold its card anew. */
export interface LoggedCall {
  readonly call: Call;
  readonly rating: Rating;
  readonly critical: boolean;
}

/** Everything a fold knows, as plain data: a snapshot of this stands for the events behind it. */
export interface FoldState {
  /** In order of id. `memory` is that after the last standing answer. */
  readonly cards: readonly {
    readonly key: string;
    readonly memory: CardMemory | null;
    readonly log: readonly LoggedCall[];
  }[];
  readonly undos: readonly (readonly [id: EventId, of: EventId])[];
}

interface CardLog {
  /** In order of id once `add` is through. */
  readonly entries: LoggedCall[];
  /** How many entries, from the first, the history holds. */
  folded: number;
  /** Something came out of order or was taken back: fold this card from its start. */
  anew: boolean;
}

/** All histories at once. Contents of one id must be alike; `mergeEvents` sees to that. */
export function foldEvents(events: Iterable<KeptEvent>, scheduler: Scheduler): Histories {
  const fold = new Fold(scheduler);
  fold.add(events);
  return fold.histories;
}

/** A fold that grows. An answer in order of time costs one step of its own card; the rest stays as it is. */
export class Fold {
  readonly #scheduler: Scheduler;
  readonly #logs = new Map<string, CardLog>();
  readonly #cardOfAnswer = new Map<EventId, string>();
  readonly #undos = new Map<EventId, EventId>();
  readonly #undosOf = new Map<EventId, EventId[]>();
  readonly #histories = new Map<string, CardHistory>();

  constructor(scheduler: Scheduler) {
    this.#scheduler = scheduler;
  }

  /** The fold that `state()` was taken from. */
  static restore(state: FoldState, scheduler: Scheduler): Fold {
    const fold = new Fold(scheduler);
    for (const [id, of] of state.undos) fold.#takeUndo(id, of);
    for (const { key, memory, log } of state.cards) {
      fold.#logs.set(key, { entries: [...log], folded: log.length, anew: false });
      for (const { call } of log) fold.#cardOfAnswer.set(call.event, key);
      fold.#keep(
        key,
        memory,
        fold.#standing(log).map(({ call }) => call),
      );
    }
    return fold;
  }

  /** Grows with the fold. A card's history is replaced when it changes, never altered. */
  get histories(): Histories {
    return this.#histories;
  }

  /** True for an answer or undo that has been added. */
  has(id: EventId): boolean {
    return this.#cardOfAnswer.has(id) || this.#undos.has(id);
  }

  /** Takes in events in any order; what it knows already, or doesn't understand, changes nothing. Gives the keys of the cards that changed. */
  add(events: Iterable<KeptEvent>): ReadonlySet<string> {
    const changed = new Set<string>();
    const undos: EventId[] = [];
    for (const event of events) {
      if (event.kind === 'stranger' || this.has(event.id)) continue;
      if (event.kind === 'undo') {
        this.#takeUndo(event.id, event.of);
        undos.push(event.id);
      } else changed.add(this.#takeAnswer(event));
    }
    for (const key of this.#cardsUnder(undos)) {
      this.#logs.get(key)!.anew = true;
      changed.add(key);
    }
    for (const key of changed) this.#foldCard(key);
    return changed;
  }

  /** The answer given last that still stands, of one deck or of all; null when there is none. */
  lastStanding(deck?: string): EventId | null {
    let last: EventId | null = null;
    for (const [key, { calls }] of this.#histories) {
      const id = calls[calls.length - 1]!.event;
      if ((last === null || id > last) && (deck === undefined || key.startsWith(cardKey(deck, ''))))
        last = id;
    }
    return last;
  }

  state(): FoldState {
    const cards = [...this.#logs].map(([key, { entries }]) => ({
      key,
      memory: this.#histories.get(key)?.memory ?? null,
      log: entries,
    }));
    return { cards, undos: [...this.#undos] };
  }

  #takeAnswer(event: AnswerEvent): string {
    const key = cardKey(event.deck, event.card);
    let log = this.#logs.get(key);
    if (log === undefined) this.#logs.set(key, (log = { entries: [], folded: 0, anew: false }));
    const last = log.entries[log.entries.length - 1];
    log.anew ||= (last !== undefined && last.call.event > event.id) || this.#undosOf.has(event.id);
    log.entries.push({ call: callOf(event), rating: event.rating, critical: event.critical });
    this.#cardOfAnswer.set(event.id, key);
    return key;
  }

  #takeUndo(id: EventId, of: EventId): void {
    this.#undos.set(id, of);
    const others = this.#undosOf.get(of);
    if (others) others.push(id);
    else this.#undosOf.set(of, [id]);
  }

  /** Cards of the answers that undos come down to. Undos that undo each other in a ring come down to nothing. */
  #cardsUnder(undos: readonly EventId[]): Set<string> {
    const keys = new Set<string>();
    const walked = new Set<EventId>();
    for (const undo of undos) {
      let at: EventId | undefined = undo;
      while (at !== undefined && !walked.has(at)) {
        walked.add(at);
        const key = this.#cardOfAnswer.get(at);
        if (key !== undefined) keys.add(key);
        at = this.#undos.get(at);
      }
    }
    return keys;
  }

  #foldCard(key: string): void {
    const log = this.#logs.get(key)!;
    if (log.anew) log.entries.sort((one, other) => (one.call.event < other.call.event ? -1 : 1));
    const history = log.anew ? undefined : this.#histories.get(key);
    const fresh = log.anew ? this.#standing(log.entries) : log.entries.slice(log.folded);
    let memory = history?.memory ?? null;
    for (const { call, rating, critical } of fresh)
      memory = this.#scheduler.next(memory, rating, call.atMs, critical);
    log.folded = log.entries.length;
    log.anew = false;
    this.#keep(key, memory, [...(history?.calls ?? []), ...fresh.map(({ call }) => call)]);
  }

  #keep(key: string, memory: CardMemory | null, calls: readonly Call[]): void {
    if (calls.length === 0) this.#histories.delete(key);
    else this.#histories.set(key, { memory, calls, desiredInARow: desiredInARow(calls) });
  }

  #standing(log: readonly LoggedCall[]): readonly LoggedCall[] {
    return log.filter(({ call }) => !this.#undosOf.has(call.event) || this.#stands(call.event));
  }

  /** Whether no standing undo names the answer. Without recursion: a chain of undos may be long. */
  #stands(answer: EventId): boolean {
    const tree: EventId[] = [answer];
    for (const id of tree) for (const undo of this.#undosOf.get(id) ?? []) tree.push(undo);
    const standing = new Set<EventId>();
    // Undos come after what they undo, so from the end each verdict is there when it is needed.
    for (const id of tree.reverse())
      if (!(this.#undosOf.get(id) ?? []).some((undo) => standing.has(undo))) standing.add(id);
    return standing.has(answer);
  }
}

function callOf(event: AnswerEvent): Call {
  return {
    event: event.id,
    atMs: event.atMs,
    performance: event.performance,
    timeliness: event.timeliness,
    elapsedMs: event.elapsedMs,
    ...(event.value === undefined ? {} : { value: event.value }),
    ...(event.signedError === undefined ? {} : { signedError: event.signedError }),
    ...(event.drill === undefined ? {} : { drill: event.drill }),
    expected: event.expected,
  };
}

function desiredInARow(calls: readonly Call[]): number {
  const last = calls.findLastIndex((call) => call.performance !== 'desired');
  return calls.length - 1 - last;
}
