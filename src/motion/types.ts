/**
 * A pass: a procedure flown from a gate to its end, moved by the deck's own rates and by what the pilot
 * does. A `Pass` is a value: `advance` and `correct` give a new one and leave the old as it was.
 *
 * can-fly.ts   canFly(procedure): Flyable
 * start.ts     startPass(procedure, start): Pass
 * advance.ts   advance(pass, ms): Pass            on to the next decision point or the end, at most `ms`
 *              advanceToDecision(pass): Pass      the same without a bound
 *              askHere(pass): Pass                a decision point where the pass stands, for a call unasked
 * advance-to-call.ts  advanceToCall(pass): Pass   on to the next point that is worth a stop
 * correct.ts   correct(pass, chosen): Pass        answers the open decision point
 * state-at.ts  stateAt(pass, tMs): PassMoment     smooth in between, for gauges and pictures
 *              momentNow(pass): PassMoment
 * assess.ts    assessPass(pass): PassAssessment
 * trace.ts     traceOf(pass, quantity): Trace     a line of a strip chart, with the bands it passes
 *
 * The loop of a page: pass = startPass(…); while (!pass.ended) { show `stateAt` as time goes on up to
 * `pass.nowMs`; if (pass.open) pass = correct(pass, what the pilot chose); pass = advanceToCall(pass) }.
 */
import type { Band } from '../deck/types.ts';
import type { BandGrade, Decision, Performance, Procedure, State } from '../rules/types.ts';

/** From which gates a pass can begin, and why not from the others. */
export interface Flyable {
  /** In the order they are flown. */
  readonly fromGates: readonly string[];
  /** Phases that can't be flown, with the reason in words. */
  readonly grounded: readonly { readonly phase: string; readonly why: string }[];
}

export interface PassStart {
  readonly fromGate: string;
  /** The same seed, day and corrections make the same pass. */
  readonly seed: number;
  /** Quantity -> value, in place of the deck's settings of the day. */
  readonly day?: Readonly<Record<string, number>>;
  /** Scales errors at the start and restless air: 0 none, 1 as the deck says (the default), 2 twice. */
  readonly roughness?: number;
}

/** Where the pass is at a moment. Values are not rounded. */
export interface PassMoment {
  readonly tMs: number;
  readonly phase: string;
  /** Every quantity known: those of the phase, of the day, and what earlier phases left. */
  readonly state: State;
  /** Change per second, for trend arrows. */
  readonly rates: State;
  /** Control -> action that works at this moment (after its lag); only those that do something. */
  readonly held: Readonly<Record<string, string>>;
}

/** Why the pass stands still. `rules`: rules that beat all others begin to fit. `limit`: a limit was passed. `called`: the pilot called unasked. */
export type WhyAsked = 'time' | 'rules' | 'limit' | 'called';

export interface DecisionPoint {
  readonly index: number;
  readonly tMs: number;
  readonly phase: string;
  readonly why: WhyAsked;
  /** What the gauges show: the phase's quantities in steps, within what can occur in it. */
  readonly state: State;
  /** What the rules ask for in that state. */
  readonly decision: Decision;
  /** What was done; null while the point is open. Controls left out were left in neutral. */
  readonly chosen: Readonly<Record<string, string>> | null;
  /** Nobody was asked: the rules called for nothing, and that is what was done. Not graded. */
  readonly passedBy?: true;
}

export interface Crossing {
  readonly gate: string;
  readonly tMs: number;
  /** The phase that led to it. */
  readonly phase: string;
  /** The gate's values that the pass works out, in the gate's order, in steps. Others aren't here. */
  readonly values: readonly CrossedValue[];
  /** The worst of the values; null when none is worked out. */
  readonly performance: Performance | null;
}

export interface CrossedValue {
  readonly quantity: string;
  readonly value: number;
  readonly band: Band;
  readonly grade: BandGrade;
  /** When what the next phase brings of it has come in; left out where it is there at the gate. */
  readonly thereMs?: number;
}

/**
 * `complete`: through the last gate. `go-around`: called. `missed-go-around`: the rules demanded it, and
 * it had not been called by the end of the phase. `out-of-bounds`: a quantity left what can occur in the
 * phase. `stuck`: the phase did not come to its end in time.
 */
export type PassEnd =
  | { readonly kind: 'complete'; readonly tMs: number }
  | { readonly kind: 'go-around'; readonly tMs: number; readonly demanded: boolean }
  | { readonly kind: 'missed-go-around'; readonly tMs: number }
  | { readonly kind: 'out-of-bounds'; readonly tMs: number; readonly quantity: string }
  | { readonly kind: 'stuck'; readonly tMs: number };

