/** A run of single timed scenarios, one rule after another, each in a fresh state. */
import type { Card } from '../../cards/types.ts';
import { tableOf } from '../../deck/lookup.ts';
import { seeded, shuffled } from '../../rules/random.ts';
import { Answering } from './answering.svelte.ts';
import type { Settings } from './settings.svelte.ts';
import type { Training } from './training.svelte.ts';

export const runLength = 10;

export interface DrillResult {
  readonly card: Card;
  readonly event: string;
  readonly performance: 'desired' | 'adequate' | 'outside';
  readonly headline: string;
}

export class DrillRun {
  readonly #training: Training;
  readonly #settings: Settings;
  readonly #monotonicMs: () => number;
  readonly queue: readonly Card[];
  answering = $state.raw<Answering | null>(null);
  results = $state.raw<readonly DrillResult[]>([]);

  /** @param phase drill only this phase; null for all. @param seed orders rules that are equally weak. */
  constructor(
    phase: string | null,
    training: Training,
    settings: Settings,
    monotonicMs: () => number,
    seed: number,
  ) {
    this.#training = training;
    this.#settings = settings;
    this.#monotonicMs = monotonicMs;
    this.queue = weakestFirst(drillCards(training, phase), training, seed).slice(0, runLength);
    this.#ask();
  }

  /** Scenarios are numbered from 1. */
  get number(): number {
    return Math.min(this.queue.length, this.results.length + (this.answering?.assessment ? 0 : 1));
  }

  next(): void {
    if (this.answering?.mayGoOn) this.#ask();
  }

  /** Ends the run before its last scenario; what was answered stays. */
  end(): void {
    this.answering = null;
  }

  takeBack(): void {
    const last = this.results.at(-1);
    if (!last) return;
    this.results = this.results.slice(0, -1);
    this.#training.takeBack(last.event);
    this.#ask();
  }

  #ask(): void {
    const card = this.queue[this.results.length];
    if (!card) {
      this.answering = null;
      return;
    }
    const training = this.#training;
    const prompt = training.freshPrompt(card);
    this.answering = new Answering({
      procedure: training.procedure,
      prompt,
      timing: this.#settings.timing,
      desiredInARow: training.history(card.id)?.desiredInARow ?? 0,
      fresh: false,
      monotonicMs: this.#monotonicMs,
      onGraded: (assessment, elapsedMs) => {
        const event = training.keep(prompt, 'drill', assessment, elapsedMs);
        const { performance, headline } = assessment;
        this.results = [...this.results, { card, event, performance, headline }];
      },
    });
  }
}

/** The rule cards of a phase, or of all. */
export function drillCards(training: Training, phase: string | null): readonly Card[] {
  return training.cards.filter(
    ({ kind, id }) =>
      kind === 'rule' && (phase === null || tableOf(training.deck, id.split('/')[1]!).phases.includes(phase)),
  );
}

function weakestFirst(cards: readonly Card[], training: Training, seed: number): readonly Card[] {
  const recall = new Map(cards.map((card) => [card.id, training.recallNow(card.id) ?? 0]));
  const inChance = shuffled(cards, seeded(seed));
  const weakest = inChance
    .sort((one, other) => recall.get(one.id)! - recall.get(other.id)!)
    .slice(0, runLength);
  return shuffled(weakest, seeded(seed + 1));
}
