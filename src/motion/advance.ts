/** Flies a pass on, step by step, to where something is asked of the pilot. */
import { decideIn } from '../rules/decide.ts';
import type { State } from '../rules/types.ts';
import { crossingOf } from './crossing.ts';
import { comingIn } from './entry.ts';
import { flownPhase, isAt, phaseFrom, ratesIn, type FlownPhase } from './phase-motion.ts';
import { restlessAir } from './restless-air.ts';
import { seenIn, within } from './seen.ts';
import { enter, gatesAhead } from './start.ts';
import type {
  Coming,
  Crossing,
  DecisionPoint,
  HeldAction,
  Leg,
  LimitPassed,
  Pass,
  PassEnd,
  Sample,
  WhyAsked,
} from './types.ts';

/** Fixed, so that the same pass comes out however it is advanced. */
export const stepMs = 100;
const usualDecisionS = 2;
/** Between two decisions at least, so that one can work before the next is asked. */
const soonestMs = 1000;
/** How often the gauges are looked at for what beats all else. */
const scanMs = 500;
/** A phase that takes longer than this and has no `longestS` won't come to an end. */
const mostPhaseMs = 300_000;

export const advanceToDecision = (pass: Pass): Pass => advance(pass, Infinity);

/** Flies on to the next decision point or to the end, but no further than `ms`. An open point waits. */
export function advance(pass: Pass, ms: number): Pass {
  if (pass.open || pass.ended) return pass;
  const flight = new Flight(pass);
  const untilMs = pass.nowMs + ms;
  flight.askIfDue();
  while (!flight.open && !flight.ended && flight.nowMs + stepMs <= untilMs) {
    flight.step();
    flight.askIfDue();
  }
  return flight.asPass();
}

/**
 * A decision point where the pass stands, whether it would be asked there or not: for a call that comes
 * unasked. What is still coming in is taken for come: who calls for what is plainly on its way calls right.
 */
export function askHere(pass: Pass): Pass {
  if (pass.open || pass.ended) return pass;
  const flight = new Flight(pass);
  flight.ask('called');
  return flight.asPass();
}

class Flight {
  nowMs: number;
  open: DecisionPoint | null = null;
  ended: PassEnd | null = null;
  #flown: FlownPhase;
  #state: State;
  #enteredMs: number;
  #lastDecisionMs: number;
  #nextDecisionMs: number;
  #ahead: readonly string[];
  #isMissed: boolean;
  #past: readonly string[];
  #coming: readonly Coming[];
  #hasNewLimit = false;
  readonly #pass: Pass;
  readonly #samples: Sample[] = [];
  readonly #crossings: Crossing[] = [];
  readonly #limits: LimitPassed[] = [];
  #legs: readonly Leg[];
  readonly #held: readonly HeldAction[];
  readonly #air = new Map<string, (tMs: number) => number>();

  constructor(pass: Pass) {
    this.#pass = pass;
    this.nowMs = pass.nowMs;
    this.#flown = flownPhase(pass.procedure, pass.phase)!;
    this.#state = pass.samples.at(-1)!.state;
    this.#legs = pass.legs;
    this.#held = pass.held.filter(({ toMs }) => toMs > pass.nowMs);
    const { inner } = pass;
    this.#enteredMs = inner.enteredMs;
    this.#lastDecisionMs = inner.lastDecisionMs;
    this.#nextDecisionMs = inner.nextDecisionMs;
    this.#ahead = inner.ahead;
    this.#isMissed = inner.isMissed;
    this.#past = inner.past;
    this.#coming = inner.coming;
  }

