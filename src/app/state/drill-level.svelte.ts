/** How hard the next scenario is: moved by the answers, by the ladder's rule, or held where the pilot put it. */
import { asLevel, firstLevel, ladder, nextLevel, sayLevel } from '../../drill/difficulty.ts';
import type { Closeness, Difficulty, Mark } from '../../drill/types.ts';
import type { Settings } from './settings.svelte.ts';

interface Standing {
  readonly level: number;
  /** Of the answers at this level since it was taken. */
  readonly marks: readonly Mark[];
}

export class DrillLevel {
  readonly #settings: Settings;
  #now = $state.raw<Standing>()!;
  /** What held before each answer, to go back to. */
  #before: readonly Standing[] = [];

  constructor(settings: Settings) {
    this.#settings = settings;
    this.#now = { level: asLevel(settings.drillLevel ?? firstLevel), marks: [] };
  }

  get level(): number {
    return this.#now.level;
  }

  get difficulty(): Difficulty {
    return ladder[this.#now.level]!;
  }

  get pinned(): boolean {
    return this.#settings.drillPinned;
  }

  /** In plain words, with the seconds of a window, and how close to an edge it lies in fact, of a scenario at hand. */
  words(windowMs?: number, drawn?: Closeness | 'narrow'): string {
    const said = sayLevel(this.#now.level, drawn);
    if (windowMs === undefined) return said;
    const seconds = windowMs === Infinity ? 'untimed' : `${Number((windowMs / 1000).toFixed(1))} s`;
    return `${said}: ${seconds}`;
  }

  /** Where the last answer moved it: up, down, or nowhere. */
  get moved(): 'up' | 'down' | null {
    const before = this.#before.at(-1);
    if (!before || before.level === this.#now.level) return null;
    return this.#now.level > before.level ? 'up' : 'down';
  }

  answered(mark: Mark): void {
    this.#before = [...this.#before, this.#now];
    const { level } = this.#now;
    const marks = [...this.#now.marks, mark];
    const next = this.pinned ? level : nextLevel(level, marks);
    this.#take({ level: next, marks: next === level ? marks : [] });
  }

  /** As before the last answer; a level that the pilot has held stays. */
  takenBack(): void {
    const before = this.#before.at(-1);
    if (!before) return;
    this.#before = this.#before.slice(0, -1);
    this.#take(this.pinned ? { ...before, level: this.level } : before);
  }

  /** Puts it on a step of the ladder. */
  put(level: number): void {
    this.#take({ level: asLevel(level), marks: [] });
  }

  /** Holds it where it is, whatever is answered, or lets it move again. */
  pin(pinned: boolean): void {
    this.#settings.change({ drillPinned: pinned });
    if (!pinned) this.#now = { ...this.#now, marks: [] };
  }

  #take(standing: Standing): void {
    this.#now = standing;
    if (this.#settings.drillLevel !== standing.level) this.#settings.change({ drillLevel: standing.level });
  }
}
