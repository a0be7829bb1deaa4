import { beforeAll, describe, expect, it } from 'vitest';
import { phaseOf, quantityOf } from '../../../src/deck/lookup.ts';
import { advance, advanceToDecision, stepMs } from '../../../src/motion/advance.ts';
import { assessPass } from '../../../src/motion/assess.ts';
import { correct } from '../../../src/motion/correct.ts';
import { startPass } from '../../../src/motion/start.ts';
import { stateAt } from '../../../src/motion/state-at.ts';
import { traceOf } from '../../../src/motion/trace.ts';
import type { Pass } from '../../../src/motion/types.ts';
import { saySigned } from '../../../src/rules/say-signed.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { asDecided, flyPass, nothing, procedureOf } from '../../reference/passes.ts';

let procedure: Procedure;
beforeAll(() => {
  procedure = procedureOf('marram-recovery');
});
const begun = (seed = 3): Pass => advanceToDecision(startPass(procedure, { fromGate: 'groove', seed }));

describe('a pass', () => {
  it('comes out the same for the same seed, day and corrections, and differently for another seed', () => {
    const fly = (seed: number) => flyPass(procedure, { fromGate: 'groove', seed }, asDecided);
    expect(fly(3).samples).toEqual(fly(3).samples);
    expect(fly(3).samples).not.toEqual(fly(4).samples);
  });

  it('comes out the same in whatever portions it is advanced', () => {
    let inPortions = correct(begun(), {});
    while (!inPortions.open) inPortions = advance(inPortions, 300);
    expect(inPortions).toEqual(advanceToDecision(correct(begun(), {})));
  });

  it('leaves the pass it goes on from as it was', () => {
    const pass = begun();
    const before = structuredClone(pass.samples);
    advanceToDecision(correct(pass, { power: 'more-power' }));
    expect(pass.samples).toEqual(before);
    expect(pass.open?.chosen).toBeNull();
  });

  it('waits at an open decision point', () => {
    const pass = begun();
    expect(pass.open).not.toBeNull();
    expect(advance(pass, 5000)).toBe(pass);
  });

  it('asks again after the seconds that the deck says', () => {
    const pass = advanceToDecision(correct(begun(), begun().open!.decision.actions));
    expect(pass.decisions.map(({ tMs }) => tMs)).toEqual([0, 2000]);
  });

  it('answers a correction after the lag of its control, and for as long as it is held', () => {
    const left = advanceToDecision(correct(begun(), {}));
    const pushed = advanceToDecision(correct(begun(), { power: 'more-power' }));
    const sink = (pass: Pass, tMs: number) => stateAt(pass, tMs).state.sink!;
    expect(sink(pushed, 1000)).toBeCloseTo(sink(left, 1000), 9);
    expect(sink(pushed, 2000) - sink(left, 2000)).toBeCloseTo(-60, -1);
    expect(stateAt(pushed, 500).held).toEqual({});
    expect(stateAt(pushed, 1500).held).toEqual({ power: 'more-power' });
  });

  it('is smooth between two steps', () => {
    const pass = advanceToDecision(correct(begun(), {}));
    const [one, other] = [pass.samples[4]!, pass.samples[5]!];
    const middle = stateAt(pass, one.tMs + stepMs / 2).state.altitude!;
    expect(middle).toBeCloseTo((one.state.altitude! + other.state.altitude!) / 2, 9);
    expect(stateAt(pass, -50).tMs).toBe(0);
    expect(stateAt(pass, 1e9).tMs).toBe(pass.nowMs);
  });
});

