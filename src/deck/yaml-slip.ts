import type { DeckCode } from './codes.ts';

/** A slip of the pen in the text of a deck, found behind an error of the parser. */
export interface Slip {
  readonly code: DeckCode;
  readonly message: string;
  /** Where the slip is, in UTF-16 units from the start of the text. */
  readonly offset: number;
  /** A place whose path says what the slip is in: its value, or the element of a list around it. */
  readonly near: number;
  readonly isOfElement: boolean;
}
