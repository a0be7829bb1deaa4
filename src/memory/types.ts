import type { CardKind } from '../cards/types.ts';
import type { Rating } from '../grading/types.ts';

/** What is remembered of one card: the three variables of the memory model and when they held. */
export interface CardMemory {
  /** Days until recall falls to 90 %. */
  readonly stability: number;
  /** 1 to 10. */
  readonly difficulty: number;
  /** Epoch milliseconds of the last answer that counted. */
  readonly lastMs: number;
  /** Epoch milliseconds; the card counts as due from the morning of that day on, see `due.ts`. */
  readonly dueMs: number;
  readonly answers: number;
  readonly lapses: number;
}

export interface Scheduler {
  /**
   * The memory after one more answer. With an `atMs` before the last answer (a clock set back, a merged
   * record) no time has passed; it never throws and never loses the answer.
   */
  next(memory: CardMemory | null, rating: Rating, atMs: number, critical: boolean): CardMemory;
  /** Chance of recall, 0 to 1, at `atMs`; 0 for a card never answered. */
  retrievability(memory: CardMemory | null, atMs: number): number;
}

/** A card as the session builder sees it. */
export interface SessionCard {
  readonly id: string;
  readonly kind: CardKind;
  readonly group: string;
  /** The gate it belongs to, if any; for a rule the one at which its phase begins. */
  readonly gate?: string | null;
  /** Place in the procedure, from 0: new cards enter in this order. */
  readonly order: number;
  readonly critical: boolean;
  readonly memory: CardMemory | null;
}

export interface SessionItem {
  readonly id: string;
  readonly why: 'due' | 'new';
  /** How often it is expected to be shown until it is answered desired. */
  readonly showings: number;
}

export interface SessionPlan {
  readonly items: readonly SessionItem[];
  /** Expected length. */
  readonly seconds: number;
  /** What did not fit. */
  readonly leftOver: { readonly due: number; readonly fresh: number };
  /** When nothing is due and nothing new is left: the next time something is. Epoch ms. */
  readonly nextDueMs: number | null;
}
