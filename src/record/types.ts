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
  /** Where a scenario stood, of a drill or of Recall; older events lack it. */
  readonly drill?: DrillMark;
  /** Answers for another day than the deck's own: what was set otherwise. */
  readonly day?: DaySet;
  /** The result in words, as shown then. */
  readonly headline: string;
  /** The expected answer in words, as the deck had it then for its own day. */
  readonly expected: string;
  /** What was called, in words: "more power, nose up". Events of before it was kept lack it, and values have none. */
  readonly called?: string;
  /** What was due in the state that was shown, where that is more than the card expects. */
  readonly due?: string;
}

/** Quantity of the day -> value, in the quantity's unit. */
export type DaySet = Readonly<Record<string, number>>;

export interface UndoEvent {
  readonly kind: 'undo';
  readonly id: EventId;
  readonly atMs: number;
  readonly of: EventId;
}

/**
 * A pass that was flown to its end: one event for all that came of it, so that one undo takes all of it
 * back, and an older version carries it whole.
 */
export interface PassEvent {
  readonly kind: 'pass';
  readonly id: EventId;
  readonly atMs: number;
  readonly deck: string;
  readonly deckVersion: string;
  readonly fromGate: string;
  /** With the deck's version and what was called, enough to fly it again. */
  readonly seed: number;
  /** Of errors and restless air: 0 calm, 1 as the deck says, 2 twice. */
  readonly roughness: number;
  readonly pace: PassPace;
  /** Flown in another day than the deck's own: what was set otherwise. */
  readonly day?: DaySet;
  readonly end: PassEnding;
  readonly performance: Performance;
  /** The gates crossed, in order; those of which nothing was worked out are left out. */
  readonly gates: readonly { readonly gate: string; readonly performance: Performance }[];
  /** Rules that count on their cards: missed, or called right where something had to be called. */
  readonly rules: readonly PassRule[];
  /** Gates with a value outside, and which. */
  readonly gatesMissed: readonly { readonly gate: string; readonly quantities: readonly string[] }[];
  /** The result in words, as shown then. */
  readonly headline: string;
}

/** `compressed`: four times as fast. `real`: as it is. `steps`: from call to call, without a clock. */
export type PassPace = 'compressed' | 'real' | 'steps';

export type PassEnding =
  'complete' | 'go-around' | 'needless-go-around' | 'missed-go-around' | 'out-of-bounds' | 'stuck';

export interface PassRule {
  readonly card: string;
  /** How often the rule decided, and how often something else was called. */
  readonly asked: number;
  readonly missed: number;
  readonly critical: boolean;
  /** The expected answer in words, as the deck had it then. */
  readonly expected: string;
}

export type RecordEvent = AnswerEvent | UndoEvent | PassEvent;

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
  /** Called for another day than the deck's own. */
  readonly day?: DaySet;
  /** Called while flying a pass: how long it took wasn't measured, and `elapsedMs` is 0. */
  readonly pass?: true;
  /** The result in words; calls in a pass have none of their own. */
  readonly headline?: string;
  readonly expected: string;
  readonly called?: string;
  readonly due?: string;
}

/** Card histories by `cardKey(deck, card)`. */
export type Histories = ReadonlyMap<string, CardHistory>;
