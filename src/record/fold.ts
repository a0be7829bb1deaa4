/**
 * Events -> what is remembered of each card, and which passes stand. The order of ids decides, not that of arrival: any
 * permutation, in any pieces, with any repeats, gives the same.
 *
 * An undo takes back what it names: an answer, a pass, or another undo. So an undone undo is a redo, and
 * an answer stands when no standing undo names it. Each undo names one event, so the undos above an
 * answer form a tree, and every answer has one verdict, whatever undos of undos there are. One that
 * names an event not yet known waits for it.
 *
 * A pass counts on many cards: an answer on those of its rules, and cards of the values that were
 * missed fall due, see `pass-event.ts`.
 */
import type { Rating } from '../grading/types.ts';
import type { CardMemory, Scheduler } from '../memory/types.ts';
import { effectsOf } from './pass-event.ts';
import type { AnswerEvent, Call, CardHistory, EventId, Histories, KeptEvent, PassEvent } from './types.ts';

/** The key of a card's history. Deck ids hold no slash, so it is unambiguous. */
export const cardKey = (deck: string, card: string): string => `${deck}/${card}`;

/** Told of when a deck's passes change; no card has this key. */
export const passesKey = (deck: string): string => cardKey(deck, 'passes');

/** What one event comes to on one card, standing or not: what it takes to fold the card anew. */
export type Logged = LoggedCall | LoggedDue;

export interface LoggedCall {
  readonly call: Call;
  readonly rating: Rating;
  readonly critical: boolean;
}

/** A card that was answered before falls due, at once; what is remembered of it stays as it was. */
export interface LoggedDue {
  readonly due: { readonly event: EventId; readonly atMs: number };
}

const eventOf = (entry: Logged): EventId => ('call' in entry ? entry.call.event : entry.due.event);
const callsIn = (log: readonly Logged[]): Call[] =>
  log.flatMap((entry) => ('call' in entry ? [entry.call] : []));

/** Everything a fold knows, as plain data: a snapshot of this stands for the events behind it. */
export interface FoldState {
  /** In order of id. `memory` is that after the last standing answer. */
  readonly cards: readonly {
    readonly key: string;
    readonly memory: CardMemory | null;
    readonly log: readonly Logged[];
  }[];
  readonly passes: readonly PassEvent[];
  readonly undos: readonly (readonly [id: EventId, of: EventId])[];
}

interface CardLog {
  /** In order of id once `add` is through. */
  readonly entries: Logged[];
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
  /** Of answers and passes. */
  readonly #cardsOf = new Map<EventId, readonly string[]>();
  readonly #passes = new Map<EventId, PassEvent>();
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
    for (const pass of state.passes) {
      fold.#passes.set(pass.id, pass);
      fold.#cardsOf.set(pass.id, keysOf(pass));
    }
    for (const { key, memory, log } of state.cards) {
      fold.#logs.set(key, { entries: [...log], folded: log.length, anew: false });
      for (const entry of log) {
        const event = eventOf(entry);
        if (!fold.#passes.has(event)) fold.#cardsOf.set(event, [key]);
      }
      fold.#keep(key, memory, callsIn(fold.#standing(log)));
    }
    return fold;
  }

  /** Grows with the fold. A card's history is replaced when it changes, never altered. */
  get histories(): Histories {
    return this.#histories;
  }

