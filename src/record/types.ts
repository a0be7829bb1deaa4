import type { CardKind } from '../cards/types.ts';
import type { DrillMark } from '../drill/types.ts';
import type { Rating, Timeliness } from '../grading/types.ts';
import type { CardMemory } from '../memory/types.ts';
import type { Performance } from '../rules/types.ts';

/** UUID version 7 (RFC 9562): unique on any device, and sorts by time. */
export type EventId = string;

export interface AnswerEvent {
  readonly kind: 'answer';
  readonly id: EventId;
  /** Epoch milliseconds by the device's clock. */
  readonly atMs: number;
  readonly deck: string;
  readonly deckVersion: string;
  readonly card: string;
  readonly cardKind: CardKind;
  readonly critical: boolean;
  readonly mode: 'recall' | 'drill';
  /** With the deck's version, enough to draw the same prompt again. */
  readonly seed: number;
  readonly performance: Performance;
  readonly timeliness: Timeliness;
  readonly rating: Rating;
  readonly elapsedMs: number;
  /** Number answers only: what was called, and its error in the quantity's unit. */
  readonly value?: number;
  readonly signedError?: number;
  /** Scenarios of a drill only; events of before there were drills at edges lack it. */
  readonly drill?: DrillMark;
  /** The result in words, as shown then. */
  readonly headline: string;
  /** The expected answer in words, as the deck had it then. */
  readonly expected: string;
}

export interface UndoEvent {
  readonly kind: 'undo';
  readonly id: EventId;
  readonly atMs: number;
  readonly of: EventId;
}

export type RecordEvent = AnswerEvent | UndoEvent;

/**
 * An event of a kind that this version doesn't know, from a newer one: not counted, but kept word for
 * word, so that nothing is lost on the way through an older device.
 */
export interface StrangerEvent {
  readonly kind: 'stranger';
  readonly id: EventId;
  readonly atMs: number;
  readonly raw: Readonly<Record<string, unknown>>;
}

/** Whatever the record holds on to. Known events may carry further fields of a newer version; they are kept too. */
export type KeptEvent = RecordEvent | StrangerEvent;

/** A deck that the pilot opened from a file, as its author wrote it. */
export interface DeckFile {
  readonly id: string;
  readonly version: string;
  readonly text: string;
}

/** What the fold knows of one card of one deck. */
export interface CardHistory {
  readonly memory: CardMemory | null;
  /** Oldest first, undone ones left out. Only what lists and bias need. */
  readonly calls: readonly Call[];
  /** Desired answers in a row, up to the last. */
  readonly desiredInARow: number;
}

export interface Call {
  readonly event: EventId;
  readonly atMs: number;
  readonly performance: Performance;
  readonly timeliness: Timeliness;
  readonly elapsedMs: number;
  readonly value?: number;
  readonly signedError?: number;
  readonly drill?: DrillMark;
  readonly expected: string;
}

/** Card histories by `cardKey(deck, card)`. */
export type Histories = ReadonlyMap<string, CardHistory>;
