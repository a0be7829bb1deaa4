import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { phaseOf } from '../../../src/deck/lookup.ts';
import { hasRoom } from '../../../src/drill/clear-states.ts';
import { clearShare, clearanceOf } from '../../../src/drill/clearance.ts';
import { composeRun, scenarioFor, standsClear, twinFor } from '../../../src/drill/plan.ts';
import { nextInRun } from '../../../src/drill/run-order.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { cardOf, targetsOf } from '../../../src/drill/targets.ts';
import type { PlanItem, RuleTarget, RunTargets, Weakness } from '../../../src/drill/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { compiled, shipped, small } from '../cards/procedures.ts';

const blank: Weakness = { recall: () => null, edgeMisses: () => 0, twinTimes: () => 0, met: () => true };
const [, procedure] = shipped.find(([file]) => file.startsWith('marram'))!;
const targets = targetsOf(procedure);
const run = (length: number, weakness: Partial<Weakness> = {}, seed = 1, of: RunTargets = targets) =>
  composeRun(procedure, of, { ...blank, ...weakness }, length, seeded(seed)).items;

const kinds = (items: readonly PlanItem[]) =>
  Object.fromEntries(
    (['rule', 'edge', 'twin'] as const).map((kind) => [kind, items.filter((i) => i.kind === kind).length]),
  );

describe('a run', () => {
  test.each([
    [10, { rule: 4, edge: 2, twin: 4 }],
    [20, { rule: 8, edge: 4, twin: 8 }],
    [30, { rule: 12, edge: 6, twin: 12 }],
  ])('of %d is mixed of rules, edges and twins', (length, parts) => {
    expect(kinds(run(length))).toEqual(parts);
  });

  test.each([
    [3, 10],
    [10, 10],
    [17, 17],
    [400, 30],
  ])('asked for with %d has %d', (asked, has) => {
    expect(run(asked)).toHaveLength(has);
  });

  it('takes the rules least likely to be recalled, those never answered first', () => {
    const weak = targets.rules.slice(30, 33).map(cardOf);
    const recall = (card: string) => (card === weak[0] ? null : weak.includes(card) ? 0.2 : 0.9);
    for (let seed = 0; seed < 10; seed++) {
      const rules = run(10, { recall }, seed).filter(({ kind }) => kind === 'rule');
      expect(rules.map(({ card }) => card)).toEqual(expect.arrayContaining(weak));
    }
  });

  it('takes the edges missed most, and the twins drilled least', () => {
    const edge = targets.edges[100]!;
    const twins = targets.twins.slice(50, 52);
    const items = run(10, {
      edgeMisses: (target) => (target === edge ? 2 : 0),
      twinTimes: (target) => (twins.includes(target) ? 0 : 3),
    });
    expect(items.filter(({ kind }) => kind === 'edge').map(({ target }) => target)).toContain(edge);
    const drawn = items.filter(({ kind }) => kind === 'twin').map(({ target }) => target);
    expect(new Set(drawn)).toEqual(new Set(twins));
  });

  it('asks no rule twice while others are left, and none more than twice', () => {
    const cards = run(30)
      .filter(({ kind }) => kind === 'rule')
      .map(({ card }) => card);
    expect(new Set(cards).size).toBe(cards.length);
    const few = { rules: targets.rules.slice(0, 2), edges: [], twins: [] };
    expect(run(10, {}, 1, few)).toHaveLength(4);
    expect(kinds(run(10, {}, 1, { ...targets, rules: few.rules }))).toEqual({ rule: 4, edge: 2, twin: 4 });
    expect(kinds(run(10, {}, 1, { ...targets, rules: [] }))).toEqual({ rule: 0, edge: 6, twin: 4 });
    expect(run(10, {}, 1, { rules: [], edges: [], twins: [] })).toEqual([]);
  });

  it('keeps at least two others between twins, and changes phase wherever it can', () => {
    for (let seed = 0; seed < 40; seed++)
      for (const length of [10, 20, 30]) {
        const items = run(length, {}, seed);
        items.forEach((item, i) => {
          if (item.kind !== 'twin') return;
          const other = items.findIndex((one, k) => k !== i && one.kind === 'twin' && one.pair === item.pair);
          expect(Math.abs(other - i)).toBeGreaterThan(2);
        });
        const repeats = items.filter(({ phase }, i) => items[i - 1]?.phase === phase);
        const counts = items.map(({ phase }) => items.filter((other) => other.phase === phase).length);
        // More than half of the run in one phase: then some must follow each other.
        const forced = Math.max(0, 2 * Math.max(...counts) - length - 1);
        expect(repeats.length).toBeLessThanOrEqual(forced + Math.ceil(length / 6));
      }
  });

  it('is the same for the same seed, and marks gates never met', () => {
    expect(run(20, {}, 4)).toEqual(run(20, {}, 4));
    const firstGate = procedure.deck.phases![0]!.from;
    const items = run(20, { met: (gate) => gate === firstGate });
    for (const { phase, unmet } of items)
      expect(unmet).toBe(phaseOf(procedure.deck, phase).from !== firstGate);
  });
});

