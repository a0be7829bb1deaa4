/**
 * A session: which cards, and in which order, for the minutes the pilot gives.
 *
 * Due cards come before new ones, and new ones only when no due card is left over: what has been learnt
 * is kept first, and the number of new cards settles by itself at what the minutes can keep up.
 * - Due: critical cards first; within each, by the gain of `worth.ts` per expected second, which
 *   puts first what loses most by waiting. One that is too long for what is left of the time
 *   makes room for the next that fits.
 * - New: as the procedure goes, none passed over.
 * - A rule that was drilled before its gate was ever met waits: it is neither due nor new until another
 *   card of the gate has been answered. Else one drill of all phases would fill the next sessions with
 *   corrections for places that the pilot doesn't know yet.
 *
 * Then they are interleaved, see `interleave.ts`. Never empty while anything is due or new, however
 * few the minutes. The first session of all has only new cards: it follows the procedure.
 */
import type { CardKind } from '../cards/types.ts';
import { shuffled, type Random } from '../rules/random.ts';
import { isDue, nextDueMs } from './due.ts';
import { metGates } from './met.ts';
import { interleaved } from './interleave.ts';
import type { LocalDay } from './local-day.ts';
import type { CardMemory, Scheduler, SessionCard, SessionItem, SessionPlan } from './types.ts';
import { expectedShowings, rehearsalGain } from './worth.ts';

export interface SessionInput {
  /** Every card of the deck once; in any order. */
  readonly cards: readonly SessionCard[];
  readonly nowMs: number;
  readonly minutes: number;
  /** For one showing of a card: answering it and reading what was right. See `seconds.ts`. */
  readonly secondsFor: (kind: CardKind) => number;
  /** The pilot's day of an instant: `localDayAt` with the offset of where the pilot is now. */
  readonly dayAt: (ms: number) => LocalDay;
  readonly scheduler: Scheduler;
  /** At most this many new cards; without it, as many as fit. */
  readonly newPerSession?: number;
  /** With it, rehearsals that may change places do, so that no card becomes the cue of the next. */
  readonly random?: Random;
}

/** One card that could be in the session, with what it would take. */
interface Choice extends SessionCard {
  readonly showings: number;
  readonly seconds: number;
}

export function buildSession(input: SessionInput): SessionPlan {
  const { cards, nowMs, dayAt } = input;
  const today = dayAt(nowMs);
  const asked = askable(cards);
  const due = asked.filter(({ memory }) => memory !== null && isDue(memory, today));
  const fresh = cards.filter(({ memory }) => memory === null);

  const budget = new Budget(input.minutes * 60);
  const dueChosen = inOrderOfWorth(due, input).filter((choice) => budget.take(choice));
  const roomForNew = dueChosen.length === due.length ? (input.newPerSession ?? Infinity) : 0;
  const freshChosen = firstThat(
    inProcedureOrder(fresh)
      .slice(0, roomForNew)
      .map((card) => choiceOf(card, input)),
    (choice) => budget.take(choice),
  );

  const wanted = input.random ? shuffled(dueChosen, input.random) : dueChosen;
  const items = interleaved(wanted, freshChosen).map(itemOf);
  return {
    items,
    seconds: budget.spent,
    leftOver: { due: due.length - dueChosen.length, fresh: fresh.length - freshChosen.length },
    nextDueMs: items.length > 0 ? null : nextDueMs(asked, nowMs, dayAt),
  };
}

/** All but rules that were drilled at gates never met. */
function askable(cards: readonly SessionCard[]): readonly SessionCard[] {
  const met = metGates(cards);
  return cards.filter(
    ({ kind, gate, memory }) => memory === null || kind !== 'rule' || gate == null || met(gate),
  );
}

function choiceOf(card: SessionCard, { scheduler, nowMs, secondsFor }: SessionInput): Choice {
  const showings = expectedShowings(scheduler.retrievability(card.memory, nowMs));
  return { ...card, showings, seconds: showings * secondsFor(card.kind) };
}

function inOrderOfWorth(due: readonly SessionCard[], input: SessionInput): Choice[] {
  const ranked = inProcedureOrder(due).map((card) => {
    const choice = choiceOf(card, input);
    const gain = rehearsalGain(input.scheduler, card.memory as CardMemory, card.critical, input.nowMs);
    return { choice, worth: gain / choice.seconds };
  });
  ranked.sort(
    (one, other) => Number(other.choice.critical) - Number(one.choice.critical) || other.worth - one.worth,
  );
  return ranked.map(({ choice }) => choice);
}

const inProcedureOrder = (cards: readonly SessionCard[]): SessionCard[] =>
  [...cards].sort((one, other) => one.order - other.order);

const itemOf = ({ id, memory, showings }: Choice): SessionItem => ({
  id,
  why: memory === null ? 'new' : 'due',
  showings,
});

/** Items up to the first that is refused. */
function firstThat<T>(items: readonly T[], accept: (item: T) => boolean): readonly T[] {
  const refused = items.findIndex((item) => !accept(item));
  return refused < 0 ? items : items.slice(0, refused);
}

/** Seconds to give away. The first taker gets what it asks for, however much. */
class Budget {
  readonly #seconds: number;
  spent = 0;

  constructor(seconds: number) {
    this.#seconds = seconds;
  }

  take({ seconds }: Choice): boolean {
    if (this.spent > 0 && !(this.spent + seconds <= this.#seconds)) return false;
    this.spent += seconds;
    return true;
  }
}
