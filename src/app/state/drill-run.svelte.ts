/** A run of single scenarios: drawn for what is weakest, one after another, as hard as the level says. */
import { promptForState } from '../../cards/rule.ts';
import type { Prompt } from '../../cards/types.ts';
import { phaseOf } from '../../deck/lookup.ts';
import { closenessOf } from '../../drill/clearance.ts';
import { markOf } from '../../drill/coverage.ts';
import { shownQuantities } from '../../drill/difficulty.ts';
import { groupMisses, missOf, targetsOfMisses } from '../../drill/miss.ts';
import { composeRun, scenarioFor, standsClear } from '../../drill/plan.ts';
import { nextInRun } from '../../drill/run-order.ts';
import type { Closeness, DrillResult, MissGroup, PlanItem, RunTargets, Scenario } from '../../drill/types.ts';
import type { Assessment } from '../../grading/types.ts';
import { seeded } from '../../rules/random.ts';
import type { Performance, Reason, State } from '../../rules/types.ts';
import { Answering, settleMs } from './answering.svelte.ts';
import { weaknessOf } from './drill-knowledge.ts';
import { DrillLevel } from './drill-level.svelte.ts';
import type { Settings } from './settings.svelte.ts';
import type { Training } from './training.svelte.ts';

export interface DrillAnswer extends DrillResult {
  /** On record. */
  readonly event: string;
  readonly performance: Performance;
  readonly headline: string;
  /** The state in words, as it was asked. */
  readonly cue: string;
  /** What was called for, in words. */
  readonly expected: string;
  /** The rule that was not followed; of several that of the control that counts most. */
  readonly broken: Pick<Reason, 'table' | 'rule'>;
}

export interface DrillRunSetup {
  readonly training: Training;
  readonly settings: Settings;
  readonly monotonicMs: () => number;
  /** Draws the run and its scenarios. */
  readonly seed: number;
  /** What to drill: of the whole deck, of a phase, or what was missed before. */
  readonly targets: RunTargets;
  /** Scenarios in the run, 10 to 30. */
  readonly length: number;
}

export class DrillRun {
  readonly items: readonly PlanItem[];
  readonly level: DrillLevel;
  readonly #setup: DrillRunSetup;
  answering = $state.raw<Answering | null>(null);
  results = $state.raw<readonly DrillAnswer[]>([]);
  /** Of the scenario at hand. */
  item = $state.raw<PlanItem | null>(null);
  #scenario = $state.raw<Scenario | null>(null);
  #endedAtMs = 0;

  constructor(setup: DrillRunSetup) {
    const { training, settings, targets, length, seed } = setup;
    this.#setup = setup;
    this.level = new DrillLevel(settings);
    const { procedure } = training;
    const { closeness } = this.level.difficulty;
    const plan = composeRun(procedure, targets, weaknessOf(training), length, seeded(seed), closeness);
    this.items = plan.items.filter(({ card }) => training.card(card) !== null);
    this.#ask();
  }

  /** Scenarios are numbered from 1. */
  get number(): number {
    return Math.min(this.items.length, this.results.length + (this.answering?.assessment ? 0 : 1));
  }

  get length(): number {
    return this.items.length;
  }

  /** The other half of the pair that the scenario at hand belongs to, once both have been asked. */
  get twin(): State | null {
    const { item } = this;
    if (item?.kind !== 'twin') return null;
    const first = this.results.find(
      (result) => result.item.kind === 'twin' && result.item.pair === item.pair && result.item !== item,
    );
    return first?.scenario.state ?? null;
  }

  /** How close to an edge the scenario at hand lies in fact. */
  get closeness(): Closeness | 'narrow' | undefined {
    return this.#scenario ? closenessOf(this.#setup.training.procedure, this.#scenario) : undefined;
  }

