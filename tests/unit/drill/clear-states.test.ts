import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearStatesOf } from '../../../src/drill/clear-states.ts';
import { clearShare, clearanceOf } from '../../../src/drill/clearance.ts';
import { groundOf } from '../../../src/drill/crossings.ts';
import { drawState, everyValue } from '../../../src/drill/lines.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import type { RuleTarget } from '../../../src/drill/types.ts';
import { edgesOf } from '../../../src/rules/edges.ts';
import { seeded, type Random } from '../../../src/rules/random.ts';
import type { Procedure, State } from '../../../src/rules/types.ts';
import { shipped, small } from '../cards/procedures.ts';

const decks = [...shipped, ['the smallest', small] as const];

/** Any state that the rule decides. */
function anyState(procedure: Procedure, target: RuleTarget, random: Random): State {
  const { region, lines } = groundOf(procedure, target)!;
  const block = region[Math.floor(random() * region.length)]!;
  return drawState({ lines, choices: lines.map((line) => everyValue(block, line)) }, random);
}

describe('how clear a state is', () => {
  it.each(decks)('is the share of the range to the nearest edge that the rules have: %s', (_, procedure) => {
    const random = seeded(3);
    for (const target of targetsOf(procedure).rules) {
      const state = anyState(procedure, target, random);
      const { box } = procedure.phases.get(target.phase)!;
      const shares = edgesOf(procedure, target.phase, state).flatMap(({ quantity, below, above }) => {
        const { lo, hi } = box.get(quantity)!;
        return [below, above].flatMap((edge) =>
          edge && edge.at !== lo && edge.at !== hi ? [edge.distance / (hi - lo)] : [],
        );
      });
      expect(clearanceOf(procedure, target.phase, state)).toBeCloseTo(Math.min(Infinity, ...shares), 12);
    }
  });
});

describe.each(decks)('a scenario drawn wide, in %s', (_, procedure) => {
  const { rules } = targetsOf(procedure);

  it('is decided by its rule and as clear as its rule says', () => {
    fc.assert(
      fc.property(fc.constantFrom(...rules), fc.nat(), (target, seed) => {
        const { state, decision } = drawScenario(procedure, target, 'wide', seeded(seed))!;
        expect(decision.reasons).toContainEqual(
          expect.objectContaining({ table: target.table, rule: target.rule }),
        );
        const { clearance } = clearStatesOf(groundOf(procedure, target)!);
        // A place between two steps may be off by a rounding.
        expect(clearanceOf(procedure, target.phase, state)).toBeGreaterThanOrEqual(clearance - 1e-9);
      }),
      { numRuns: 200 },
    );
  });

  it('is clear of every edge if any state of its rule is, else no state is clearer', () => {
    const random = seeded(8);
    for (const target of rules) {
      const { clearance } = clearStatesOf(groundOf(procedure, target)!);
      for (let i = 0; i < 60; i++) {
        const other = clearanceOf(procedure, target.phase, anyState(procedure, target, random));
        expect(Math.min(other, clearShare)).toBeLessThanOrEqual(clearance + 1e-9);
      }
    }
  });

  it('is seldom the same twice', () => {
    const random = seeded(9);
    for (const target of rules) {
      const states = Array.from({ length: 20 }, () => drawScenario(procedure, target, 'wide', random)!.state);
      expect(new Set(states.map((state) => JSON.stringify(state))).size).toBeGreaterThan(8);
    }
  });
});
