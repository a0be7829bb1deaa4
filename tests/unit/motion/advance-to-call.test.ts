import { describe, expect, it } from 'vitest';
import { advanceToDecision } from '../../../src/motion/advance.ts';
import { advanceToCall, callsForSomething } from '../../../src/motion/advance-to-call.ts';
import { assessPass } from '../../../src/motion/assess.ts';
import { correct } from '../../../src/motion/correct.ts';
import { startPass } from '../../../src/motion/start.ts';
import type { Pass } from '../../../src/motion/types.ts';
import { asDecided, procedureOf, type Policy } from '../../reference/passes.ts';

const procedure = procedureOf('marram-recovery');

function flown(advance: (pass: Pass) => Pass, policy: Policy, seed: number): Pass {
  let pass = advance(startPass(procedure, { fromGate: 'groove', seed }));
  while (pass.open) pass = advance(correct(pass, policy(procedure, pass.open)));
  return pass;
}

describe('stops of a pass', () => {
  it('never pass by a point at which the rules call for something', () => {
    for (let seed = 0; seed < 8; seed++) {
      const { decisions } = flown(advanceToCall, asDecided, seed);
      const passedBy = decisions.filter((point) => point.passedBy);
      expect(passedBy.length).toBeGreaterThan(0);
      expect(passedBy.filter((point) => callsForSomething(procedure, point))).toEqual([]);
    }
  });

  it('ask about a third of the points at which nothing is called for, so that a stop gives nothing away', () => {
    const quiet = Array.from({ length: 12 }, (_, seed) => flown(advanceToCall, asDecided, seed))
      .flatMap(({ decisions }) => decisions)
      .filter((point) => point.index > 0 && !callsForSomething(procedure, point));
    const asked = quiet.filter(({ passedBy }) => !passedBy);
    expect(asked.length / quiet.length).toBeGreaterThan(0.23);
    expect(asked.length / quiet.length).toBeLessThan(0.43);
  });

  it('change nothing in how a right pass goes', () => {
    const all = flown(advanceToDecision, asDecided, 4);
    const some = flown(advanceToCall, asDecided, 4);
    expect(some.samples).toEqual(all.samples);
    expect(some.crossings).toEqual(all.crossings);
  });

  it('are the only points that are graded', () => {
    const pass = flown(advanceToCall, () => ({}), 2);
    const asked = pass.decisions.filter(({ passedBy }) => !passedBy);
    expect(assessPass(pass).decisions.map(({ point }) => point)).toEqual(asked);
    expect(asked.length).toBeLessThan(pass.decisions.length);
  });
});
