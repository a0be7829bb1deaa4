/** What is done with one card in a plan, for every course that its answers may take; worked out exactly. */
import { expectedShowings } from '../../memory/worth.ts';
import type { CardMemory } from '../../memory/types.ts';
import { rehearse, type Outcomes } from '../rehearsal.ts';
import type { PlanCard, PlanInput } from '../types.ts';

/** In which session a card is rehearsed next, and what then; null for not again. */
export type Course = {
  /** Place in the list of sessions. */
  readonly session: number;
  /** Chance that it is recalled then. */
  readonly chance: number;
  readonly recalled: Course;
  readonly relearned: Course;
} | null;

/** A course and what comes of it. */
export interface CardPlan {
  readonly course: Course;
  /** Expected chance of recall at the event. */
  readonly atEvent: number;
  /** Expected seconds, by session. */
  readonly usedSeconds: Float64Array;
}

/** A rule for one card. */
export interface Choosing {
  /** The session of the first rehearsal, or `NEVER`. */
  readonly first: number;
  /** The session after one in which the card was left with a memory, or `NEVER`. */
  next(session: number, memory: CardMemory): number;
}

/** Courses less likely than this end at the event without further rehearsals: that is part of the plan. */
export const LEAST_LIKELY = 1e-3;

/** Plays a rule through all outcomes, with the memory model itself. Its figures are exact, not the table's. */
export function cardPlan(input: PlanInput, card: PlanCard, { first, next }: Choosing): CardPlan {
  const { scheduler, sessions, eventMs } = input;
  const usedSeconds = new Float64Array(sessions.length);
  let atEvent = 0;

  function play(memory: CardMemory | null, session: number, likelihood: number): Course {
    if (session >= sessions.length || likelihood < LEAST_LIKELY) {
      atEvent += likelihood * scheduler.retrievability(memory, eventMs);
      return null;
    }
    const { chance, recalled, relearned }: Outcomes = rehearse(scheduler, memory, sessions[session]!.atMs);
    usedSeconds[session]! += likelihood * expectedShowings(chance) * card.seconds;
    const branch = (after: CardMemory, likely: number): Course =>
      likely > 0 ? play(after, next(session, after), likelihood * likely) : null;
    return {
      session,
      chance,
      recalled: branch(recalled, chance),
      relearned: branch(relearned, 1 - chance),
    };
  }

  const course = play(card.memory, first, 1);
  return { course, atEvent, usedSeconds };
}

/** Adds up how likely a card is rehearsed in each session. */
export function addChances(course: Course, likelihood: number, chances: Float64Array): void {
  if (course === null) return;
  chances[course.session]! += likelihood;
  addChances(course.recalled, likelihood * course.chance, chances);
  addChances(course.relearned, likelihood * (1 - course.chance), chances);
}
