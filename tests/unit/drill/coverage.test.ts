import { describe, expect, it } from 'vitest';
import { coverage, edgeMissesIn, factsIn, markOf, twinTimesIn } from '../../../src/drill/coverage.ts';
import { composeRun, scenarioFor } from '../../../src/drill/plan.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import type { DrillFact, DrillMark } from '../../../src/drill/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { shipped, small } from '../cards/procedures.ts';

const mark = (change: Partial<DrillMark> = {}): DrillMark => ({
  phase: 'approach',
  closeness: 'wide',
  ...change,
});
const fact = (change: Partial<DrillFact> = {}): DrillFact => ({
  ...mark(),
  card: 'rule/speed/fast',
  desired: true,
  ...change,
});

describe('the facts in a record', () => {
  it('are the answers that say where they were drawn', () => {
    const drill = mark({ closeness: 'edge', edge: 'closure', side: 'below' });
    expect(
      factsIn([
        ['rule/speed/fast', [{ performance: 'outside', drill }, { performance: 'desired' }]],
        ['value/over/altitude', [{ performance: 'desired' }]],
      ]),
    ).toEqual([{ ...drill, card: 'rule/speed/fast', desired: false }]);
  });
});

describe('coverage', () => {
  const targets = targetsOf(small);

  it('is nothing of all before the first drill', () => {
    expect(coverage(targets, [])).toEqual({
      rules: { drilled: 0, of: targets.rules.length },
      inputs: { drilled: 0, of: targets.inputs.length },
      twins: { drilled: 0, of: targets.twins.length },
    });
  });

  it('counts a rule in the phase in which it was drilled, once', () => {
    const facts = [
      fact(),
      fact({ desired: false }),
      fact({ phase: 'nowhere' }),
      fact({ card: 'rule/speed/gone' }),
    ];
    expect(coverage(targets, facts).rules.drilled).toBe(1);
    expect(coverage(targets, facts).inputs.drilled).toBe(0);
  });

  it('counts an input drilled at its edge, and a pair only as a pair', () => {
    const atEdge = fact({ closeness: 'edge', edge: 'closure', side: 'below' });
    expect(coverage(targets, [atEdge]).inputs.drilled).toBe(1);
    expect(coverage(targets, [atEdge]).twins.drilled).toBe(0);
    expect(coverage(targets, [{ ...atEdge, twin: true }]).twins.drilled).toBe(1);
  });

  it.each(shipped)(
    'comes to everything by runs of the weakest, for %s',
    (_, procedure) => {
      const all = targetsOf(procedure);
      const facts: DrillFact[] = [];
      const answered = new Set<string>();
      for (let run = 0; run < 240; run++) {
        const weakness = {
          recall: (card: string) => (answered.has(card) ? 0.9 : null),
          edgeMisses: edgeMissesIn(facts),
          twinTimes: twinTimesIn(facts),
          met: () => true,
        };
        for (const item of composeRun(procedure, all, weakness, 30, seeded(run)).items) {
          facts.push({
            ...markOf(item, scenarioFor(procedure, item, 'wide')),
            card: item.card,
            desired: true,
          });
          answered.add(item.card);
        }
      }
      const { rules, inputs, twins } = coverage(all, facts);
      expect([rules.drilled, inputs.drilled, twins.drilled]).toEqual([rules.of, inputs.of, twins.of]);
    },
    120_000,
  );
});

describe('weakness from facts', () => {
  const target = {
    phase: 'approach',
    table: 'speed',
    rule: 'fast',
    quantity: 'closure',
    side: 'below' as const,
  };
  const atEdge = fact({ closeness: 'edge', edge: 'closure', side: 'below' });
  const missed = { ...atEdge, desired: false };

  it('counts misses at an edge since it was last answered desired', () => {
    expect(edgeMissesIn([missed, missed])(target)).toBe(2);
    expect(edgeMissesIn([missed, atEdge, missed])(target)).toBe(1);
    expect(edgeMissesIn([missed, atEdge])(target)).toBe(0);
    expect(edgeMissesIn([missed])({ ...target, side: 'above' })).toBe(0);
  });

  it('counts how often a pair was drilled', () => {
    expect(twinTimesIn([{ ...atEdge, twin: true }, atEdge])(target)).toBe(1);
  });
});
