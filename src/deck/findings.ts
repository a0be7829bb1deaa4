/** One type for everything a tool has to say about a deck. */

export type Severity = 'error' | 'warning' | 'note';

/** Keys and indices from the document's root: `['gates', 3, 'values', 'altitude']`. */
export type DocumentPath = readonly (string | number)[];

/** 1-based, as text editors count. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export interface Finding {
  /** Kebab-case, from the closed lists of the module that makes it (`DeckCode`, `RuleCode`). */
  readonly code: string;
  readonly severity: Severity;
  /** Rule, value found and mend, in one sentence for a person. */
  readonly message: string;
  readonly path: DocumentPath;
  /** The path in words: "gate “Alongside”, altitude, desired". Filled by the loader. */
  readonly where?: string;
  /** Where in the text. Filled by the loader. */
  readonly at?: Place;
  /** A state that shows the fault, for findings about decision tables. */
  readonly counterexample?: Readonly<Record<string, number>>;
}
