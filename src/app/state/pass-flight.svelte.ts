/**
 * A pass as it is flown on the screen. The engine flies on to the next decision point in one go; what is
 * shown follows, on a monotonic clock, and stands still while the pilot decides.
 */
import type { GaugeReading } from '../../cards/types.ts';
import { cueOf } from '../../cards/cue.ts';
import { phaseOf } from '../../deck/lookup.ts';
import { advanceToCall, passBy } from '../../motion/advance-to-call.ts';
import { advance, askHere, stepMs } from '../../motion/advance.ts';
import { assessPass } from '../../motion/assess.ts';
import { correct } from '../../motion/correct.ts';
import { startPass } from '../../motion/start.ts';
import { stateAt } from '../../motion/state-at.ts';
import type { DecisionMark, Pass, PassAssessment, PassMoment, PassStart } from '../../motion/types.ts';
import type { PassPace } from '../../record/types.ts';
import { settleMs } from './answering.svelte.ts';
import { callsIn, type AtOnce, type PassCalls } from './pass-calls.ts';
import type { PlaceOnCircuit } from '../parts/moving-mark.ts';
import { placeAt } from './pass-place.ts';
import { readingsAt } from './pass-readings.ts';
import { elapsedAt, pausedAt, resumedAt, startedAt, type Stopwatch } from './stopwatch.ts';
import type { Training } from './training.svelte.ts';

/** Of the pass's time to the pilot's, while it moves. */
const speeds: Readonly<Record<PassPace, number>> = { compressed: 4, real: 1, steps: 4 };

export interface PassEngine {
  readonly startPass: typeof startPass;
  readonly advanceToCall: typeof advanceToCall;
  readonly advance: typeof advance;
  readonly askHere: typeof askHere;
  readonly passBy: typeof passBy;
  readonly correct: typeof correct;
  readonly assessPass: typeof assessPass;
}

const engine: PassEngine = { startPass, advanceToCall, advance, askHere, passBy, correct, assessPass };

export interface PassFlightSetup {
  readonly training: Training;
  readonly start: PassStart;
  readonly pace: PassPace;
  /** Factor on the phases' windows; Infinity is untimed. */
  readonly timing: number;
  /** Right or wrong is said after each call, not only at the end. */
  readonly tells: boolean;
  /** Monotonic milliseconds. */
  readonly monotonicMs: () => number;
  /** The pilot wants no movement: what is shown goes from point to point. */
  readonly still: () => boolean;
  readonly engine?: PassEngine;
}

/** The end comes unasked: a key meant for one more call must not take it off the screen. */
const endSettleMs = 1500;

export type PassStage = 'moving' | 'asking' | 'ended';

export class PassFlight {
  readonly setup: PassFlightSetup;
  readonly #engine: PassEngine;
  pass = $state.raw<Pass>()!;
  /** What is shown. */
  moment = $state.raw<PassMoment>()!;
  stage = $state.raw<PassStage>('moving');
  paused = $state(false);
  /** Control -> action, set and not yet called. */
  chosen = $state.raw<Readonly<Record<string, string>>>({});
  /** Of the window, brought up to date by `tick`. */
  elapsedMs = $state(0);
  /** The last call, when the pilot wants to be told. */
  told = $state.raw<DecisionMark | null>(null);
  assessment = $state.raw<PassAssessment | null>(null);
  /** On record; null before the end, and when it was taken back. */
  event = $state.raw<string | null>(null);
  #watch: Stopwatch;
  /** The pass's time at which the movement under way began. */
  #fromMs = 0;
  /** The pass as it was after the last call; at first as it began. */
  #answered: Pass;
  #changedAtMs: number;

  constructor(setup: PassFlightSetup) {
    this.setup = setup;
    this.#engine = setup.engine ?? engine;
    this.#watch = startedAt(setup.monotonicMs());
    this.#changedAtMs = setup.monotonicMs();
    const { training, start } = setup;
    this.#answered = this.#engine.startPass(training.procedure, start);
    this.pass = this.#engine.advanceToCall(this.#answered);
    this.moment = stateAt(this.pass, 0);
    if (this.pass.nowMs === 0) this.#arrive();
  }

