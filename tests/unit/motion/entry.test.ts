import { describe, expect, it } from 'vitest';
import { advanceToDecision } from '../../../src/motion/advance.ts';
import { correct } from '../../../src/motion/correct.ts';
import { comingIn } from '../../../src/motion/entry.ts';
import { flownPhase } from '../../../src/motion/phase-motion.ts';
import { traceOf } from '../../../src/motion/trace.ts';
import { startPass } from '../../../src/motion/start.ts';
import type { Pass, PassStart } from '../../../src/motion/types.ts';
import { asDecided, flyPass, procedureOf } from '../../reference/passes.ts';

const procedure = procedureOf('marram-recovery');
const turn = flownPhase(procedure, 'final-turn')!;
const overS = turn.plan.entry!.sink!.overS!;

describe('an entry that comes in over seconds', () => {
  const start: PassStart = { fromGate: 'abeam', seed: 4, roughness: 0 };
  const pass: Pass = flyPass(procedure, start, asDecided);
  const { fromMs } = pass.legs.find(({ phase }) => phase === 'final-turn')!;
  const sinks = pass.samples
    .filter(({ tMs }) => tMs >= fromMs - 1000 && tMs <= fromMs + 1000 * (overS + 1))
    .map(({ state }) => state.sink!);

  it('moves the quantity by no jump where the phases join', () => {
    const steps = sinks.slice(1).map((sink, i) => Math.abs(sink - sinks[i]!));
    const whole = Math.abs(sinks.at(-1)! - sinks[0]!);
    expect(whole).toBeGreaterThan(250);
    expect(Math.max(...steps)).toBeLessThan(whole / 15);
  });

  it('has nothing asked before it is there, so that no correction is made for what comes by itself', () => {
    const soon = pass.decisions.filter(({ tMs }) => tMs >= fromMs && tMs < fromMs + 1000 * overS);
    expect(soon.filter(({ why }) => why === 'time')).toEqual([]);
    const first = pass.decisions.find(({ tMs }) => tMs >= fromMs)!;
    expect(first.phase).toBe('final-turn');
  });

  it('is there at once where a pass starts with the phase', () => {
    const begun = advanceToDecision(startPass(procedure, { ...start, fromGate: 'turn-in' }));
    expect(begun.open?.tMs).toBe(0);
    expect(begun.inner.coming).toEqual([]);
    expect(correct(begun, {}).samples[0]!.state.sink).toBeGreaterThan(300);
  });

  it('is what the gate between the two phases grades', () => {
    const { values } = pass.crossings.find(({ gate }) => gate === 'turn-in')!;
    const before = pass.samples.findLast(({ tMs }) => tMs < fromMs)!.state.aoa!;
    const after = values.find(({ quantity }) => quantity === 'aoa')!.value;
    expect(after).toBeCloseTo(5.5 + 0.5 * before, 0);
  });

  it('is drawn with its band where it is there, the line then reading what the gate graded', () => {
    const { tMs, values } = pass.crossings.find(({ gate }) => gate === 'turn-in')!;
    for (const { quantity, value, thereMs } of values) {
      const band = traceOf(pass, quantity).bands.find(({ gate }) => gate === 'turn-in')!;
      expect(band).toMatchObject({ tMs, value, thereMs: thereMs ?? tMs });
      const isComing = (turn.plan.entry?.[quantity]?.overS ?? 0) > 0;
      expect(thereMs).toBe(isComing ? tMs + 1000 * overS : undefined);
      if (!isComing) continue;
      const read = pass.samples.find((sample) => sample.tMs === thereMs)!.state[quantity]!;
      const before = pass.samples.findLast((sample) => sample.tMs < tMs)!.state[quantity]!;
      expect(Math.abs(read - value)).toBeLessThan(Math.abs(before - value) / 4);
    }
    expect(values.some(({ thereMs }) => thereMs !== undefined)).toBe(true);
  });

  it('is a change of so much per second, from what was to what is to be, and a jump of what was not', () => {
    const { state, coming } = comingIn(turn, { sink: 90, aoa: 9 }, { sink: 450, aoa: 10, bank: 25 }, 11_000);
    expect(state).toEqual({ sink: 90, aoa: 9, bank: 25 });
    expect(coming).toHaveLength(2);
    const sink = coming.find(({ quantity }) => quantity === 'sink')!;
    expect(90 + sink.perS * overS).toBeCloseTo(450, 9);
    expect(sink.toMs).toBe(11_000 + 1000 * overS);
  });
});
