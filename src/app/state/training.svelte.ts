/**
 * The deck in hand and what the record says of it: cards, histories, sessions. The pages show it and
 * hand answers to it; every rule lives in the core.
 */
import { cardsOf, promptFor } from '../../cards/registry.ts';
import type { Card, Prompt } from '../../cards/types.ts';
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
import type { AnswerEvent, CardHistory, PassEvent } from '../../record/types.ts';
import { compileRules } from '../../rules/compile.ts';
import { seeded } from '../../rules/random.ts';
import type { Procedure } from '../../rules/types.ts';

export interface TrainingSetup {
  readonly record: LiveRecord;
  readonly scheduler: Scheduler;
  /** Epoch milliseconds. */
  readonly nowMs: () => number;
  /** 32-bit seeds for prompts. */
  readonly newSeed: () => number;
}

export class Training {
  readonly procedure: Procedure;
  readonly cards: readonly Card[];
  readonly #setup: TrainingSetup;
  readonly #byId: ReadonlyMap<string, Card>;
  /** Moves when the record does: what is read below is then read again. */
  #version = $state(0);
  readonly #stopListening: () => void;

  constructor(deck: Deck, setup: TrainingSetup) {
    const { procedure } = compileRules(deck);
    if (!procedure) throw new Error(`The deck “${deck.id}” passed its checks but can't be compiled.`);
    this.procedure = procedure;
    this.cards = cardsOf(procedure);
    this.#byId = new Map(this.cards.map((card) => [card.id, card]));
    this.#setup = setup;
    this.#stopListening = setup.record.subscribe(() => this.#version++);
  }

  close(): void {
    this.#stopListening();
  }

  get deck(): Deck {
    return this.procedure.deck;
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

  freshPrompt(card: Card): Prompt {
    return promptFor(this.procedure, card, this.#setup.newSeed());
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
    const cards: SessionCard[] = this.cards.map((card, order) => ({
      id: card.id,
      kind: card.kind,
      group: card.group,
      gate: card.gate,
      order,
      critical: card.critical,
      memory: this.history(card.id)?.memory ?? null,
    }));
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
    const answer = { deck: this.deck, prompt, assessment, mode, elapsedMs, ...(drill ? { drill } : {}) };
    return record.append(answer, nowMs()).event.id;
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

/** Minutes east of UTC at an instant, by this device's time zone. */
export const offsetMinutesAt = (ms: number): number => -new Date(ms).getTimezoneOffset();
