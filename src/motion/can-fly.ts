/** From where a pass can be flown. */
import type { Procedure } from '../rules/types.ts';
import { dayOf } from './day.ts';
import { entryState, targetsUpTo } from './entry.ts';
import { flownPhase, phaseFrom, type FlownPhase } from './phase-motion.ts';
import type { Flyable } from './types.ts';

/** A pass goes from a gate over phases that join to the last that does; each must say how it is flown. */
export function canFly(procedure: Procedure): Flyable {
  const { deck } = procedure;
  const grounded: { phase: string; why: string }[] = [];
  const fromGates: string[] = [];
  for (const phase of deck.phases ?? []) {
    const flown = flownPhase(procedure, phase.id);
    const why = flown ? whyNotBegin(procedure, flown) : 'The deck doesn’t say how it is flown in a pass.';
    if (why !== null) grounded.push({ phase: phase.id, why });
    else fromGates.push(phase.from);
  }
  const place = (gate: string): number => deck.gates.findIndex(({ id }) => id === gate);
  return { fromGates: [...new Set(fromGates)].sort((a, b) => place(a) - place(b)), grounded };
}

/** The phases of a pass from a gate, in order. */
export function phasesFrom(procedure: Procedure, gate: string): FlownPhase[] {
  const phases: FlownPhase[] = [];
  for (let next = phaseFrom(procedure, gate); next; next = phaseFrom(procedure, next.phase.to))
    phases.push(next);
  return phases;
}

function whyNotBegin(procedure: Procedure, flown: FlownPhase): string | null {
  const known = { ...dayOf(procedure.deck), ...targetsUpTo(procedure.deck, flown.phase.from) };
  const state = entryState(procedure.deck, flown, known, true);
  const missing = flown.flown.filter((id) => state[id] === undefined);
  return missing.length === 0 ? null : `Nothing says what ${missing.join(', ')} begins with.`;
}
