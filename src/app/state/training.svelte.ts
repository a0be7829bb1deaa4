/**
 * The deck in hand and what the record says of it: cards, histories, sessions. The pages show it and
 * hand answers to it; every rule lives in the core.
 */
import type { Card, Prompt } from '../../cards/types.ts';
import type { DayDeck, MovedValue } from '../../day/types.ts';
import type { Deck } from '../../deck/types.ts';
import type { DrillMark } from '../../drill/types.ts';
import type { Assessment } from '../../grading/types.ts';
import { localDayAt } from '../../memory/local-day.ts';
import { secondsPerKind } from '../../memory/seconds.ts';
import { buildSession } from '../../memory/session.ts';
import type { Scheduler, SessionCard, SessionPlan } from '../../memory/types.ts';
import { cardKey } from '../../record/fold.ts';
import type { LiveRecord } from '../../record/live.ts';
import type { FlownPass } from '../../record/pass-event.ts';
import type { AnswerEvent, CardHistory, DaySet, PassEvent } from '../../record/types.ts';
import { compileRules } from '../../rules/compile.ts';
import { seeded } from '../../rules/random.ts';
import type { Procedure } from '../../rules/types.ts';
import { isOwn, sayDay } from './day-set.ts';

export interface TrainingSetup {
  /** All cards of a deck (`src/cards/registry.ts`). */
  readonly cardsOf: (procedure: Procedure) => readonly Card[];
  readonly record: LiveRecord;
  readonly scheduler: Scheduler;
  /** Epoch milliseconds. */
  readonly nowMs: () => number;
  /** 32-bit seeds for prompts. */
  readonly newSeed: () => number;
}

/** A day that the pilot set, and the deck in its numbers. */
export interface SetDay {
  readonly set: DaySet;
  readonly day: DayDeck;
}

/** What is asked, drilled and flown by. */
interface Today {
  readonly procedure: Procedure;
  /** With the answers of the day. A value that the day leaves without a number has none. */
  readonly cards: ReadonlyMap<string, Card>;
  /** Null on the deck's own day. */
  readonly day: DayDeck | null;
  readonly set: DaySet;
}

export class Training {
  /** The deck of its own day: what has been learnt is kept by its cards, whatever the day. */
  readonly ownDeck: Deck;
  readonly cards: readonly Card[];
  readonly #setup: TrainingSetup;
  readonly #byId: ReadonlyMap<string, Card>;
  readonly #own: Today;
  #today = $state.raw<Today>()!;
  /** Moves when the record does: what is read below is then read again. */
  #version = $state(0);
  readonly #stopListening: () => void;

  constructor(deck: Deck, setup: TrainingSetup, day: SetDay | null = null) {
    const procedure = procedureOf(deck);
    this.#setup = setup;
    this.ownDeck = deck;
    this.cards = setup.cardsOf(procedure);
    this.#byId = byId(this.cards);
    this.#own = { procedure, cards: this.#byId, day: null, set: {} };
    this.takeDay(day);
    this.#stopListening = setup.record.subscribe(() => this.#version++);
  }

  /** Everything goes by this day from now on; null is the deck's own. */
  takeDay(day: SetDay | null): void {
    if (!day || isOwn(day.set)) {
      this.#today = this.#own;
      return;
    }
    const procedure = procedureOf(day.day.deck);
    this.#today = { procedure, cards: byId(this.#setup.cardsOf(procedure)), ...day };
  }

  close(): void {
    this.#stopListening();
  }

  /** In the numbers of today. */
  get procedure(): Procedure {
    return this.#today.procedure;
  }

  get deck(): Deck {
    return this.procedure.deck;
  }

  /** Null on the deck's own day. */
  get day(): DayDeck | null {
    return this.#today.day;
  }

  /** What the pilot set of today in place of the deck's own. */
  get daySet(): DaySet {
    return this.#today.set;
  }

  /** "true wind 20 kt"; empty on the deck's own day. */
  get dayWords(): string {
    return sayDay(this.ownDeck, this.daySet);
  }

  /** The card with today's answer; null when it has none today. */
  cardToday(id: string): Card | null {
    return this.#today.cards.get(id) ?? null;
  }

