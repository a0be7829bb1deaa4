/** What the rule engine works on: a deck's tables with their conditions turned into interval sets. */
import type { State } from '../day/types.ts';
import type { Deck, DecisionTable, Phase } from '../deck/types.ts';

export interface Interval {
  readonly lo: number;
  readonly hi: number;
  readonly loOpen: boolean;
  readonly hiOpen: boolean;
}

/** Sorted, disjoint, never touching, never empty pieces: one set has one form. */
export type IntervalSet = readonly Interval[];

export type { State };

export interface Rule {
  readonly id: string;
  /** Position in its table, from 0. */
  readonly index: number;
  /** Only inputs that are restrained; within the quantity's range. */
  readonly when: ReadonlyMap<string, IntervalSet>;
  readonly then: string;
  readonly because: string;
  readonly critical: boolean;
}

export interface Table {
  readonly id: string;
  readonly authored: DecisionTable;
  readonly control: string;
  readonly rules: readonly Rule[];
}

export interface PhaseRules {
  readonly phase: Phase;
  /** The box of states that can occur in the phase. */
  readonly box: ReadonlyMap<string, Interval>;
  /** In the order in which they beat each other. */
  readonly overriding: readonly Table[];
  /** One per control that the phase decides. */
  readonly base: readonly Table[];
  /** Control id -> the action meant when no table calls for one. */
  readonly neutral: ReadonlyMap<string, string>;
}

/** A deck ready to be decided with. */
export interface Procedure {
  readonly deck: Deck;
  readonly phases: ReadonlyMap<string, PhaseRules>;
}

export interface Reason {
  readonly table: string;
  readonly rule: string;
  readonly control: string;
  readonly action: string;
  readonly because: string;
  readonly critical: boolean;
}

export interface Decision {
  /**
   * Control -> required action. When overridden, only the overriding action: the rest is not asked.
   * Otherwise one for each control of the phase; a control that no rule answers is missing.
   */
  readonly actions: Readonly<Record<string, string>>;
  readonly overriding: Reason | null;
  readonly reasons: readonly Reason[];
  /** Base tables in which no rule fits. Empty in a deck that passed the analysis. */
  readonly unanswered: readonly string[];
  /** Tables whose hit policy is broken by this state, with the rules that fit. */
  readonly conflicts: readonly { readonly table: string; readonly rules: readonly string[] }[];
}

/** The nearest values of one input, the others held, at which the decision changes. */
export interface EdgeDistance {
  readonly quantity: string;
  readonly below: Edge | null;
  readonly above: Edge | null;
}

export interface Edge {
  /** Where the change lies, in the quantity's unit. */
  readonly at: number;
  /** Always >= 0, in the quantity's unit. */
  readonly distance: number;
  readonly actions: Readonly<Record<string, string>>;
}

export type Performance = 'desired' | 'adequate' | 'outside';

export interface BandGrade {
  readonly performance: Performance;
  /** value - target, in the quantity's unit. */
  readonly signedError: number;
  /** The same in steps of the quantity. */
  readonly steps: number;
  /** A floor or ceiling was passed. */
  readonly passedLimit: 'floor' | 'ceiling' | null;
}
