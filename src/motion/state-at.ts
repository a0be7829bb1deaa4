/** A pass at any moment of it, smooth in between, for gauges and pictures. */
import type { State } from '../rules/types.ts';
import { stepMs } from './advance.ts';
import type { Pass, PassMoment, Sample } from './types.ts';

/** @param tMs brought within what has been flown: 0 to `pass.nowMs`. */
export function stateAt(pass: Pass, tMs: number): PassMoment {
  const { samples } = pass;
  const t = Math.min(pass.nowMs, Math.max(0, tMs));
  const index = Math.min(samples.length - 1, Math.floor(t / stepMs));
  const here = samples[index]!;
  const next = samples[index + 1];
  const share = (t - here.tMs) / stepMs;
  // Where a phase ends quantities may jump: nothing lies between.
  const isSmooth = next !== undefined && next.phase === here.phase;
  return {
    tMs: t,
    phase: here.phase,
    state: isSmooth && share > 0 ? between(here.state, next.state, share) : here.state,
    rates: ratesAround(samples, index),
    held: heldAt(pass, t),
  };
}

export const momentNow = (pass: Pass): PassMoment => stateAt(pass, pass.nowMs);

function between(one: State, other: State, share: number): State {
  return Object.fromEntries(
    Object.entries(one).map(([id, value]) => [id, value + ((other[id] ?? value) - value) * share]),
  );
}

/** Per second, over the step after the sample; over the one before it where it is the last. */
function ratesAround(samples: readonly Sample[], index: number): State {
  const here = samples[index]!;
  const after = samples[index + 1];
  const before = samples[index - 1];
  const [from, to] =
    after?.phase === here.phase
      ? [here, after]
      : before?.phase === here.phase
        ? [before, here]
        : [here, here];
  return Object.fromEntries(
    Object.entries(to.state).map(([id, value]) => [
      id,
      ((value - (from.state[id] ?? value)) * 1000) / stepMs,
    ]),
  );
}

function heldAt({ held }: Pass, tMs: number): Readonly<Record<string, string>> {
  const working = held.filter(({ fromMs, toMs }) => fromMs <= tMs && tMs < toMs);
  return Object.fromEntries(working.map(({ control, action }) => [control, action]));
}