  step(): void {
    const before = this.#state;
    const { ranges, flown } = this.#flown;
    const working = this.#held.filter(({ fromMs, toMs }) => fromMs <= this.nowMs && this.nowMs < toMs);
    const rates = ratesIn(this.#flown, before, working, (id) => this.#airOf(id));
    for (const { quantity, perS } of this.#coming) rates[quantity]! += perS;
    const after: Record<string, number> = { ...before };
    for (const id of flown) after[id] = within(ranges.get(id)!, before[id]! + (rates[id]! * stepMs) / 1000);
    this.nowMs += stepMs;
    this.#coming = this.#coming.filter(({ toMs }) => toMs > this.nowMs);
    this.#state = after;
    this.#noteLimits(after);
    this.#crossGates(before, after);
    this.#samples.push({ tMs: this.nowMs, phase: this.#flown.phase.id, state: this.#state });
  }

  askIfDue(): void {
    const why = this.ended ? null : this.#whyAsk();
    if (why) this.ask(why);
  }

  ask(why: WhyAsked): void {
    const { phase, plan, rules } = this.#flown;
    const state = seenIn(this.#flown, why === 'called' ? this.#withWhatComes() : this.#state);
    this.open = {
      index: this.#pass.decisions.length,
      tMs: this.nowMs,
      phase: phase.id,
      why,
      state,
      decision: decideIn(rules, state),
      chosen: null,
    };
    this.#lastDecisionMs = this.nowMs;
    this.#nextDecisionMs = this.nowMs + 1000 * (plan.decideEveryS ?? usualDecisionS);
    this.#hasNewLimit = false;
  }

  #whyAsk(): WhyAsked | null {
    // What is still coming in calls for no correction: it would be made twice.
    if (this.nowMs >= this.#nextDecisionMs && this.#coming.length === 0) return 'time';
    if (this.nowMs - this.#lastDecisionMs < soonestMs) return null;
    if (this.#hasNewLimit) return 'limit';
    if (this.#isMissed || this.nowMs % scanMs !== 0) return null;
    return decideIn(this.#flown.rules, seenIn(this.#flown, this.#state)).overriding ? 'rules' : null;
  }

  #withWhatComes(): State {
    const state: Record<string, number> = { ...this.#state };
    for (const { quantity, perS, toMs } of this.#coming)
      state[quantity] = state[quantity]! + (perS * (toMs - this.nowMs)) / 1000;
    return state;
  }

  #airOf(quantity: string): number {
    const { seed, roughness = 1 } = this.#pass.start;
    const air = this.#air.get(quantity) ?? restlessAir(seed, quantity);
    this.#air.set(quantity, air);
    return roughness * air(this.nowMs);
  }

  #noteLimits(state: State): void {
    const { phase } = this.#flown;
    const past: string[] = [];
    for (const [quantity, { floor, ceiling }] of Object.entries(phase.limits ?? {})) {
      const value = state[quantity];
      if (value === undefined) continue;
      const limit =
        floor !== undefined && value < floor
          ? 'floor'
          : ceiling !== undefined && value > ceiling
            ? 'ceiling'
            : null;
      if (limit === null) continue;
      past.push(quantity);
      if (this.#past.includes(quantity)) continue;
      this.#limits.push({ tMs: this.nowMs, phase: phase.id, quantity, limit });
      this.#hasNewLimit = true;
    }
    this.#past = past;
  }

  #crossGates(before: State, after: State): void {
    const { phase, plan, flown } = this.#flown;
    const secondsIn = (this.nowMs - this.#enteredMs) / 1000;
    for (const { gate, at } of plan.through ?? [])
      if (this.#ahead.includes(gate) && isAt(at, before, after, secondsIn)) {
        this.#cross(gate, flown, after);
        this.#ahead = this.#ahead.filter((id) => id !== gate);
      }
    if (isAt(plan.until, before, after, secondsIn) || secondsIn >= (plan.longestS ?? Infinity)) {
      this.#leavePhase(after);
      return;
    }
    const strayed = Object.entries(phase.state).find(
      ([id, [lo, hi]]) => after[id]! < lo || after[id]! > hi,
    )?.[0];
    if (strayed !== undefined) this.#end({ kind: 'out-of-bounds', tMs: this.nowMs, quantity: strayed });
    else if (secondsIn * 1000 >= mostPhaseMs) this.#end({ kind: 'stuck', tMs: this.nowMs });
  }

  /** A gate between two phases is crossed as the second begins: rolled in, say, with what that adds. */
  #leavePhase(state: State): void {
    const { flown, phase } = this.#flown;
    const next = phaseFrom(this.#pass.procedure, phase.to);
    const begun = next ? enter(this.#pass.procedure, next, state, this.#pass.start, false) : state;
    const entry = next && comingIn(next, state, begun, this.nowMs);
    this.#cross(phase.to, [...flown, ...(next?.flown ?? [])], begun, entry?.coming);
    if (this.#isMissed) return this.#end({ kind: 'missed-go-around', tMs: this.nowMs });
    if (!next || !entry) return this.#end({ kind: 'complete', tMs: this.nowMs });
    this.#closeLeg();
    this.#legs = [...this.#legs, { phase: next.phase.id, fromMs: this.nowMs, toMs: null }];
    this.#flown = next;
    this.#state = entry.state;
    this.#coming = entry.coming;
    this.#enteredMs = this.nowMs;
    this.#ahead = gatesAhead(next);
    this.#past = [];
  }

  #cross(gate: string, flown: readonly string[], state: State, coming: readonly Coming[] = []): void {
    const { procedure } = this.#pass;
    const { id } = this.#flown.phase;
    this.#crossings.push(crossingOf(procedure, id, flown, gate, state, this.nowMs, coming));
  }

  #end(end: PassEnd): void {
    this.ended = end;
    this.#closeLeg();
  }

  #closeLeg(): void {
    this.#legs = this.#legs.map((leg) => (leg.toMs === null ? { ...leg, toMs: this.nowMs } : leg));
  }

  asPass(): Pass {
    const pass = this.#pass;
    return {
      ...pass,
      nowMs: this.nowMs,
      phase: this.#flown.phase.id,
      legs: this.#legs,
      decisions: this.open ? [...pass.decisions, this.open] : pass.decisions,
      open: this.open,
      crossings: [...pass.crossings, ...this.#crossings],
      limitsPassed: [...pass.limitsPassed, ...this.#limits],
      ended: this.ended,
      samples: [...pass.samples, ...this.#samples],
      inner: {
        enteredMs: this.#enteredMs,
        lastDecisionMs: this.#lastDecisionMs,
        nextDecisionMs: this.#nextDecisionMs,
        ahead: this.#ahead,
        isMissed: this.#isMissed,
        past: this.#past,
        coming: this.#coming,
      },
    };
  }
}
