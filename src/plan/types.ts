/** A date to be ready for, the time there is until then, and what a plan for it is made of. */
import type { CardMemory, Scheduler } from '../memory/types.ts';

/** A deck that counts for an event. */
export interface EventDeck {
  /** The deck's id. */
  readonly deck: string;
  /** Ids of the gates that count; null when the whole deck does. */
  readonly gates: readonly string[] | null;
}

/** Time set aside for practice. */
export interface PracticeSession {
  /** When it begins; epoch milliseconds. */
  readonly atMs: number;
  readonly minutes: number;
}

/** When there is time: either each session by itself, or the same each week. */
export type PracticeTime =
  | { readonly form: 'sessions'; readonly sessions: readonly PracticeSession[] }
  | {
      readonly form: 'weekly';
      /** Minutes on each day of the week, from Monday to Sunday; 0 for a day without. */
      readonly minutes: readonly number[];
      /** Local time at which a session begins, in minutes after midnight. */
      readonly startMinute: number;
    };

/** What a card that is recalled at the event counts for. */
export interface EventWeights {
  readonly critical: number;
  readonly other: number;
}

export interface TrainingEvent {
  readonly name: string;
  /** When it begins; epoch milliseconds. */
  readonly atMs: number;
  readonly decks: readonly EventDeck[];
  readonly time: PracticeTime;
  readonly weights: EventWeights;
}

/** A card as the planner sees it. */
export interface PlanCard {
  readonly id: string;
  /** Null for a card never answered. */
  readonly memory: CardMemory | null;
  /** For one showing: answering it and reading what was right. Above 0. */
  readonly seconds: number;
  /** What it counts for when it is recalled at the event. Above 0. */
  readonly weight: number;
}

export interface PlanInput {
  readonly cards: readonly PlanCard[];
  /** In order of time, none after the event. At most `MOST_SESSIONS`. */
  readonly sessions: readonly PracticeSession[];
  /** When it counts; epoch milliseconds. */
  readonly eventMs: number;
  readonly scheduler: Scheduler;
}

/** The planner's work grows with the square of their number. */
export const MOST_SESSIONS = 30;