  /** What can be called in the phase that is shown. */
  readonly calls: PassCalls = $derived.by(() => callsIn(this.setup.training.procedure, this.#phase));

  readonly readings: readonly GaugeReading[] = $derived.by(() =>
    readingsAt(this.pass, this.moment, this.asked?.state ?? this.moment.state),
  );

  readonly place: PlaceOnCircuit = $derived.by(() => placeAt(this.pass, this.moment));

  /** The state in words, at a decision point; empty while it moves. */
  readonly cue: string = $derived.by(() => {
    const { procedure } = this.setup.training;
    return this.asked ? cueOf(procedure, phaseOf(procedure.deck, this.asked.phase), this.asked.state) : '';
  });

  readonly #phase: string = $derived(this.asked?.phase ?? this.moment.phase);

  /** The point that waits for a call, once it is shown. */
  get asked(): Pass['open'] {
    return this.stage === 'asking' ? this.pass.open : null;
  }

  get windowMs(): number {
    const { pace, timing, training } = this.setup;
    if (pace === 'steps') return Infinity;
    return phaseOf(training.deck, this.#phase).windowS * 1000 * timing;
  }

  /** Share of the window left, 1 to 0; 1 while it moves; null when there is no clock. */
  get remaining(): number | null {
    if (this.windowMs === Infinity) return null;
    return this.stage === 'asking' ? Math.max(0, 1 - this.elapsedMs / this.windowMs) : 1;
  }

  get secondsLeft(): number | null {
    return this.remaining === null ? null : (this.remaining * this.windowMs) / 1000;
  }

  tick(): void {
    if (this.paused || this.stage === 'ended') return;
    const ranMs = elapsedAt(this.#watch, this.setup.monotonicMs());
    if (this.stage === 'moving') this.#move(ranMs);
    else {
      this.elapsedMs = ranMs;
      // What is set is what is called.
      if (ranMs >= this.windowMs) this.#answer(this.chosen);
    }
  }

  choose(control: string, action: string): void {
    if (this.paused || this.stage === 'ended') return;
    const atOnce = this.calls.atOnce.find((one) => one.control === control && one.action === action);
    if (atOnce) this.callAtOnce(atOnce);
    else this.chosen = { ...this.chosen, [control]: action };
  }

  /** Calls what is set. Nobody reads the instruments in less than a moment: a key pressed twice does nothing. */
  call(): void {
    if (this.stage === 'asking' && !this.paused && this.#settled()) this.#answer(this.chosen);
  }

  /** At any time, and at once: while it moves, where it is shown to be. */
  callAtOnce({ control, action }: AtOnce): void {
    if (this.paused || this.stage === 'ended') return;
    if (this.stage === 'moving') this.#stopHere();
    if (!this.asked) return;
    this.#answer({ [control]: action });
    if (this.pass.ended) this.#arrive();
  }

  pause(): void {
    if (this.paused || this.stage === 'ended') return;
    this.#watch = pausedAt(this.#watch, this.setup.monotonicMs());
    this.paused = true;
  }

  resume(): void {
    if (!this.paused) return;
    this.#watch = resumedAt(this.#watch, this.setup.monotonicMs());
    this.#changedAtMs = this.setup.monotonicMs();
    this.paused = false;
  }

  /** The end has been on the screen long enough to have been seen. */
  get mayGoOn(): boolean {
    return this.stage === 'ended' && this.#settled(endSettleMs);
  }

  takeBack(): void {
    if (this.event === null) return;
    this.setup.training.takeBack(this.event);
    this.event = null;
  }

  /** The engine is ahead of what is shown: from the last call on it is flown anew, to here, and asked. */
  #stopHere(): void {
    const { advance, askHere, passBy } = this.#engine;
    const leftMs = (pass: Pass): number => this.moment.tMs - pass.nowMs;
    let pass = advance(this.#answered, leftMs(this.#answered));
    while (pass.open && leftMs(pass) >= stepMs) pass = advance(passBy(pass), leftMs(pass));
    this.pass = askHere(pass);
    this.#arrive();
  }

  #settled(afterMs = settleMs): boolean {
    return this.setup.monotonicMs() - this.#changedAtMs >= afterMs;
  }

  #move(ranMs: number): void {
    const tMs = this.#fromMs + ranMs * speeds[this.setup.pace];
    const still = this.setup.still();
    if (tMs >= this.pass.nowMs || (still && this.setup.pace === 'steps')) this.#arrive();
    else if (!still) this.moment = stateAt(this.pass, tMs);
  }

  #answer(chosen: Readonly<Record<string, string>>): void {
    const answered = this.#engine.correct(this.pass, chosen);
    const { tells } = this.setup;
    this.told = tells ? (this.#engine.assessPass(answered).decisions.at(-1) ?? null) : null;
    this.#answered = answered;
    this.#fromMs = this.pass.nowMs;
    this.pass = this.#engine.advanceToCall(answered);
    this.chosen = {};
    this.elapsedMs = 0;
    this.stage = 'moving';
    this.#watch = startedAt(this.setup.monotonicMs());
  }

  /** What is shown has come to where the engine is. */
  #arrive(): void {
    this.moment = stateAt(this.pass, this.pass.nowMs);
    this.#changedAtMs = this.setup.monotonicMs();
    this.#watch = startedAt(this.#changedAtMs);
    if (this.pass.ended) this.#end();
    else if (this.pass.open) this.stage = 'asking';
  }

  #end(): void {
    this.stage = 'ended';
    const assessment = this.#engine.assessPass(this.pass);
    this.assessment = assessment;
    const { training, start, pace } = this.setup;
    const { ended } = assessment;
    if (ended) this.event = training.keepPass({ start, pace, assessment: { ...assessment, ended } });
  }
}