describe('a run of just what was missed', () => {
  const just = {
    rules: targets.rules.slice(40, 42),
    edges: targets.edges.slice(200, 201),
    twins: targets.twins.slice(300, 301),
    times: 2,
  };

  it('asks each rule and edge twice and both halves of each pair, in fresh states, and nothing else', () => {
    const items = run(20, {}, 1, just);
    expect(kinds(items)).toEqual({ rule: 4, edge: 2, twin: 2 });
    for (const target of [...just.rules, ...just.edges]) {
      const asked = items.filter((item) => item.target === target);
      expect(asked).toHaveLength(2);
      const [one, other] = asked.map((item) => scenarioFor(procedure, item, 'near').state);
      expect(one).not.toEqual(other);
    }
    expect(new Set(items.map(({ target }) => target)).size).toBe(4);
  });

  it('has two scenarios when one was missed, and at most 30', () => {
    const one = { rules: targets.rules.slice(0, 1), edges: [], twins: [], times: 2 };
    expect(run(20, {}, 1, one)).toHaveLength(2);
    const all = run(20, {}, 1, { ...targets, rules: targets.rules.slice(0, 12), times: 2 });
    expect(all).toHaveLength(30);
  });

  it('asks all of them once before any twice', () => {
    const many = {
      rules: targets.rules.slice(0, 12),
      edges: targets.edges.slice(0, 6),
      twins: targets.twins.slice(0, 4),
      times: 2,
    };
    const items = run(20, {}, 1, many);
    expect(items).toHaveLength(30);
    expect(new Set(items.map(({ target }) => target)).size).toBe(22);
  });
});

