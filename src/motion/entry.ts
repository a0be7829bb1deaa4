/** What the quantities of a phase begin with. */
import { gateIndexOf, gateOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import type { State } from '../rules/types.ts';
import type { FlownPhase } from './phase-motion.ts';
import type { Coming } from './types.ts';
import { valueOfSum } from './sum.ts';

/** The target of each quantity at a gate; of the last gate before it that names it, where it doesn't. */
export function targetsUpTo(deck: Deck, gate: string): State {
  const targets: Record<string, number> = {};
  for (const { values } of deck.gates.slice(0, gateIndexOf(deck, gate) + 1))
    for (const [id, { target }] of Object.entries(values)) targets[id] = target;
  return targets;
}

/**
 * The state a phase begins with, from the one before it; entries are worked out in their order, each from
 * what those above it made. Where a pass starts, a quantity that the gate
 * names keeps its target if its entry is a change of itself: the change has been made already.
 */
export function entryState(deck: Deck, { phase, plan }: FlownPhase, before: State, isStart: boolean): State {
  const state: Record<string, number> = { ...before };
  const here = gateOf(deck, phase.from).values;
  for (const [id, sum] of Object.entries(plan.entry ?? {})) {
    if (isStart && sum.factors?.[id] !== undefined && here[id]) continue;
    const value = valueOfSum(sum, state);
    if (value !== null) state[id] = value;
    else if (!isStart) Reflect.deleteProperty(state, id);
  }
  return state;
}

/**
 * What a phase begins with where another ends: the entries that come in over seconds stand as they were,
 * and are on their way to what `begun` has of them.
 */
export function comingIn(
  { plan }: FlownPhase,
  before: State,
  begun: State,
  nowMs: number,
): { readonly state: State; readonly coming: readonly Coming[] } {
  const state: Record<string, number> = { ...begun };
  const coming: Coming[] = [];
  for (const [quantity, { overS = 0 }] of Object.entries(plan.entry ?? {})) {
    const [from, to] = [before[quantity], begun[quantity]];
    if (overS === 0 || from === undefined || to === undefined) continue;
    state[quantity] = from;
    coming.push({ quantity, perS: (to - from) / overS, toMs: nowMs + 1000 * overS });
  }
  return { state, coming };
}
