/** How far a state is from the values at which its decision would be another. */
import { answerGridOf, type AnswerGrid, type Turn } from './answer-grid.ts';
import { decideIn, rulesOfPhase } from './decide.ts';
import { edges, holds } from './intervals.ts';
import { inside } from './sample.ts';
import type { Edge, EdgeDistance, Interval, PhaseRules, Procedure, State } from './types.ts';

/** What the answers of a grid ask for, by their number: each is decided once. */
const asks = new WeakMap<AnswerGrid, Map<number, Edge['actions']>>();

/**
 * For every quantity that the phase's tables test, in the order the phase shows them: the nearest value
 * below and above at which the decision changes while the other quantities keep theirs, within what can
 * occur in the phase. A change is another action of any control, one action fewer, or an overriding
 * action coming or going; another rule with the same action is none. The distance is 0 where the state
 * lies on the last value of its side: 50, with a rule for `> 50`.
 */
export function edgesOf(procedure: Procedure, phaseId: string, state: State): EdgeDistance[] {
  const rules = rulesOfPhase(procedure, phaseId);
  const grid = answerGridOf(procedure, rules);
  const place = grid.placeOf(state);
  const asked = asks.get(grid) ?? new Map<number, Edge['actions']>();
  asks.set(grid, asked);
  const edgeAt = (quantity: string, turn: Turn | null): Edge | null => {
    if (!turn) return null;
    const { piece, answer } = turn;
    const value = state[quantity]!;
    const beyond = inside(piece)!;
    const at = beyond < value ? piece.hi : piece.lo;
    const actions = asked.get(answer) ?? decideIn(rules, { ...state, [quantity]: beyond }).actions;
    asked.set(answer, actions);
    return { at, distance: Math.abs(at - value), actions };
  };
  return grid.axes.flatMap(({ quantity }, axis) => {
    if (state[quantity] === undefined) return [];
    const { below, above } = grid.reach(place, axis);
    return [{ quantity, below: edgeAt(quantity, below), above: edgeAt(quantity, above) }];
  });
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
