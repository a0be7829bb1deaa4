/** A value that somebody published, and by what the tool works out its own. */

/**
 * printed: seen in the named document. from memory: to be confirmed. derived: worked out from exact
 * constants. common practice: a fact of the trade without a source.
 */
export type PublishedStatus = 'printed' | 'from memory' | 'derived' | 'common practice';

export interface PublishedValue {
  readonly id: string;
  readonly topic: string;
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** Either way, in the unit: what the source's own rounding asks for. */
  readonly tolerance: number;
  readonly source: string;
  readonly status: PublishedStatus;
  /** Left out for a fact, such as the height of a pattern: there is nothing to work out. */
  readonly compute?: Computation;
}

export interface Computation {
  /** A name of `formulas`. */
  readonly formula: string;
  /** Every argument of it, by name. */
  readonly with: Readonly<Record<string, number>>;
}