  /** How the day moved the value that a card asks for. */
  moveOf(card: Card): MovedValue | null {
    const [kind, gate, quantity] = card.id.split('/');
    if (kind !== 'value' && kind !== 'limit') return null;
    return this.day?.moved.find((move) => move.gate === gate && move.quantity === quantity) ?? null;
  }

  card(id: string): Card | null {
    return this.#byId.get(id) ?? null;
  }

  history(cardId: string): CardHistory | null {
    void this.#version;
    return this.#setup.record.histories.get(cardKey(this.deck.id, cardId)) ?? null;
  }

  /** Chance of recall now, 0 to 1; null for a card never answered. */
  recallNow(cardId: string): number | null {
    const memory = this.history(cardId)?.memory ?? null;
    return memory && this.#setup.scheduler.retrievability(memory, this.#setup.nowMs());
  }

  get answeredCount(): number {
    return this.cards.filter((card) => this.history(card.id) !== null).length;
  }

  /** 32 bits, for a prompt. */
  newSeed(): number {
    return this.#setup.newSeed();
  }

  secondsFor = $derived.by(() => {
    void this.#version;
    const answers = this.cards.flatMap((card) =>
      (this.history(card.id)?.calls ?? []).flatMap(({ elapsedMs, atMs, pass }) =>
        pass ? [] : [{ cardKind: card.kind, elapsedMs, atMs }],
      ),
    );
    answers.sort((one, other) => one.atMs - other.atMs);
    return secondsPerKind(answers);
  });

  plan(minutes: number): SessionPlan {
    const { scheduler, nowMs } = this.#setup;
    const cards: SessionCard[] = this.cards.flatMap((card, order) => {
      if (this.cardToday(card.id) === null) return [];
      const { id, kind, group, gate, critical } = card;
      return [{ id, kind, group, gate, order, critical, memory: this.history(id)?.memory ?? null }];
    });
    return buildSession({
      cards,
      nowMs: nowMs(),
      minutes,
      secondsFor: this.secondsFor,
      dayAt: (ms) => localDayAt(ms, offsetMinutesAt),
      scheduler,
      // One order for one state of the record: the page may ask again while nothing has changed.
      random: seeded(this.answeredCount),
    });
  }

  /** Puts an answer on record: in memory at once, on its way to the store. Gives the event's id. */
  keep(
    prompt: Prompt,
    mode: AnswerEvent['mode'],
    assessment: Assessment,
    elapsedMs: number,
    drill?: DrillMark,
  ): string {
    const { record, nowMs } = this.#setup;
    // The card as the deck has it for its own day: another day is no edit of the deck.
    const card = this.card(prompt.card.id) ?? prompt.card;
    const answer = { deck: this.deck, prompt: { ...prompt, card }, assessment, mode, elapsedMs };
    const more = { day: this.daySet, ...(drill ? { drill } : {}) };
    return record.append({ ...answer, ...more }, nowMs()).event.id;
  }

  /** Puts a flown pass on record; gives the event's id. */
  keepPass({ start, pace, assessment }: Pick<FlownPass, 'start' | 'pace' | 'assessment'>): string {
    const { record, nowMs } = this.#setup;
    const flown = { deck: this.deck, start, pace, assessment, card: (id: string) => this.card(id) };
    return record.appendPass(flown, nowMs()).event.id;
  }

  /** The deck's passes that stand, oldest first. */
  get passes(): readonly PassEvent[] {
    void this.#version;
    return this.#setup.record.passes(this.deck.id);
  }

  takeBack(eventId: string): void {
    this.#setup.record.undo(eventId, this.#setup.nowMs());
  }
}

function procedureOf(deck: Deck): Procedure {
  const { procedure } = compileRules(deck);
  if (!procedure) throw new Error(`The deck “${deck.id}” passed its checks but can't be compiled.`);
  return procedure;
}

const byId = (cards: readonly Card[]): ReadonlyMap<string, Card> =>
  new Map(cards.map((card) => [card.id, card]));

/** Minutes east of UTC at an instant, by this device's time zone. */
export const offsetMinutesAt = (ms: number): number => -new Date(ms).getTimezoneOffset();
