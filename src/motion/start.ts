/** The beginning of a pass, and of each of its phases. */
import type { Procedure, State } from '../rules/types.ts';
import { dayOf } from './day.ts';
import { entryState, targetsUpTo } from './entry.ts';
import { phaseFrom, type FlownPhase } from './phase-motion.ts';
import { chance } from './restless-air.ts';
import { within } from './seen.ts';
import type { Pass, PassStart } from './types.ts';

/**
 * A pass that stands at its first gate, with the errors that the seed brings; its first decision point
 * is open. @param start.fromGate one of `canFly(procedure).fromGates`; any other is a bug of the caller.
 */
export function startPass(procedure: Procedure, start: PassStart): Pass {
  const { deck } = procedure;
  const flown = phaseFrom(procedure, start.fromGate);
  if (!flown) throw new Error(`No pass can start at “${start.fromGate}”.`);
  const known = { ...targetsUpTo(deck, start.fromGate), ...dayOf(deck, start.day) };
  const state = enter(procedure, flown, known, start, true);
  const { phase } = flown;
  return {
    procedure,
    start,
    nowMs: 0,
    phase: phase.id,
    legs: [{ phase: phase.id, fromMs: 0, toMs: null }],
    decisions: [],
    open: null,
    crossings: [],
    limitsPassed: [],
    ended: null,
    samples: [{ tMs: 0, phase: phase.id, state }],
    held: [],
    inner: {
      enteredMs: 0,
      lastDecisionMs: -Infinity,
      nextDecisionMs: 0,
      ahead: gatesAhead(flown),
      isMissed: false,
      past: [],
      coming: [],
    },
  };
}

export const gatesAhead = ({ plan }: FlownPhase): string[] => (plan.through ?? []).map(({ gate }) => gate);

/** The state at the beginning of a phase, errors included, within what each quantity can be. */
export function enter(
  { deck }: Procedure,
  flown: FlownPhase,
  before: State,
  { seed, roughness = 1 }: PassStart,
  isStart: boolean,
): State {
  const { phase, plan, ranges } = flown;
  const state: Record<string, number> = { ...entryState(deck, flown, before, isStart) };
  for (const id of flown.flown) {
    const size = (isStart ? (plan.start?.[id] ?? 0) : 0) + (plan.entry?.[id]?.spread ?? 0);
    const value = state[id];
    if (value === undefined) continue;
    state[id] = within(ranges.get(id)!, value + size * roughness * chance(seed, id, phase.id));
  }
  return state;
}