  /** A deck's passes that stand, oldest first. */
  passes(deck: string): readonly PassEvent[] {
    return [...this.#passes.values()]
      .filter((pass) => pass.deck === deck && this.#stands(pass.id))
      .sort((one, other) => (one.id < other.id ? -1 : 1));
  }

  /** True for an answer, pass or undo that has been added. */
  has(id: EventId): boolean {
    return this.#cardsOf.has(id) || this.#undos.has(id);
  }

  /** Takes in events in any order; what it knows already, or doesn't understand, changes nothing. Gives the keys of the cards that changed, and `passesKey` of decks whose passes did. */
  add(events: Iterable<KeptEvent>): ReadonlySet<string> {
    const changed = new Set<string>();
    const undos: EventId[] = [];
    for (const event of events) {
      if (event.kind === 'stranger' || this.has(event.id)) continue;
      if (event.kind === 'undo') {
        this.#takeUndo(event.id, event.of);
        undos.push(event.id);
      } else if (event.kind === 'pass') for (const key of this.#takePass(event)) changed.add(key);
      else changed.add(this.#takeAnswer(event));
    }
    for (const key of this.#cardsUnder(undos)) {
      const log = this.#logs.get(key);
      if (log) log.anew = true;
      changed.add(key);
    }
    for (const key of changed) if (this.#logs.has(key)) this.#foldCard(key);
    return changed;
  }

  /** The answer or pass of last that still stands, of one deck or of all; null when there is none. */
  lastStanding(deck?: string): EventId | null {
    let last: EventId | null = null;
    for (const [key, { calls }] of this.#histories) {
      const id = calls[calls.length - 1]!.event;
      if ((last === null || id > last) && (deck === undefined || key.startsWith(cardKey(deck, ''))))
        last = id;
    }
    for (const { id, deck: of } of this.#passes.values())
      if ((last === null || id > last) && (deck === undefined || of === deck) && this.#stands(id)) last = id;
    return last;
  }

  state(): FoldState {
    const cards = [...this.#logs].map(([key, { entries }]) => ({
      key,
      memory: this.#histories.get(key)?.memory ?? null,
      log: entries,
    }));
    return { cards, passes: [...this.#passes.values()], undos: [...this.#undos] };
  }

  #takeAnswer(event: AnswerEvent): string {
    const key = cardKey(event.deck, event.card);
    this.#log(key, { call: callOf(event), rating: event.rating, critical: event.critical });
    this.#cardsOf.set(event.id, [key]);
    return key;
  }

  #takePass(pass: PassEvent): readonly string[] {
    for (const { card, ...entry } of effectsOf(pass)) this.#log(cardKey(pass.deck, card), entry);
    const keys = keysOf(pass);
    this.#passes.set(pass.id, pass);
    this.#cardsOf.set(pass.id, keys);
    return keys;
  }

  #log(key: string, entry: Logged): void {
    const event = eventOf(entry);
    let log = this.#logs.get(key);
    if (log === undefined) this.#logs.set(key, (log = { entries: [], folded: 0, anew: false }));
    const last = log.entries[log.entries.length - 1];
    log.anew ||= (last !== undefined && eventOf(last) > event) || this.#undosOf.has(event);
    log.entries.push(entry);
  }

  #takeUndo(id: EventId, of: EventId): void {
    this.#undos.set(id, of);
    const others = this.#undosOf.get(of);
    if (others) others.push(id);
    else this.#undosOf.set(of, [id]);
  }

  /** Cards of the answers and passes that undos come down to. Undos that undo each other in a ring come down to nothing. */
  #cardsUnder(undos: readonly EventId[]): Set<string> {
    const keys = new Set<string>();
    const walked = new Set<EventId>();
    for (const undo of undos) {
      let at: EventId | undefined = undo;
      while (at !== undefined && !walked.has(at)) {
        walked.add(at);
        for (const key of this.#cardsOf.get(at) ?? []) keys.add(key);
        at = this.#undos.get(at);
      }
    }
    return keys;
  }

  #foldCard(key: string): void {
    const log = this.#logs.get(key)!;
    if (log.anew) log.entries.sort((one, other) => (eventOf(one) < eventOf(other) ? -1 : 1));
    const history = log.anew ? undefined : this.#histories.get(key);
    const fresh = log.anew ? this.#standing(log.entries) : log.entries.slice(log.folded);
    let memory = history?.memory ?? null;
    for (const entry of fresh)
      memory =
        'due' in entry
          ? memory && dueFrom(memory, entry.due.atMs)
          : this.#scheduler.next(memory, entry.rating, entry.call.atMs, entry.critical);
    log.folded = log.entries.length;
    log.anew = false;
    this.#keep(key, memory, [...(history?.calls ?? []), ...callsIn(fresh)]);
  }

  #keep(key: string, memory: CardMemory | null, calls: readonly Call[]): void {
    if (calls.length === 0) this.#histories.delete(key);
    else this.#histories.set(key, { memory, calls, desiredInARow: desiredInARow(calls) });
  }

  #standing(log: readonly Logged[]): readonly Logged[] {
    return log.filter((entry) => this.#stands(eventOf(entry)));
  }

  /** Whether no standing undo names the event. Without recursion: a chain of undos may be long. */
  #stands(answer: EventId): boolean {
    if (!this.#undosOf.has(answer)) return true;
    const tree: EventId[] = [answer];
    for (const id of tree) for (const undo of this.#undosOf.get(id) ?? []) tree.push(undo);
    const standing = new Set<EventId>();
    // Undos come after what they undo, so from the end each verdict is there when it is needed.
    for (const id of tree.reverse())
      if (!(this.#undosOf.get(id) ?? []).some((undo) => standing.has(undo))) standing.add(id);
    return standing.has(answer);
  }
}

const keysOf = (pass: PassEvent): string[] => [
  ...effectsOf(pass).map(({ card }) => cardKey(pass.deck, card)),
  passesKey(pass.deck),
];

/** Due no later than an instant; never before the answer that it counts from. */
const dueFrom = (memory: CardMemory, atMs: number): CardMemory => ({
  ...memory,
  dueMs: Math.min(memory.dueMs, Math.max(atMs, memory.lastMs)),
});

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
    ...(event.day === undefined ? {} : { day: event.day }),
    headline: event.headline,
    expected: event.expected,
    ...(event.called === undefined ? {} : { called: event.called }),
    ...(event.due === undefined ? {} : { due: event.due }),
  };
}

function desiredInARow(calls: readonly Call[]): number {
  const last = calls.findLastIndex((call) => call.performance !== 'desired');
  return calls.length - 1 - last;
}