describe('a go-around', () => {
  const demanded = (): Pass => {
    for (let seed = 1; seed < 60; seed++) {
      let pass = advanceToDecision(startPass(procedure, { fromGate: 'abeam', seed }));
      while (pass.open && !pass.open.decision.overriding) pass = advanceToDecision(correct(pass, {}));
      if (pass.open) return pass;
    }
    throw new Error('No pass left alone comes to a go-around.');
  };

  it('that the rules demand ends the pass and is right', () => {
    const pass = correct(demanded(), { call: 'go-around' });
    expect(pass.ended).toMatchObject({ kind: 'go-around', demanded: true });
    expect(assessPass(pass).decisions.at(-1)).toMatchObject({ verdict: 'right', faults: [] });
    expect(assessPass(pass).headline).toContain('as the rules demand');
  });

  it('that is missed counts, and the pass goes no further than the end of the phase', () => {
    let pass = advanceToDecision(correct(demanded(), {}));
    while (pass.open) pass = advanceToDecision(correct(pass, {}));
    expect(['missed-go-around', 'out-of-bounds']).toContain(pass.ended?.kind);
    const { decisions, performance, rules } = assessPass(pass);
    expect(decisions.some(({ verdict }) => verdict === 'missed-go-around')).toBe(true);
    expect(rules.some(({ missed }) => missed > 0)).toBe(true);
    expect(performance).toBe('outside');
  });

  it('that is missed is said to be due in the phase that first demanded it', () => {
    for (let seed = 1; ; seed++) {
      const pass = flyPass(procedure, { fromGate: 'abeam', seed }, nothing);
      if (pass.ended?.kind !== 'missed-go-around') continue;
      const first = pass.decisions.find(({ decision }) => decision.overriding)!;
      const { label } = phaseOf(procedure.deck, first.phase);
      expect(assessPass(pass).headline).toContain(`A go-around was due in “${label}” and not called`);
      break;
    }
  });

  it('that strays beyond what can occur is lost, and says past which limit', () => {
    for (let seed = 1; ; seed++) {
      const pass = flyPass(procedure, { fromGate: 'abeam', seed, roughness: 2 }, nothing);
      const { ended, phase: id, procedure: of } = pass;
      if (ended?.kind !== 'out-of-bounds') continue;
      const phase = phaseOf(of.deck, id);
      const quantity = quantityOf(of.deck, ended.quantity);
      const [least, most] = phase.state[ended.quantity]!;
      const isOver = pass.samples.at(-1)!.state[ended.quantity]! > most;
      const limit = saySigned(isOver ? most : least, quantity);
      expect(assessPass(pass).headline).toContain(
        `${quantity.spoken} passed ${limit}, the ${isOver ? 'most' : 'least'} that “${phase.label}” covers`,
      );
      break;
    }
  });

  it('without need ends the pass and is graded so', () => {
    const pass = correct(begun(), { call: 'go-around' });
    expect(pass.ended).toMatchObject({ kind: 'go-around', demanded: false });
    expect(assessPass(pass)).toMatchObject({
      performance: 'outside',
      decisions: [{ verdict: 'needless-go-around' }],
    });
  });
});

describe('what is left of a pass', () => {
  it('is said in a sentence that counts gates, the worst first', () => {
    const pass = flyPass(procedure, { fromGate: 'alongside', seed: 2 }, asDecided);
    const [gate] = pass.crossings;
    const as = (...performances: readonly ('desired' | 'adequate' | 'outside')[]): string =>
      assessPass({ ...pass, crossings: performances.map((performance) => ({ ...gate!, performance })) })
        .headline;
    expect(as('desired', 'outside', 'desired')).toBe('Flown to the end: 1 gate outside and 2 desired.');
    expect(as('desired', 'adequate', 'desired')).toBe('Flown to the end: 1 gate adequate and 2 desired.');
    expect(as('desired', 'desired')).toBe('Flown to the end: 2 gates desired.');
    expect(as()).toBe('Flown to the end.');
  });

  it('names the gates missed with their quantities', () => {
    const { gatesMissed, crossings } = assessPass(
      flyPass(procedure, { fromGate: 'abeam', seed: 1 }, nothing),
    );
    const outside = crossings.filter(({ performance }) => performance === 'outside').map(({ gate }) => gate);
    expect(gatesMissed.map(({ gate }) => gate)).toEqual(outside);
    expect(gatesMissed.length).toBeGreaterThan(0);
    for (const { quantities } of gatesMissed) expect(quantities.length).toBeGreaterThan(0);
  });

  it('is a line for each quantity, with the bands it passed and the actions that moved it', () => {
    const pass = flyPass(procedure, { fromGate: 'groove', seed: 2 }, asDecided);
    const sink = traceOf(pass, 'sink');
    expect(sink.stretches).toHaveLength(1);
    expect(sink.bands.map(({ gate }) => gate)).toContain('near-check');
    expect(new Set(sink.actions.map(({ control }) => control))).toEqual(new Set(['power']));
    expect(traceOf(pass, 'across').stretches).toHaveLength(1);
  });
});
