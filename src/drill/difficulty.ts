/** How hard the next scenario is: a ladder, and a rule that says when to take a step on it. */
import type { Interval, Procedure } from '../rules/types.ts';
import { rulesOfPhase } from '../rules/decide.ts';
import { interval } from '../rules/intervals.ts';
import { findRule } from '../rules/region.ts';
import { isSettled } from '../rules/settled.ts';
import type { Closeness, Difficulty, Mark, Scenario } from './types.ts';

/** From the easiest; levels are places in it, from 0. One thing changes from step to step. Own choice, no source. */
export const ladder: readonly Difficulty[] = [
  { closeness: 'wide', windowFactor: 2, shown: 'needed' },
  { closeness: 'wide', windowFactor: 1.5, shown: 'needed' },
  { closeness: 'wide', windowFactor: 1.5, shown: 'all' },
  { closeness: 'near', windowFactor: 1.5, shown: 'all' },
  { closeness: 'near', windowFactor: 1, shown: 'all' },
  { closeness: 'edge', windowFactor: 1, shown: 'all' },
  { closeness: 'edge', windowFactor: 0.75, shown: 'all' },
];

/** Where a pilot begins who hasn't drilled before. */
export const firstLevel = 1;

/** In a row, and in time, for a step up. */
const desiredForStep = 2;

/** The rule of `nextLevel`, as the pilot is told it. */
export const ladderRule =
  'Two in a row right and in time: a step up. One outside: a step down. Anything else: the same again.';

/** Which scenarios come first at a level, as the pilot is told it; null where it makes no difference. */
export const sayTurn = (level: number): string | null =>
  ladder[asLevel(level)]!.closeness === 'wide'
    ? 'Rules with room to stand clear come first; edges and pairs wait until no other is left.'
    : null;

/** The nearest place on the ladder to a level from outside, such as a remembered one. */
export function asLevel(level: number): number {
  const whole = Number.isFinite(level) ? Math.round(level) : firstLevel;
  return Math.min(Math.max(whole, 0), ladder.length - 1);
}

/**
 * The level after an answer.
 * @param marks of the answers given at this level since it was taken, the last one last. After a change
 * of level start with an empty list.
 */
export function nextLevel(level: number, marks: readonly Mark[]): number {
  const last = marks[marks.length - 1];
  if (last?.performance === 'outside') return asLevel(level - 1);
  const row = marks.slice(-desiredForStep);
  const earned =
    row.length === desiredForStep &&
    row.every(({ performance, timeliness }) => performance === 'desired' && timeliness === 'prompt');
  return asLevel(earned ? level + 1 : level);
}

const closenessWords = {
  wide: 'well clear of the edges',
  near: 'near an edge',
  edge: 'on an edge',
} as const satisfies Record<Difficulty['closeness'], string>;

/** How close to an edge the scenarios of a level lie: "well clear of the edges". */
export const sayCloseness = (level: number): string => closenessWords[ladder[asLevel(level)]!.closeness];

/**
 * A level in words: "well clear of the edges, half as much time again, only what decides is shown".
 * @param drawn how close a scenario of it lies in fact.
 */
export function sayLevel(level: number, drawn?: Closeness | 'narrow'): string {
  const { closeness, windowFactor, shown } = ladder[asLevel(level)]!;
  return [
    drawn === 'narrow' ? narrowWords : closenessWords[drawn ?? closeness],
    sayWindow(windowFactor),
    shown === 'all' ? 'everything shown' : 'only what decides is shown',
  ].join(', ');
}

const narrowWords = 'close to an edge, as this rule is a narrow one';

function sayWindow(factor: number): string {
  if (factor === 1) return 'the normal time';
  if (factor === 2) return 'twice the time';
  return factor > 1 ? 'half as much time again' : 'three quarters of the time';
}

/**
 * The quantities to show at a level, in the phase's order. `needed` leaves out, from the last, each
 * quantity that may have any value without another action being asked for, and that no reason given
 * afterwards speaks of: what is left decides.
 */
export function shownQuantities(procedure: Procedure, scenario: Scenario, level: number): string[] {
  const { phase, state } = scenario;
  const all = Object.keys(rulesOfPhase(procedure, phase).phase.state);
  if (ladder[asLevel(level)]!.shown === 'all') return all;
  const spokenOf = inputsOfReasons(procedure, scenario);
  const box = new Map<string, readonly Interval[]>(all.map((id) => [id, [interval(state[id]!, state[id]!)]]));
  for (const id of all.toReversed()) {
    const fixed = box.get(id)!;
    // The input at whose edge the scenario was drawn is what it is about; what the reasons speak of
    // must have been seen.
    if (id === scenario.edge?.quantity || spokenOf.has(id)) continue;
    box.delete(id);
    if (!isSettled(procedure, phase, state, box)) box.set(id, fixed);
  }
  return all.filter((id) => box.has(id));
}

/** What is tested by the rules that will be given as the reason: the scenario's own, and each that calls for something. */
function inputsOfReasons(procedure: Procedure, { phase, table, rule, decision }: Scenario): Set<string> {
  const rules = rulesOfPhase(procedure, phase);
  const given = decision.reasons.filter(
    (reason) =>
      (reason.table === table && reason.rule === rule) || reason.action !== rules.neutral.get(reason.control),
  );
  return new Set(
    given.flatMap((reason) => [...(findRule(rules, reason.table, reason.rule)?.rule.when.keys() ?? [])]),
  );
}