  /** What was missed, by gate and by the direction of the error. */
  get missGroups(): readonly MissGroup[] {
    return groupMisses(this.#setup.training.procedure, this.results);
  }

  get missed(): RunTargets {
    return targetsOfMisses(this.results);
  }

  get missedCount(): number {
    return this.results.filter(({ miss }) => miss !== null).length;
  }

  next(): void {
    if (this.answering?.mayGoOn) this.#ask();
  }

  /** Ends the run before its last scenario; what was answered stays. */
  end(): void {
    this.#stop();
  }

  /** The end has been on the screen long enough to have been seen. */
  get mayGoOn(): boolean {
    return this.answering === null && this.#setup.monotonicMs() - this.#endedAtMs >= settleMs;
  }

  takeBack(): void {
    const last = this.results.at(-1);
    if (!last) return;
    this.results = this.results.slice(0, -1);
    this.level.takenBack();
    this.#setup.training.takeBack(last.event);
    this.#ask(last.item);
  }

  /** The same question, with a clock as the settings now have it. */
  askAgain(): void {
    const { answering } = this;
    if (answering && !answering.assessment && this.#scenario) this.#put(answering.prompt, this.#scenario);
  }

  #stop(): void {
    this.answering = null;
    this.item = null;
    this.#scenario = null;
    this.#endedAtMs = this.#setup.monotonicMs();
  }

  /** At a level well clear of the edges, what can't stand clear waits until nothing else is left. */
  #next(): PlanItem | null {
    const { procedure } = this.#setup.training;
    const isClear = this.level.difficulty.closeness === 'wide';
    const asked = this.results.map(({ item }) => item);
    return nextInRun(this.items, asked, (item) => isClear && !standsClear(procedure, item));
  }

  #ask(item = this.#next()): void {
    if (!item) {
      this.#stop();
      return;
    }
    this.item = item;
    const { procedure } = this.#setup.training;
    const scenario = scenarioFor(procedure, item, this.level.difficulty.closeness);
    this.#put(this.#promptFor(item, scenario), scenario);
  }

  #promptFor(item: PlanItem, scenario: Scenario): Prompt {
    const { training } = this.#setup;
    const { procedure } = training;
    const { phase, state } = scenario;
    const shown = shownQuantities(procedure, scenario, this.level.level);
    const prompt = promptForState(procedure, training.card(item.card)!, phase, state, item.seed, shown);
    const windowMs = prompt.card.windowMs * this.level.difficulty.windowFactor;
    return {
      ...prompt,
      card: { ...prompt.card, windowMs },
      place: item.unmet ? `New to you · ${phaseOf(procedure.deck, phase).label}` : prompt.place,
    };
  }

  #put(prompt: Prompt, scenario: Scenario): void {
    const { training, settings, monotonicMs } = this.#setup;
    this.#scenario = scenario;
    this.answering = new Answering({
      procedure: training.procedure,
      prompt,
      timing: settings.timing,
      desiredInARow: training.history(prompt.card.id)?.desiredInARow ?? 0,
      fresh: false,
      monotonicMs,
      onGraded: (assessment, elapsedMs) => this.#keep(prompt, scenario, assessment, elapsedMs),
    });
  }

  #keep(prompt: Prompt, scenario: Scenario, assessment: Assessment, elapsedMs: number): void {
    const { training } = this.#setup;
    const item = this.item!;
    const event = training.keep(prompt, 'drill', assessment, elapsedMs, markOf(item, scenario));
    const { performance, timeliness, headline, expected } = assessment;
    const miss = missOf(training.procedure, scenario, assessment);
    this.results = [
      ...this.results,
      {
        ...{ item, scenario, miss, event, performance, headline, expected },
        cue: prompt.title,
        broken: brokenRule(scenario, assessment),
      },
    ];
    this.level.answered({ performance, timeliness });
  }
}

/** The rule whose control was answered otherwise; the scenario's own where none can be told. */
function brokenRule({ decision, table, rule }: Scenario, { detail }: Assessment): DrillAnswer['broken'] {
  if (detail.form !== 'controls') return { table, rule };
  const broken = decision.reasons.filter(({ control }) => {
    const verdict = detail.perControl[control]?.verdict;
    return verdict === 'wrong' || verdict === 'opposite';
  });
  return broken.find(({ control }) => control === detail.leading) ?? broken[0] ?? { table, rule };
}
