/** A recall session being answered: which card is next, what it was graded, the way back. */
import type { Card } from '../../cards/types.ts';
import { biasOf } from '../../grading/bias.ts';
import {
  answered,
  current,
  looked,
  progress,
  startRun,
  takenBack,
  type RunCard,
  type SessionRun,
} from '../../memory/run.ts';
import type { SessionPlan } from '../../memory/types.ts';
import { quantityOf } from '../../deck/lookup.ts';
import { MOST_REPEATS } from '../../memory/worth.ts';
import { Answering } from './answering.svelte.ts';
import { isSameDay } from './day-set.ts';
import { freshPrompt } from './fresh-prompt.ts';
import { lookAt, type Look } from './look-first.ts';
import type { Settings } from './settings.svelte.ts';
import type { Training } from './training.svelte.ts';

const callsShown = 5;
const unasked = Symbol('unasked');

export class RecallSession {
  readonly #training: Training;
  readonly #settings: Settings;
  readonly #monotonicMs: () => number;
  run = $state.raw<SessionRun>()!;
  answering = $state.raw<Answering | null>(null);
  /** A card missed again and again, to be read before it is asked once more. */
  look = $state.raw<Look | null>(null);
  /** Events of this session, newest last, to take back; null where a card was only shown, `unasked` where the day left it without an answer. */
  #events: (string | null | typeof unasked)[] = [];
  /** New cards that were shown before they were tried: next time they are asked in earnest. */
  readonly #introduced = new Set<string>();
  readonly tally = $state({ desired: 0, adequate: 0, outside: 0 });
  readonly missed = $state<string[]>([]);

  constructor(plan: SessionPlan, training: Training, settings: Settings, monotonicMs: () => number) {
    this.#training = training;
    this.#settings = settings;
    this.#monotonicMs = monotonicMs;
    this.run = startRun(plan);
    this.#ask();
  }

  get finished(): boolean {
    return this.answering === null && this.look === null;
  }

  /** Cards that were asked as often as a session may and not answered desired: they wait for the next one. */
  get givenUp(): readonly string[] {
    return progress(this.run).givenUp;
  }

  /** Of the card that is looked at. */
  get triesLeft(): number {
    return 1 + MOST_REPEATS - (current(this.run)?.repeat ?? 0);
  }

  /** Cards that are not through. A miss adds none: its card comes back, and was one of them already. */
  get cardsLeft(): number {
    return progress(this.run).left;
  }

  /** Calls of the same value, the newest last, for the line under the band. */
  get earlierCalls(): readonly number[] {
    const calls = this.answering ? (this.#training.history(this.answering.prompt.card.id)?.calls ?? []) : [];
    const ask = this.answering?.prompt.ask;
    // Each time a worked value is another number.
    if (ask?.form === 'number' && ask.given) return [];
    // Called for another day, it was another value.
    const ofToday = calls.filter(({ day }) => isSameDay(day, this.#training.daySet));
    return ofToday.flatMap(({ value }) => (value === undefined ? [] : [value])).slice(-callsShown);
  }

  get trend(): string | null {
    const ask = this.answering?.prompt.ask;
    if (ask?.form !== 'number' || !this.answering) return null;
    const calls = this.#training.history(this.answering.prompt.card.id)?.calls ?? [];
    const errors = calls.flatMap(({ signedError }) => (signedError === undefined ? [] : [signedError]));
    return biasOf(errors, quantityOf(this.#training.deck, ask.quantity))?.words ?? null;
  }

  next(): void {
    const { answering } = this;
    if (!answering?.assessment || !answering.mayGoOn) return;
    this.run = answered(this.run, answering.assessment.performance);
    this.#ask();
  }

  /** The card was read: it is asked some others later. Nothing goes on record. */
  readOn(): void {
    if (this.look === null) return;
    this.run = looked(this.run);
    this.#events.push(null);
    this.#ask();
  }

  /** Undoes the last answer, on record too, and asks its card again. */
  takeBack(): boolean {
    if (!this.canTakeBack) return false;
    let event = this.#events.pop();
    for (; event === unasked; event = this.#events.pop()) this.run = takenBack(this.run);
    if (event === undefined) return false;
    // An answer just graded hasn't moved the run on yet.
    if (!this.answering?.assessment) this.run = takenBack(this.run);
    if (event !== null) {
      this.#training.takeBack(event);
      this.#uncount();
    }
    this.#ask();
    return true;
  }

  get canTakeBack(): boolean {
    return this.answering?.assessment != null || this.#events.some((event) => event !== unasked);
  }

  readonly #graded: { card: string; performance: 'desired' | 'adequate' | 'outside' }[] = [];

  #uncount(): void {
    const last = this.#graded.pop();
    if (!last) return;
    this.tally[last.performance] -= 1;
    if (
      last.performance !== 'desired' &&
      !this.#graded.some(({ card, performance }) => card === last.card && performance !== 'desired')
    )
      this.missed.splice(this.missed.indexOf(last.card), 1);
  }

  #count(card: Card, performance: 'desired' | 'adequate' | 'outside'): void {
    this.#graded.push({ card: card.id, performance });
    this.tally[performance] += 1;
    if (performance !== 'desired' && !this.missed.includes(card.id)) this.missed.push(card.id);
  }

  /** The day has changed: what is open is asked anew by its numbers, once the pilot is back. */
  takeDay(): void {
    if (this.finished || this.answering?.assessment) return;
    this.#ask();
    this.answering?.pause();
  }

  /** What the day has left without an answer is passed over. */
  #nextToday(): RunCard | null {
    let item = current(this.run);
    for (; item && this.#training.cardToday(item.id) === null; item = current(this.run)) {
      this.run = answered(this.run, 'desired');
      this.#events.push(unasked);
    }
    return item;
  }

  #ask(): void {
    this.look = null;
    this.answering = null;
    const item = this.#nextToday();
    const card = item && this.#training.cardToday(item.id);
    if (!card) return;
    const prompt = freshPrompt(this.#training, card);
    if (item.lookFirst) {
      this.look = lookAt(this.#training.procedure, prompt);
      return;
    }
    this.answering = new Answering({
      procedure: this.#training.procedure,
      prompt,
      timing: this.#settings.timing,
      desiredInARow: this.#training.history(card.id)?.desiredInARow ?? 0,
      fresh: this.#training.history(card.id) === null && !this.#introduced.has(card.id),
      monotonicMs: this.#monotonicMs,
      onGraded: (assessment, elapsedMs) => {
        if (this.answering!.shown) {
          this.#introduced.add(card.id);
          this.#events.push(null);
          return;
        }
        this.#events.push(this.#training.keep(prompt, 'recall', assessment, elapsedMs));
        this.#count(card, assessment.performance);
      },
    });
  }
}
