/** One setting of the day being set: typed, stepped, refused with a reason, given back. */
import { decimalsOf, sayNumber } from '../../deck/say.ts';
import type { Quantity } from '../../deck/types.ts';
import { readNumber } from '../../grading/read-number.ts';

/** Steps at once with Page up and Page down. */
export const stepsOfPage = 5;

export interface DayEntrySetup {
  readonly quantity: () => Quantity;
  /** The value that holds. */
  readonly value: () => number;
  readonly onset: (value: number) => void;
}

export class DayEntry {
  readonly #setup: DayEntrySetup;
  /** What is being typed; null while nothing is. */
  #typed = $state<string | null>(null);
  /** Why what stands in the field can't be: the value before still holds. */
  problem = $state<string | null>(null);

  constructor(setup: DayEntrySetup) {
    this.#setup = setup;
  }

  get text(): string {
    return this.#typed ?? sayNumber(this.#setup.value(), this.#setup.quantity().step);
  }

  get atLowest(): boolean {
    return this.#setup.value() <= this.#setup.quantity().range[0];
  }

  get atHighest(): boolean {
    return this.#setup.value() >= this.#setup.quantity().range[1];
  }

  type(text: string): void {
    this.#typed = text;
    this.problem = null;
  }

  /** Takes what was typed. What can't be stays to be mended; an empty field gets its value back. */
  take(): void {
    const typed = this.#typed;
    if (typed === null) return;
    if (typed.trim() === '') return this.leave();
    const read = readNumber(typed, this.#setup.quantity());
    if (!read.ok) {
      this.problem = read.problem.message;
      return;
    }
    this.#set(read.value);
  }

  /** @param steps of the quantity, negative for less; from the next whole step on, within the range. */
  step(steps: number): void {
    const { range, step } = this.#setup.quantity();
    const next = (Math.round(this.#setup.value() / step) + steps) * step;
    this.#set(Math.min(range[1], Math.max(range[0], Number(next.toFixed(decimalsOf(step))))));
  }

  /** Forgets what was typed. */
  leave(): void {
    this.#typed = null;
    this.problem = null;
  }

  #set(value: number): void {
    this.leave();
    if (value !== this.#setup.value()) this.#setup.onset(value);
  }
}
