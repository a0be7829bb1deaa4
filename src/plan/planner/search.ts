/**
 * A closer look where there are few sessions: every course of every card, and a search through their
 * combinations, depth first, cut off where the prices prove that nothing better can follow. With few cards it
 * finds the best plan there is; with more it is given up after a number of steps, with the best so far.
 */
import { expectedShowings } from '../../memory/worth.ts';
import type { CardMemory } from '../../memory/types.ts';
import { rehearse } from '../rehearsal.ts';
import type { PlanCard, PlanInput } from '../types.ts';
import type { CardPlan } from './course.ts';
import type { Draft } from './draft.ts';

/** A card has 42 courses over three sessions, and 1,806 over four. */
const MOST_SESSIONS = 3;
const MOST_CARDS = 60;
const MOST_STEPS = 400_000;

interface Option {
  readonly plan: CardPlan;
  /** Weighted chance at the event. */
  readonly value: number;
  /** Value less the price of the seconds. */
  readonly net: number;
}

/** Betters a feasible draft, where the instance is small. */
export function searchCourses(draft: Draft, prices: Float64Array): void {
  const { input, room } = draft;
  if (input.sessions.length > MOST_SESSIONS || input.cards.length > MOST_CARDS) return;
  const options = input.cards.map((card) => optionsOf(input, card, prices));
  // Cards with most at stake first: the rest matters less for what is cut off.
  const order = [...options.keys()].sort((one, other) => stake(options[other]!) - stake(options[one]!));
  const toCome = new Float64Array(order.length + 1);
  for (let i = order.length - 1; i >= 0; i--) toCome[i] = toCome[i + 1]! + options[order[i]!]![0]!.net;

  const left = room.slice();
  const chosen: Option[] = [];
  let best: readonly Option[] | null = null;
  let bestValue = draft.value() * (1 + 1e-12);
  let steps = 0;

  /** @param netSoFar of the cards chosen; with the price of all seconds there are, a bound on value */
  function descend(value: number, netSoFar: number): void {
    const depth = chosen.length;
    if (depth === order.length) {
      if (value > bestValue) {
        bestValue = value;
        best = [...chosen];
      }
      return;
    }
    for (const option of options[order[depth]!]!) {
      if (netSoFar + option.net + toCome[depth + 1]! <= bestValue || ++steps > MOST_STEPS) return;
      const { usedSeconds } = option.plan;
      if (usedSeconds.some((seconds, k) => seconds > left[k]!)) continue;
      usedSeconds.forEach((seconds, k) => (left[k]! -= seconds));
      chosen.push(option);
      descend(value + option.value, netSoFar + option.net);
      chosen.pop();
      usedSeconds.forEach((seconds, k) => (left[k]! += seconds));
    }
  }

  descend(
    0,
    room.reduce((sum, seconds, k) => sum + prices[k]! * seconds, 0),
  );
  (best as readonly Option[] | null)?.forEach(({ plan }, i) => draft.set(order[i]!, plan));
}

const stake = (options: readonly Option[]): number =>
  options[0]!.net - Math.min(...options.map((option) => option.net));

/** Those that no other one beats in value and in all seconds; best net value first. */
function optionsOf(input: PlanInput, card: PlanCard, prices: Float64Array): Option[] {
  const all = coursesFrom(input, card, card.memory, 0)
    .map((plan) => {
      const value = card.weight * plan.atEvent;
      const price = plan.usedSeconds.reduce((sum, seconds, k) => sum + prices[k]! * seconds, 0);
      return { plan, value, net: value - price };
    })
    .sort((one, other) => other.value - one.value);
  const kept: Option[] = [];
  for (const option of all)
    if (!kept.some((better) => isCheaper(better.plan, option.plan))) kept.push(option);
  return kept.sort((one, other) => other.net - one.net);
}

const isCheaper = (one: CardPlan, other: CardPlan): boolean =>
  one.usedSeconds.every((seconds, k) => seconds <= other.usedSeconds[k]!);

/** Every course of a card with a memory, from a session on. */
function coursesFrom(
  input: PlanInput,
  card: PlanCard,
  memory: CardMemory | null,
  from: number,
): readonly CardPlan[] {
  const { sessions, scheduler, eventMs } = input;
  const found: CardPlan[] = [
    {
      course: null,
      atEvent: scheduler.retrievability(memory, eventMs),
      usedSeconds: new Float64Array(sessions.length),
    },
  ];
  for (let session = from; session < sessions.length; session++) {
    const { chance, recalled, relearned } = rehearse(scheduler, memory, sessions[session]!.atMs);
    const afterMiss = coursesFrom(input, card, relearned, session + 1);
    const afterRecall = chance > 0 ? coursesFrom(input, card, recalled, session + 1) : [afterMiss[0]!];
    for (const one of afterRecall)
      for (const other of afterMiss) {
        const usedSeconds = one.usedSeconds.map(
          (seconds, k) => chance * seconds + (1 - chance) * other.usedSeconds[k]!,
        );
        usedSeconds[session]! += expectedShowings(chance) * card.seconds;
        found.push({
          course: { session, chance, recalled: one.course, relearned: other.course },
          atEvent: chance * one.atEvent + (1 - chance) * other.atEvent,
          usedSeconds,
        });
      }
  }
  return found;
}
