/** One prompt being answered: its clock, the answer's grade, the way back from an unreadable answer. */
import type { Answer, Prompt } from '../../cards/types.ts';
import { assess } from '../../grading/assess.ts';
import type { Assessment, Unreadable } from '../../grading/types.ts';
import type { Procedure } from '../../rules/types.ts';
import { elapsedAt, pausedAt, resumedAt, startedAt, type Stopwatch } from './stopwatch.ts';

/** The clock runs to this many windows before the prompt closes by itself. */
export const windowsUntilClosed = 2;

/**
 * Nobody reads a prompt or a grade in less: a key that repeats, or a second press meant for what was
 * there before, must not answer or go on.
 */
export const settleMs = 300;

export interface AnsweringSetup {
  readonly procedure: Procedure;
  readonly prompt: Prompt;
  /** Factor on the window; Infinity is untimed. */
  readonly timing: number;
  readonly desiredInARow: number;
  /** Never answered before: asked without a clock, to be guessed or looked up. */
  readonly fresh: boolean;
  /** Monotonic milliseconds. */
  readonly monotonicMs: () => number;
  readonly onGraded: (assessment: Assessment, elapsedMs: number) => void;
}

export class Answering {
  readonly prompt: Prompt;
  readonly windowMs: number;
  readonly fresh: boolean;
  readonly #timing: number;
  assessment = $state.raw<Assessment | null>(null);
  answer = $state.raw<Answer | null>(null);
  /** A new card that was looked up before it was ever tried: nothing to grade. */
  shown = $state(false);
  problem = $state.raw<Unreadable | null>(null);
  paused = $state(false);
  /** Brought up to date by `tick`. */
  elapsedMs = $state(0);
  readonly #setup: AnsweringSetup;
  #watch: Stopwatch;
  /** When what is on the screen came there. */
  #changedAtMs: number;

  constructor(setup: AnsweringSetup) {
    this.#setup = setup;
    this.prompt = setup.prompt;
    this.fresh = setup.fresh;
    this.#timing = setup.fresh ? Infinity : setup.timing;
    this.windowMs = setup.prompt.card.windowMs * this.#timing;
    this.#changedAtMs = setup.monotonicMs();
    this.#watch = startedAt(this.#changedAtMs);
  }

  get procedure(): Procedure {
    return this.#setup.procedure;
  }

  get untimed(): boolean {
    return this.windowMs === Infinity;
  }

  /** Share of the window left, 1 to 0; 1 throughout when untimed. */
  get remaining(): number {
    return this.untimed ? 1 : Math.max(0, 1 - this.elapsedMs / this.windowMs);
  }

  tick(): void {
    if (this.assessment || this.paused) return;
    this.elapsedMs = elapsedAt(this.#watch, this.#setup.monotonicMs());
    if (!this.untimed && this.elapsedMs > this.windowMs * windowsUntilClosed) this.submit({ form: 'none' });
  }

  submit(answer: Answer): void {
    if (this.assessment || this.paused || !this.#settled()) return;
    const elapsedMs = elapsedAt(this.#watch, this.#setup.monotonicMs());
    const graded = assess(this.#setup.procedure, this.prompt, answer, elapsedMs, {
      desiredInARow: this.#setup.desiredInARow,
      timing: this.#timing,
    });
    if (!graded.ok) {
      this.problem = graded.problem;
      return;
    }
    this.elapsedMs = elapsedMs;
    this.problem = null;
    this.answer = answer;
    this.shown = this.fresh && answer.form === 'none';
    this.assessment = graded.assessment;
    this.#changedAtMs = this.#setup.monotonicMs();
    this.#setup.onGraded(graded.assessment, elapsedMs);
  }

  /** The grade has been on the screen long enough to have been seen. */
  get mayGoOn(): boolean {
    return this.assessment !== null && this.#settled();
  }

  #settled(): boolean {
    return this.#setup.monotonicMs() - this.#changedAtMs >= settleMs;
  }

  pause(): void {
    if (this.assessment || this.paused) return;
    this.#watch = pausedAt(this.#watch, this.#setup.monotonicMs());
    this.paused = true;
  }

  resume(): void {
    if (!this.paused) return;
    this.#watch = resumedAt(this.#watch, this.#setup.monotonicMs());
    this.paused = false;
  }
}
