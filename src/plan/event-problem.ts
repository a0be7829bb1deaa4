/** What is wrong with an event, said so that the pilot can mend it. Nothing that was entered is lost. */
export type EventProblemCode =
  | 'event-past'
  | 'no-minutes'
  | 'no-cards'
  | 'no-decks'
  | 'unknown-deck'
  | 'unknown-gate'
  | 'bad-date'
  | 'bad-minutes'
  | 'bad-weight'
  | 'no-session-left'
  | 'too-many-sessions';

export interface EventProblem {
  readonly code: EventProblemCode;
  /** What was found, and the mend, in a sentence or two. */
  readonly message: string;
  /** The part of the event it belongs to: `atMs`, `time`, `decks/2`. */
  readonly at: string;
}
