import { describe, expect, it } from 'vitest';
import { gateOf, phaseOf, quantityOf } from '../../../src/deck/lookup.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { sayUnreachable, targetsOf } from '../../../src/drill/targets.ts';
import type { Scenario } from '../../../src/drill/types.ts';
import { edgesOf } from '../../../src/rules/edges.ts';
import { seeded } from '../../../src/rules/random.ts';
import { nearestMultiple } from '../../../src/rules/steps.ts';
import { shipped, small } from '../cards/procedures.ts';

const steep = { phase: 'approach', table: 'height', rule: 'steep' };
const nothingElse = { phase: 'approach', table: 'speed', rule: 'fair' };

const drawn = (
  target: Parameters<typeof drawScenario>[1],
  closeness: 'wide' | 'near' | 'edge',
  count = 200,
) => Array.from({ length: count }, (_, seed) => drawScenario(small, target, closeness, seeded(seed))!);

/** The overriding table of the phase gives the rule edges along altitude and sink as well. */
const isByClosure = ({ edge }: Scenario): boolean => edge?.quantity === 'closure';

/** Steps from the state to where the decision changes along the input. */
const stepsOff = ({ edge }: Scenario, step: number): number => edge!.distance / step;

describe('a scenario', () => {
  it('is the same for the same seed', () => {
    expect(drawScenario(small, steep, 'near', seeded(3))).toEqual(
      drawScenario(small, steep, 'near', seeded(3)),
    );
  });

  it('on an edge lies within a step of it, on the rule’s side', () => {
    // Pitch holds from 10 to 40 kt of closure, both included.
    const closures = drawn(nothingElse, 'edge')
      .filter(isByClosure)
      .map(({ state }) => state['closure']!);
    expect(new Set(closures)).toEqual(new Set([10, 40]));
  });

  it('near an edge lies a few steps further in', () => {
    const scenarios = drawn(nothingElse, 'near').filter(isByClosure);
    expect(new Set(scenarios.map(({ state }) => state['closure']!))).toEqual(
      new Set([11, 12, 13, 37, 38, 39]),
    );
    expect(new Set(scenarios.map((one) => stepsOff(one, 1)))).toEqual(new Set([1, 2, 3]));
  });

  it('drawn wide is far from every edge of every table', () => {
    for (const { state, phase, edge } of drawn(nothingElse, 'wide')) {
      expect(edge).toBeNull();
      for (const { quantity, below, above } of edgesOf(small, phase, state)) {
        const { step } = quantityOf(small.deck, quantity);
        const nearest = Math.min(below?.distance ?? Infinity, above?.distance ?? Infinity);
        expect(nearest, `${quantity} ${state[quantity]}`).toBeGreaterThan(3 * step);
      }
    }
  });

  it('at a named edge stays at that one', () => {
    const target = { ...nothingElse, quantity: 'closure', side: 'above' as const };
    for (const { state, edge } of drawn(target, 'edge', 20)) {
      expect(state['closure']).toBe(40);
      expect(edge).toEqual({ quantity: 'closure', at: 40, distance: 0, side: 'above' });
    }
    expect(drawn(target, 'wide', 20).every(({ closeness }) => closeness === 'near')).toBe(true);
  });

  it('is none for a rule that never decides, and for names the deck lacks', () => {
    const { unreachable } = targetsOf(small);
    expect(unreachable).toContainEqual({
      phase: 'approach',
      table: 'height',
      rule: 'never',
      why: 'always-beaten',
    });
    for (const target of unreachable) expect(drawScenario(small, target, 'wide', seeded(1))).toBeNull();
    for (const change of [{ phase: 'nowhere' }, { table: 'none' }, { rule: 'none' }])
      expect(drawScenario(small, { ...steep, ...change }, 'wide', seeded(1))).toBeNull();
  });

  it('has a reason in words for each rule that it can’t be drawn for', () => {
    const words = (['never-fits', 'always-beaten', 'between-steps'] as const).map(sayUnreachable);
    expect(new Set(words).size).toBe(3);
  });
});

describe.each(shipped)('scenarios of %s', (_, procedure) => {
  const { deck } = procedure;

  it('hold a value on its step, within what can occur, for every quantity of a phase of the deck', () => {
    const random = seeded(5);
    for (const target of targetsOf(procedure).rules)
      for (const closeness of ['wide', 'near', 'edge'] as const) {
        const { phase, state } = drawScenario(procedure, target, closeness, random)!;
        const ranges = phaseOf(deck, phase).state;
        expect(gateOf(deck, phaseOf(deck, phase).from).id).not.toBe('');
        expect(Object.keys(state)).toEqual(Object.keys(ranges));
        for (const [id, value] of Object.entries(state)) {
          expect(value).toBe(nearestMultiple(value, quantityOf(deck, id).step));
          expect(value).toBeGreaterThanOrEqual(ranges[id]![0]);
          expect(value).toBeLessThanOrEqual(ranges[id]![1]);
        }
      }
  });

  it('say where the edge is as the engine does', () => {
    const random = seeded(6);
    for (const target of targetsOf(procedure).edges) {
      const { phase, state, edge, decision } = drawScenario(procedure, target, 'edge', random)!;
      const found = edgesOf(procedure, phase, state).find(({ quantity }) => quantity === target.quantity)!;
      const nearest = found[target.side]!;
      expect(decision.unanswered).toEqual([]);
      // Another control's edge may be nearer along the same input, never further.
      expect(nearest.distance).toBeLessThanOrEqual(edge!.distance);
    }
  });
});
