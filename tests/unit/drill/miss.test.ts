import { describe, expect, it, test } from 'vitest';
import { cardsOf } from '../../../src/cards/registry.ts';
import { promptForState } from '../../../src/cards/rule.ts';
import { controlOf, phaseOf } from '../../../src/deck/lookup.ts';
import { groupMisses, missKinds, missOf, sayMiss, targetsOfMisses } from '../../../src/drill/miss.ts';
import { composeRun, scenarioFor } from '../../../src/drill/plan.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { cardOf, targetsOf } from '../../../src/drill/targets.ts';
import type { DrillResult, MissKind, Scenario } from '../../../src/drill/types.ts';
import { assess } from '../../../src/grading/assess.ts';
import { seeded } from '../../../src/rules/random.ts';
import { shipped, small } from '../cards/procedures.ts';

const cards = cardsOf(small);

function answered(scenario: Scenario, chosen: Readonly<Record<string, string>> | null, elapsedMs = 500) {
  const card = cards.find(({ id }) => id === cardOf(scenario))!;
  const prompt = promptForState(small, card, scenario.phase, scenario.state, 1);
  const answer = chosen ? { form: 'controls' as const, chosen } : { form: 'none' as const };
  const graded = assess(small, prompt, answer, elapsedMs, { desiredInARow: 0, timing: 1 });
  if (!graded.ok) throw new Error(graded.problem.message);
  return graded.assessment;
}

const at = (table: string, rule: string): Scenario =>
  drawScenario(small, { phase: 'approach', table, rule }, 'wide', seeded(2))!;
const missIn = (scenario: Scenario, change: Readonly<Record<string, string>> | null, elapsedMs?: number) => {
  const chosen = change && { ...scenario.decision.actions, ...change };
  return missOf(small, scenario, answered(scenario, chosen, elapsedMs));
};

const overriding = targetsOf(small).rules.find(({ table }) =>
  small.deck.tables!.some((one) => one.id === table && one.overriding),
)!;
const goAround = drawScenario(small, overriding, 'wide', seeded(1))!;
const call = Object.keys(goAround.decision.actions)[0]!;

describe('a miss', () => {
  test.each<[string, Scenario, Readonly<Record<string, string>> | null, MissKind | null]>([
    ['is none when all is right', at('speed', 'fast'), {}, null],
    ['of the right control the wrong way', at('speed', 'fast'), { pitch: 'nose-down' }, 'wrong-way'],
    ['by leaving alone what was asked for', at('speed', 'fast'), { pitch: 'hold-nose' }, 'too-little'],
    ['by working what was right', at('speed', 'fair'), { pitch: 'nose-up' }, 'too-much'],
    ['by no answer at all', at('speed', 'fair'), null, 'no-answer'],
    ['by missing the go-around', goAround, { [call]: 'continue' }, 'missed-go-around'],
    ['by a go-around without need', at('speed', 'fair'), goAround.decision.actions, 'needless-go-around'],
  ])('%s', (_, scenario, change, kind) => {
    expect(missIn(scenario, change)).toBe(kind);
  });

  it('is of the control when one was left alone and another worked instead', () => {
    const scenario = at('speed', 'fast');
    const power = controlOf(small.deck, 'power').actions.find(
      ({ id }) => id !== scenario.decision.actions['power'],
    )!;
    const kind = missIn(scenario, { pitch: 'hold-nose', power: power.id });
    expect(['wrong-control', 'too-little']).toContain(kind);
    expect(kind === 'wrong-control').toBe(scenario.decision.actions['power'] === 'hold-power');
  });

  it('is late when all is right, but after the window', () => {
    const scenario = at('speed', 'fast');
    const windowMs = phaseOf(small.deck, scenario.phase).windowS * 1000;
    expect(missIn(scenario, {}, windowMs * 1.2)).toBe('late');
  });

  it('has words of its own for each kind', () => {
    expect(new Set(missKinds.map(sayMiss)).size).toBe(missKinds.length);
  });
});

describe('the misses of a run', () => {
  const [, procedure] = shipped[1]!;
  const weakness = { recall: () => null, edgeMisses: () => 0, twinTimes: () => 0, met: () => true };
  const { items } = composeRun(procedure, targetsOf(procedure), weakness, 20, seeded(1));
  const results = items.map((item, i): DrillResult => ({
    item,
    scenario: scenarioFor(procedure, item, 'edge'),
    miss: i % 3 === 0 ? null : missKinds[i % missKinds.length]!,
  }));

  it('are grouped by gate in the procedure’s order and by kind, the gravest first', () => {
    const groups = groupMisses(procedure, results);
    expect(groups.flatMap((group) => group.results)).toHaveLength(results.filter(({ miss }) => miss).length);
    const gates = procedure.deck.gates.map(({ id }) => id);
    const keys = groups.map(({ gate, kind }) => gates.indexOf(gate) * 100 + missKinds.indexOf(kind));
    expect(keys).toEqual([...new Set(keys)].sort((one, other) => one - other));
    for (const { gate, kind, results: missed } of groups)
      for (const { miss, scenario } of missed) {
        expect(miss).toBe(kind);
        expect(phaseOf(procedure.deck, scenario.phase).from).toBe(gate);
      }
  });

  it('give a run of just those, each at the edge or in the pair where it was missed', () => {
    const missed = targetsOfMisses(results);
    const again = composeRun(procedure, missed, weakness, 10, seeded(2));
    const pairs = new Set(
      results.flatMap(({ item, miss }) => (miss && item.kind === 'twin' ? [item.pair] : [])),
    );
    const singles = results.filter(({ item, miss }) => miss && item.kind !== 'twin');
    const wanted =
      2 *
      (pairs.size +
        new Set(
          singles.map(({ scenario: { phase, table, rule, edge } }) =>
            JSON.stringify([phase, table, rule, edge?.quantity, edge?.side]),
          ),
        ).size);
    expect(again.items).toHaveLength(Math.min(30, wanted));
    const allowed = new Set(singles.map(({ scenario }) => cardOf(scenario)));
    for (const { card, kind } of again.items) if (kind !== 'twin') expect(allowed).toContain(card);
    expect(targetsOfMisses([])).toEqual({ rules: [], edges: [], twins: [], times: 2 });
  });
});
