/** How far a state is from the values at which its decision would be another. */
import { decideIn, inputsOf, rulesOfPhase } from './decide.ts';
import { edges, holds } from './intervals.ts';
import { inside } from './sample.ts';
import type { Decision, Edge, EdgeDistance, Interval, PhaseRules, Procedure, State } from './types.ts';

/**
 * For every quantity that the phase's tables test, in the order the phase shows them: the nearest value
 * below and above at which the decision changes while the other quantities keep theirs, within what can
 * occur in the phase. A change is another action of any control, one action fewer, or an overriding
 * action coming or going; another rule with the same action is none. The distance is 0 where the state
 * lies on the last value of its side: 50, with a rule for `> 50`.
 */
export function edgesOf(procedure: Procedure, phaseId: string, state: State): EdgeDistance[] {
  const rules = rulesOfPhase(procedure, phaseId);
  const here = decideIn(rules, state);
  return inputsOf(rules).flatMap((quantity) => {
    const stretches = stretchesOf(rules, quantity);
    const value = state[quantity];
    if (!stretches || value === undefined) return [];
    const below = stretches.filter(({ lo, hi, hiOpen }) => (hiOpen ? hi <= value : hi < value) && lo < value);
    const above = stretches.filter(({ lo, hi, loOpen }) => (loOpen ? lo >= value : lo > value) && hi > value);
    return [
      {
        quantity,
        below: nearestChange(rules, state, here, quantity, below.toReversed()),
        above: nearestChange(rules, state, here, quantity, above),
      },
    ];
  });
}

function nearestChange(
  rules: PhaseRules,
  state: State,
  here: Decision,
  quantity: string,
  outwards: readonly Interval[],
): Edge | null {
  const value = state[quantity]!;
  for (const stretch of outwards) {
    const beyond = inside(stretch);
    if (beyond === null) continue;
    const there = decideIn(rules, { ...state, [quantity]: beyond });
    if (sameOutcome(here, there)) continue;
    const at = beyond < value ? stretch.hi : stretch.lo;
    return { at, distance: Math.abs(at - value), actions: there.actions };
  }
  return null;
}

function sameOutcome(one: Decision, other: Decision): boolean {
  if ((one.overriding === null) !== (other.overriding === null)) return false;
  const controls = Object.keys(one.actions);
  return (
    controls.length === Object.keys(other.actions).length &&
    controls.every((control) => one.actions[control] === other.actions[control])
  );
}

const known = new WeakMap<PhaseRules, ReadonlyMap<string, readonly Interval[]>>();

/** A quantity's range in the phase cut at every edge of its rules: points and what lies between them. */
export function stretchesOf(rules: PhaseRules, quantity: string): readonly Interval[] | undefined {
  let stretches = known.get(rules);
  if (!stretches) {
    stretches = new Map([...rules.box].map(([id, range]) => [id, cutAtEdges(rules, id, range)]));
    known.set(rules, stretches);
  }
  return stretches.get(quantity);
}

function cutAtEdges(rules: PhaseRules, quantity: string, range: Interval): Interval[] {
  const sets = [...rules.overriding, ...rules.base].flatMap((table) =>
    table.rules.map(({ when }) => when.get(quantity) ?? []),
  );
  const ends = edges([...sets.flat(), range]).filter((end) => holds(range, end));
  return ends.flatMap((end, i) => {
    const point = { lo: end, hi: end, loOpen: false, hiOpen: false };
    const next = ends[i + 1];
    return next === undefined ? [point] : [point, { lo: end, hi: next, loOpen: true, hiOpen: true }];
  });
}
