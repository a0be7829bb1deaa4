/** The planner with many cards: how long it takes, and how far its plan is from the bound at most. */
import { makePlan } from '../../src/plan/planner/make-plan.ts';
import { randomTask } from '../unit/plan/instances.ts';
import { measure } from './measure.ts';

interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly spread?: number;
}

/** Tasks differ from call to call. */
export function planFigures(rounds: number): Figure[] {
  const large = (call: number) => makePlan(randomTask(2000, 14, 20, call + 1));
  const time = measure(large, rounds, 1);
  const gaps = Array.from({ length: rounds }, (_, call) => gapPercent(large(call)));
  const demo = Array.from({ length: rounds }, (_, call) =>
    gapPercent(makePlan(randomTask(150, 7, 10, call + 1))),
  );
  return [
    { name: 'plan: 2,000 cards, 14 sessions', value: time.seconds * 1e3, unit: 'ms', spread: time.spread },
    { name: 'plan: 2,000 cards, 14 sessions, largest gap to the bound', value: Math.max(...gaps), unit: '%' },
    { name: 'plan: 150 cards, 7 sessions, largest gap to the bound', value: Math.max(...demo), unit: '%' },
  ];
}

const gapPercent = ({ value, bound }: { readonly value: number; readonly bound: number }): number =>
  100 * (1 - value / bound);
