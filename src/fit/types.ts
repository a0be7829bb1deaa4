import type { Rating } from '../grading/types.ts';

/** One answer on a card, as the memory model sees it. */
export interface RatedAnswer {
  /** Epoch milliseconds. */
  readonly atMs: number;
  readonly rating: Rating;
}

/** All answers on one card that count, in the order in which they make its memory. */
export type CardAnswers = readonly RatedAnswer[];

/** How a fit is getting on. */
export interface FitProgress {
  /** How often the whole record has been gone through. */
  readonly passes: number;
  /** Mean log loss of the best parameters so far, on the answers fitted to, prior included. */
  readonly logLoss: number;
}

/** Log loss is the mean of -ln of the chance given to what happened; lower is better. */
export interface Comparison {
  readonly inUse: number;
  readonly fitted: number;
}

/** What one fit came to. */
export interface Fit {
  readonly kind: 'fitted';
  /** Whether `parameters` foretold the held-out answers better than those in use, and so may be taken. */
  readonly better: boolean;
  /** The 21 parameters, fitted to the answers before `heldOutFromMs`. */
  readonly parameters: readonly number[];
  /** Epoch milliseconds: answers from here on were held out. */
  readonly heldOutFromMs: number;
  /** How many answers were foretold: first answers on a card, and repeats on the same day, can't be. */
  readonly fittedTo: number;
  readonly heldOut: number;
  /** On the answers fitted to. */
  readonly fittedLoss: Comparison;
  /** On the held-out ones: this decides. */
  readonly heldOutLoss: Comparison;
  /** By how much the held-out loss fell, and the standard error of that figure. */
  readonly gain: number;
  readonly gainError: number;
  readonly passes: number;
  readonly seconds: number;
}

/** Why there is no fit. Nothing changes then. */
export interface NoFit {
  readonly kind: 'none';
  readonly code: 'too-few-answers' | 'stopped';
  readonly message: string;
  readonly mend: string;
}

export type FitOutcome = Fit | NoFit;
