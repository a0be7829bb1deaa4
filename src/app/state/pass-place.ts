/** Where on the circuit a pass is: after which gate, and how far along the way to the next. */
import { gateIndexOf, phaseOf } from '../../deck/lookup.ts';
import type { Moment } from '../../deck/types.ts';
import { flownPhase } from '../../motion/phase-motion.ts';
import { stateAt } from '../../motion/state-at.ts';
import type { Leg, Pass, PassMoment } from '../../motion/types.ts';
import type { PlaceOnCircuit } from '../parts/moving-mark.ts';

/**
 * The share is that by which the deck tells when the next gate is reached: of the feet to go, of the
 * turn, or of the seconds. Gates between that the phase doesn't name are spread evenly.
 */
export function placeAt(pass: Pass, moment: PassMoment): PlaceOnCircuit {
  const { deck } = pass.procedure;
  const { phase } = moment;
  const leg = pass.legs.findLast((one) => one.phase === phase && one.fromMs <= moment.tMs);
  const { from, to } = phaseOf(deck, phase);
  const plan = flownPhase(pass.procedure, phase)?.plan;
  const first = gateIndexOf(deck, from);
  if (!leg || !plan) return { after: first, share: 0 };
  const through = plan.through ?? [];
  const crossed = pass.crossings.filter(
    ({ gate, tMs }) => tMs >= leg.fromMs && tMs <= moment.tMs && through.some((one) => one.gate === gate),
  );
  const behind = crossed.at(-1);
  const ahead = through.find(({ gate }) => !crossed.some((one) => one.gate === gate));
  const start = gateIndexOf(deck, behind?.gate ?? from);
  const end = Math.max(start, gateIndexOf(deck, ahead?.gate ?? to));
  const share = shareOf(pass, leg, behind?.tMs ?? leg.fromMs, ahead?.at ?? plan.until, moment);
  const at = start + share * (end - start);
  const after = Math.max(start, Math.min(Math.floor(at), end - 1));
  return { after, share: Math.min(1, at - after) };
}

function shareOf(pass: Pass, leg: Leg, sinceMs: number, next: Moment, { tMs, state }: PassMoment): number {
  if (next.kind === 'after') return part(tMs - sinceMs, leg.fromMs + 1000 * next.seconds - sinceMs);
  const began = stateAt(pass, sinceMs).state[next.quantity];
  const now = state[next.quantity];
  if (began === undefined || now === undefined) return 0;
  return part(now - began, next.value - began);
}

const part = (done: number, of: number): number => (of === 0 ? 1 : Math.min(1, Math.max(0, done / of)));
