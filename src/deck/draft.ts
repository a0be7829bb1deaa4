/** What a check says before the loader adds the path in words and the place in the text. */
import type { DeckCode } from './codes.ts';
import type { DocumentPath, Severity } from './findings.ts';

export interface Draft {
  readonly code: DeckCode;
  /** An error when left out. */
  readonly severity?: Severity;
  readonly message: string;
  readonly path: DocumentPath;
  /** Point to the key that the path ends with, not to its value. */
  readonly onKey?: boolean;
  /** How far into the text that stands at the path, where that can be told. */
  readonly into?: number;
  /** Where in the text, in UTF-16 units from its start, when the path alone can't tell. */
  readonly offset?: number;
}
