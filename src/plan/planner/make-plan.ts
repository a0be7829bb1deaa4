/**
 * Which cards to rehearse in which session, so that most is known at the event.
 *
 * **The problem.** For each card a course is chosen: in which session it comes first, and, after each
 * outcome, in which one next, or not again. The value of a plan is the weighted sum of the cards' chances
 * of recall at the event, expected over the outcomes. The expected seconds of each session, repeats of what was
 * missed included, must not be more than there are. Value and seconds of a plan are worked out exactly with the
 * memory model; so the value is one that can be had.
 *
 * **The bound** is the lowest found of the dual function, see `dual.ts`: no plan of this kind has a higher value.
 *
 * What the answers turn out to be is not waited for: after a session, missed or not, a plan is made anew.
 */
import { DAY_MS } from '../../memory/local-day.ts';
import type { PlanInput } from '../types.ts';
import { Assigner, stiffnessesFor } from './assign.ts';
import { costsOf } from './costs.ts';
import { addChances, type Course } from './course.ts';
import { Draft } from './draft.ts';
import { Dual } from './dual.ts';
import { Grid, type GridFineness } from './grid.ts';
import { findPrices, type Watch } from './prices.ts';
import { prospectsOf } from './prospects.ts';
import { searchCourses } from './search.ts';
import { sittingsOf } from './sittings.ts';
import { transitionsOn, type Rounding } from './transitions.ts';
import { ValueTable } from './value-table.ts';

export interface PlannedCard {
  readonly id: string;
  /** Chance that it is rehearsed in the session; 1 for all of the first session. */
  readonly chance: number;
}

export interface PlannedSession {
  readonly atMs: number;
  readonly minutes: number;
  /** Expected, repeats included. At most `minutes`. */
  readonly seconds: number;
  /** Those with a chance, in the order of the input. */
  readonly cards: readonly PlannedCard[];
}

export interface TrainingPlan {
  readonly sessions: readonly PlannedSession[];
  /** By card, in the order of the input: chance of recall at the event, by the plan and without it. */
  readonly cards: readonly {
    readonly id: string;
    readonly atEvent: number;
    readonly untouched: number;
    readonly course: Course;
  }[];
  /** Weighted mean chance of recall at the event by this plan, 0 to 1. */
  readonly value: number;
  /** No plan reaches a higher one. */
  readonly bound: number;
  /** The same if nothing more is done. */
  readonly untouched: number;
  /** True when the search was stopped: the plan keeps its limits all the same. */
  readonly stopped: boolean;
}

/** For finding a plan. */
const COARSE: GridFineness = { stabilityRatio: 1.08, difficulties: 8 };
/** For the bound. */
const FINE: GridFineness = { stabilityRatio: 1.025, difficulties: 28 };

/**
 * @param input at least one card and one session with minutes; sessions in order of time, none after the event
 * @param watch told of progress, asked whether to stop
 */
export function makePlan(input: PlanInput, watch: Watch = {}): TrainingPlan {
  const { cards, sessions, eventMs, scheduler } = input;
  const sittings = sittingsOf(
    sessions.map(({ atMs }) => atMs),
    eventMs,
  );
  const room = Float64Array.from(sessions, ({ minutes }) => minutes * 60);
  const costs = costsOf(cards);
  const prospects = prospectsOf(input);
  const horizonDays = (eventMs - sittings.atMs[0]!) / DAY_MS;
  const dualOn = (fineness: GridFineness, rounding: Rounding): Dual => {
    const transitions = transitionsOn(new Grid(fineness, horizonDays), rounding, scheduler, sittings);
    return new Dual(new ValueTable(transitions, scheduler, sittings), prospects, costs, room);
  };

  const coarse = dualOn(COARSE, 'nearest');
  const found = findPrices(coarse, costs, room, {
    ...watch,
    onProgress: (done) => watch.onProgress?.(done * 0.5),
  });
  let draft: Draft | null = null;
  for (const stiffness of stiffnessesFor(cards.length)) {
    const attempt = new Draft(input, room);
    new Assigner(coarse, prospects, costs, attempt, found, stiffness).run(watch);
    if (draft === null || attempt.value() > draft.value()) draft = attempt;
    if (watch.shouldStop?.()) break;
  }
  if (draft === null) throw new Error('Nothing was tried.');
  searchCourses(draft, found.prices);
  watch.onProgress?.(0.8);
  const bound = dualOn(FINE, 'optimistic').at(found.prices).value;
  watch.onProgress?.(1);
  return trainingPlan(draft, prospects.untouched, bound, watch.shouldStop?.() ?? false);
}

function trainingPlan(draft: Draft, untouched: Float64Array, bound: number, stopped: boolean): TrainingPlan {
  const { cards, sessions } = draft.input;
  const weight = cards.reduce((sum, card) => sum + card.weight, 0);
  const chances = draft.plans.map(({ course }) => {
    const perSession = new Float64Array(sessions.length);
    addChances(course, 1, perSession);
    return perSession;
  });
  return {
    sessions: sessions.map(({ atMs, minutes }, k) => ({
      atMs,
      minutes,
      seconds: draft.load[k]!,
      cards: cards.flatMap(({ id }, c) => (chances[c]![k]! > 0 ? [{ id, chance: chances[c]![k]! }] : [])),
    })),
    cards: cards.map(({ id }, c) => ({
      id,
      atEvent: draft.plans[c]!.atEvent,
      untouched: untouched[c]!,
      course: draft.plans[c]!.course,
    })),
    value: draft.value() / weight,
    bound: Math.min(1, bound / weight),
    untouched: cards.reduce((sum, card, c) => sum + card.weight * untouched[c]!, 0) / weight,
    stopped,
  };
}