/** A limit of a phase that was passed, once for each time it was. */
export interface LimitPassed {
  readonly tMs: number;
  readonly phase: string;
  readonly quantity: string;
  readonly limit: 'floor' | 'ceiling';
}

/** When a phase was flown. */
export interface Leg {
  readonly phase: string;
  readonly fromMs: number;
  /** Null in the phase that is being flown. */
  readonly toMs: number | null;
}

export interface Pass {
  readonly procedure: Procedure;
  readonly start: PassStart;
  /** Up to where it has been flown, from 0. */
  readonly nowMs: number;
  readonly phase: string;
  readonly legs: readonly Leg[];
  /** Every point so far; the last one is open when `open` is not null. */
  readonly decisions: readonly DecisionPoint[];
  /** The point that waits for an answer: `advance` goes on only after `correct`. */
  readonly open: DecisionPoint | null;
  readonly crossings: readonly Crossing[];
  readonly limitsPassed: readonly LimitPassed[];
  readonly ended: PassEnd | null;
  /** Where it was at each step, from 0. For `stateAt` and `traceOf`. */
  readonly samples: readonly Sample[];
  /** Every action called, from the first. */
  readonly held: readonly HeldAction[];
  /** What the engine goes on from; of no meaning outside. */
  readonly inner: PassInner;
}

export interface Sample {
  readonly tMs: number;
  readonly phase: string;
  readonly state: State;
}

/** An action called: it works from `fromMs` up to before `toMs`, which is infinite while it is held. */
export interface HeldAction {
  readonly control: string;
  readonly action: string;
  readonly fromMs: number;
  readonly toMs: number;
}

export interface PassInner {
  readonly enteredMs: number;
  readonly lastDecisionMs: number;
  readonly nextDecisionMs: number;
  /** Gates on the way of the phase that are still ahead. */
  readonly ahead: readonly string[];
  /** What the rules demanded over all others in this phase was not called. */
  readonly isMissed: boolean;
  /** Limits that are passed now: `quantity/floor`. */
  readonly past: readonly string[];
  /** What came in with the phase and is still on its way. */
  readonly coming: readonly Coming[];
}

/** A change that a phase brings, spread over time: per second, up to before `toMs`. */
export interface Coming {
  readonly quantity: string;
  readonly perS: number;
  readonly toMs: number;
}

/** Of one answered decision point. */
export type Verdict = 'right' | 'partly' | 'wrong' | 'missed-go-around' | 'needless-go-around';

export interface DecisionMark {
  readonly point: DecisionPoint;
  readonly verdict: Verdict;
  /** Controls whose action was not the required one. */
  readonly faults: readonly {
    readonly control: string;
    readonly required: string;
    readonly chosen: string;
    readonly opposite: boolean;
    /** The rule that asked for it; null when the control was to be left in neutral. */
    readonly rule: { readonly table: string; readonly rule: string } | null;
  }[];
}

/** A rule and how its calls went in this pass: one entry for each rule that was asked for. */
export interface RuleTally {
  readonly table: string;
  readonly rule: string;
  readonly asked: number;
  readonly missed: number;
}

export interface PassAssessment {
  readonly crossings: readonly Crossing[];
  readonly decisions: readonly DecisionMark[];
  readonly rules: readonly RuleTally[];
  /** Gates with a value outside, with those quantities. */
  readonly gatesMissed: readonly { readonly gate: string; readonly quantities: readonly string[] }[];
  readonly limitsPassed: readonly LimitPassed[];
  readonly ended: PassEnd | null;
  /**
   * Desired or adequate: the worst crossing of a pass flown to its end, or of one ended by a go-around
   * that the rules demanded (then of the gates before it, at best desired). Outside: any other end, a
   * missed or needless go-around, a critical limit passed, or a crossing outside.
   */
  readonly performance: Performance;
  /** In a sentence: "Flown to the end: 1 gate outside and 5 desired." */
  readonly headline: string;
}

/** A line of a strip chart. */
export interface Trace {
  readonly quantity: string;
  /** In order of time; the line breaks where the quantity isn't worked out. */
  readonly stretches: readonly (readonly { readonly tMs: number; readonly value: number }[])[];
  /** The bands of the gates crossed that grade it, with the value graded and when it was there. */
  readonly bands: readonly {
    readonly gate: string;
    readonly tMs: number;
    readonly thereMs: number;
    readonly value: number;
    readonly band: Band;
  }[];
  /** Actions with an effect on it while they worked. */
  readonly actions: readonly HeldAction[];
}
