/** What a day makes of a deck. */
import type { Band, Deck } from '../deck/types.ts';

/** Quantity id -> value, in the quantity's unit. */
export type State = Readonly<Record<string, number>>;

/** A quantity of the day that has no value today, and why: "outside the chart: temperature 52 °C, it ends at 45 °C". */
export interface NoValue {
  readonly quantity: string;
  readonly why: string;
}

export interface MovedValue {
  readonly gate: string;
  readonly quantity: string;
  /** Null where it has no value on that day. */
  readonly before: Band | null;
  readonly after: Band | null;
  /** What of the day moved it: "8 kt more wind over deck: 52 instead of 60 kt". */
  readonly because: string;
}

export interface DayDeck {
  /** In the numbers of the day; its default day is that day. */
  readonly deck: Deck;
  /** Every quantity of the day that has a value. */
  readonly values: State;
  readonly missing: readonly NoValue[];
  readonly moved: readonly MovedValue[];
}

/** One step of how a quantity of the day comes about. */
export interface WorkingLine {
  /** "Closure = airspeed − wind over deck" */
  readonly says: string;
  /** "= 60 kt − 22 kt" */
  readonly with: string;
  /** "= 38 kt" */
  readonly gives: string;
}
