import type { DeckCode } from '../../../../src/deck/codes.ts';

/** One edit of the fixture deck, and the one finding it makes. */
export interface Fault {
  readonly code: DeckCode;
  /** For codes that are an error or a warning, as the case may be. */
  readonly severity?: 'warning';
  /** A piece of the deck that occurs once, and what is put in its place. */
  readonly edit: readonly [from: string, to: string];
  /** How the text goes on from the finding's place. */
  readonly at: string;
  readonly where: string;
  readonly message: string;
}
