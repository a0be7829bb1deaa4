import type { Source } from '../deck/types.ts';
import type { Answer } from '../cards/types.ts';
import type { Decision, EdgeDistance, Performance } from '../rules/types.ts';

export type Timeliness = 'prompt' | 'late' | 'timed-out';

/** Passed to the memory model. Never shown, never named. */
export type Rating = 1 | 2 | 3 | 4;

/** An answer that can't be graded, and what to type instead. Nothing is lost: the prompt stays open. */
export interface Unreadable {
  readonly code: 'empty' | 'not-a-number' | 'wrong-unit' | 'out-of-range' | 'unknown-choice' | 'wrong-form';
  readonly message: string;
}

export type AnswerDetail =
  | {
      readonly form: 'number';
      readonly value: number;
      readonly signedError: number;
      readonly steps: number;
      readonly passedLimit: 'floor' | 'ceiling' | null;
    }
  | {
      readonly form: 'sequence';
      readonly missing: readonly string[];
      readonly misplaced: readonly string[];
      readonly added: readonly string[];
    }
  | { readonly form: 'choice'; readonly chosen: string; readonly correct: string }
  | {
      readonly form: 'controls';
      readonly decision: Decision;
      readonly edges: readonly EdgeDistance[];
      /** The control whose answer counts most: that of the overriding action, else of the first rule in the phase's order of controls that asks for more than neutral. */
      readonly leading: string;
      readonly perControl: Readonly<
        Record<
          string,
          {
            readonly required: string | null;
            readonly chosen: string;
            readonly verdict: 'right' | 'wrong' | 'opposite' | 'not-asked';
          }
        >
      >;
      readonly missedOverriding: boolean;
    }
  | { readonly form: 'point'; readonly at: readonly [number, number]; readonly distance: number }
  | { readonly form: 'text'; readonly text: string }
  | {
      readonly form: 'none';
      /** Controls only: what the state called for, so that it can be shown. */
      readonly scenario?: { readonly decision: Decision; readonly edges: readonly EdgeDistance[] };
    };

export interface Assessment {
  readonly performance: Performance;
  readonly timeliness: Timeliness;
  readonly rating: Rating;
  readonly critical: boolean;
  /** The result in a few words: "20 ft high", "3 of 6, flaps missing", "wrong way on pitch". */
  readonly headline: string;
  /** What the right answer was, in words. */
  readonly expected: string;
  /** The deck's reason, when it gives one. */
  readonly because: string | null;
  readonly source: Source | null;
  readonly detail: AnswerDetail;
}

export interface AssessContext {
  /** How often this card has been answered desired in a row before. */
  readonly desiredInARow: number;
  /** Scales the window; Infinity when untimed. */
  readonly timing: number;
}

export type Graded =
  | { readonly ok: true; readonly assessment: Assessment; readonly answer: Answer }
  | { readonly ok: false; readonly problem: Unreadable };