describe('a run that begins well clear of the edges', () => {
  const clear = (of: RunTargets, weakness: Partial<Weakness> = {}) =>
    composeRun(procedure, of, { ...blank, ...weakness }, 10, seeded(3), 'wide').items;
  const hasRoomIn = (of: typeof procedure) => (target: RuleTarget) => hasRoom(of, target);

  it('takes rules with room before those without, however weak', () => {
    const [, { deck }] = shipped.find(([file]) => file.startsWith('light'))!;
    // Every rule of the deck has room. In a wider phase what is narrow takes less of it.
    const wider = { airspeed: [30, 110], centreline: [-500, 500] } as const;
    const light = compiled({
      ...deck,
      phases: deck.phases!.map((phase) =>
        phase.id === 'final-leg' ? { ...phase, state: { ...phase.state, ...wider } } : phase,
      ),
    });
    const all = targetsOf(light);
    const isRoomy = hasRoomIn(light);
    const narrow = all.rules.filter((target) => !isRoomy(target));
    expect(narrow.length).toBeGreaterThan(2);
    const recall = (card: string) => (narrow.map(cardOf).includes(card as never) ? 0.1 : 0.9);
    const rulesOf = (of: RunTargets, closeness: 'wide' | 'near') =>
      composeRun(light, of, { ...blank, recall }, 10, seeded(1), closeness).items.flatMap((item) =>
        item.kind === 'rule' ? [item.target] : [],
      );
    expect(rulesOf(all, 'wide').every(isRoomy)).toBe(true);
    expect(rulesOf(all, 'near').some(isRoomy)).toBe(false);
    const few = { ...all, rules: [...narrow.slice(0, 3), ...all.rules.filter(isRoomy).slice(0, 2)] };
    expect(rulesOf(few, 'wide').filter(isRoomy)).toHaveLength(2);
    expect(rulesOf(few, 'wide')).toHaveLength(4);
  });

  it('asks them first: edges and pairs wait until they have been asked', () => {
    const items = clear(targets);
    const asked: PlanItem[] = [];
    const waits = (item: PlanItem) => !standsClear(procedure, item);
    for (let next = nextInRun(items, asked, waits); next; next = nextInRun(items, asked, waits))
      asked.push(next);
    expect(asked.map(({ kind }) => kind === 'rule')).toEqual([
      ...Array<boolean>(4).fill(true),
      ...Array<boolean>(6).fill(false),
    ]);
    expect(new Set(asked)).toEqual(new Set(items));
    for (const { phase, target } of asked.slice(0, 4)) {
      const { state } = drawScenario(procedure, target, 'wide', seeded(1))!;
      expect(clearanceOf(procedure, phase, state)).toBeGreaterThanOrEqual(clearShare);
    }
  });

  it('still takes the weakest of those with room', () => {
    const weak = targets.rules.filter(hasRoomIn(procedure)).slice(30, 33).map(cardOf);
    const recall = (card: string) => (weak.includes(card as never) ? 0.2 : 0.9);
    const cards = clear(targets, { recall }).filter(({ kind }) => kind === 'rule');
    expect(cards.map(({ card }) => card)).toEqual(expect.arrayContaining(weak));
  });
});

describe('the scenario of an item', () => {
  const [, light] = shipped.find(([file]) => file.startsWith('light'))!;

  it.each([
    ['a large deck', procedure],
    ['a small one', light],
    ['the smallest', small],
  ])('is decided by the rule whose card the answer counts on, again and again: %s', (_, of) => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const { items } = composeRun(of, targetsOf(of), blank, 20, seeded(seed));
        for (const item of items)
          for (const closeness of ['wide', 'near', 'edge'] as const) {
            const scenario = scenarioFor(of, item, closeness);
            expect(scenarioFor(of, item, closeness)).toEqual(scenario);
            expect(cardOf(scenario)).toBe(item.card);
            expect(scenario.phase).toBe(item.phase);
            expect(
              scenario.decision.reasons.some(
                ({ table, rule }) => table === scenario.table && rule === scenario.rule,
              ),
            ).toBe(true);
          }
      }),
      { numRuns: 15 },
    );
  });

  it('of the two halves of a pair are the pair, and its edge lies between them', () => {
    const halves = run(30).filter((item) => item.kind === 'twin');
    for (const item of halves) {
      const twin = twinFor(procedure, item);
      const { state, edge } = scenarioFor(procedure, item, 'wide');
      expect(state).toEqual(item.half === 'state' ? twin.state : twin.other);
      const other = (item.half === 'state' ? twin.other : twin.state)[twin.quantity]!;
      expect(edge!.side).toBe(other < state[twin.quantity]! ? 'below' : 'above');
      const ends = [state[twin.quantity]!, other];
      expect(edge!.at).toBeGreaterThanOrEqual(Math.min(...ends));
      expect(edge!.at).toBeLessThanOrEqual(Math.max(...ends));
    }
  });
});
