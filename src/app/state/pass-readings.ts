/** What the instruments show while a pass is flown. */
import { gaugesOf } from '../../cards/gauges.ts';
import type { GaugeReading } from '../../cards/types.ts';
import { phaseOf } from '../../deck/lookup.ts';
import { stateAt } from '../../motion/state-at.ts';
import type { Pass, PassMoment } from '../../motion/types.ts';
import type { State } from '../../rules/types.ts';

/** Trends are read over so long: over less, restless air would turn them to and fro. */
const trendMs = 1500;

/**
 * @param shown what the numbers say; the values of the moment, or those of a decision point.
 * Trends are of what was flown just before; where the phase has only begun, of what it does by itself.
 */
export function readingsAt(pass: Pass, moment: PassMoment, shown: State): GaugeReading[] {
  const phase = phaseOf(pass.procedure.deck, moment.phase);
  const before = stateAt(pass, moment.tMs - trendMs);
  const seconds = (moment.tMs - before.tMs) / 1000;
  const hasFlown = before.phase === moment.phase && seconds >= 0.5;
  return gaugesOf(pass.procedure.deck, phase, shown).map((reading) => {
    const [was, is] = [before.state[reading.quantity], moment.state[reading.quantity]];
    if (!hasFlown || was === undefined || is === undefined) return reading;
    const change = ((is - was) / seconds) * phase.windowS;
    const trend = Math.abs(change) < reading.step / 2 ? 'steady' : change > 0 ? 'rising' : 'falling';
    return { ...reading, trend };
  });
}
