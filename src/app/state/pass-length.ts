/** How long a pass takes, to say so before it is flown. */
import { advanceToCall } from '../../motion/advance-to-call.ts';
import { correct } from '../../motion/correct.ts';
import { startPass } from '../../motion/start.ts';
import type { Procedure } from '../../rules/types.ts';

export interface PassLength {
  /** Of the pass's own time. */
  readonly flownMs: number;
  /** Stops on the way. */
  readonly calls: number;
  /** Of phases, each with its own controls. */
  readonly legs: number;
}

const known = new WeakMap<Procedure, Map<string, PassLength>>();

/** Found by flying one as the rules say; kept, since it takes some tenths of a second. */
export function lengthOfPass(procedure: Procedure, fromGate: string): PassLength {
  const lengths = known.get(procedure) ?? new Map<string, PassLength>();
  known.set(procedure, lengths);
  const there = lengths.get(fromGate);
  if (there) return there;
  let pass = advanceToCall(startPass(procedure, { fromGate, seed: 1 }));
  while (pass.open) pass = advanceToCall(correct(pass, pass.open.decision.actions));
  const length = {
    flownMs: pass.nowMs,
    calls: pass.decisions.filter(({ passedBy }) => !passedBy).length,
    legs: pass.legs.length,
  };
  lengths.set(fromGate, length);
  return length;
}

/** "3 min 40 s", "25 s". */
export function sayLength(ms: number): string {
  const seconds = Math.round(ms / 1000);
  const [minutes, rest] = [Math.floor(seconds / 60), seconds % 60];
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

/** "1:05", as on a stopwatch. */
export function sayClock(ms: number): string {
  const seconds = Math.floor(ms / 1000 + 1e-6);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
