/** A formula that published values can name: a function of `src/motion`, with names for what it takes. */
export interface NamedFormula {
  /** As it would be written down. */
  readonly says: string;
  readonly takes: readonly string[];
  /** @param given in the order of `takes`. @returns null where there is no answer. */
  readonly gives: (...given: number[]) => number | null;
}

/** Name -> formula. A name says what comes out, and in which unit. */
export type Formulas = Readonly<Record<string, NamedFormula>>;

export const formula = (says: string, gives: NamedFormula['gives'], ...takes: string[]): NamedFormula => ({
  says,
  takes,
  gives,
});
