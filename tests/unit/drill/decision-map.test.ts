import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decisionMap, tellingInputs } from '../../../src/drill/decision-map.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import type { DecisionMap } from '../../../src/drill/types.ts';
import { decide } from '../../../src/rules/decide.ts';
import { holds } from '../../../src/rules/intervals.ts';
import { seeded } from '../../../src/rules/random.ts';
import type { State } from '../../../src/rules/types.ts';
import { shipped } from '../cards/procedures.ts';
import { gridOf, procedureOf, smallDeck } from '../rules/small-procedure.ts';

const cellsAt = (map: DecisionMap, state: State) =>
  map.cells.filter(({ x, y }) => holds(x, state[map.x]!) && holds(y, state[map.y]!));

describe('the decision map', () => {
  it('has each state in one cell, which asks for what the rules ask for there, edges and between', () => {
    fc.assert(
      fc.property(
        smallDeck(3).filter(({ box }) => Object.keys(box).length > 1),
        (deck) => {
          const procedure = procedureOf(deck);
          const states = gridOf(deck.box);
          const base = states[Math.floor(states.length / 2)]!;
          const map = decisionMap(procedure, 'here', base, 'a', 'b');
          for (const point of states) {
            const state = { ...base, a: point['a']!, b: point['b']! };
            const [cell, ...more] = cellsAt(map, state);
            expect(more).toEqual([]);
            const outcome = map.outcomes[cell!.outcome]!;
            const decision = decide(procedure, 'here', state);
            expect(outcome.actions).toEqual(decision.actions);
            expect(outcome.overriding).toBe(decision.overriding !== null);
            for (const { table, rule } of decision.reasons)
              expect(outcome.rules).toContain(`${table}/${rule}`);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('joins what asks for the same: no two outcomes are alike, no cell could be joined with its neighbour', () => {
    fc.assert(
      fc.property(
        smallDeck(2).filter(({ box }) => Object.keys(box).length > 1),
        (deck) => {
          const { cells, outcomes } = decisionMap(procedureOf(deck), 'here', gridOf(deck.box)[0]!, 'a', 'b');
          const keys = outcomes.map(({ actions, overriding }) =>
            JSON.stringify([overriding, Object.entries(actions).sort()]),
          );
          expect(new Set(keys).size).toBe(keys.length);
          for (const one of cells)
            for (const other of cells) {
              const stacked =
                JSON.stringify(one.x) === JSON.stringify(other.x) &&
                one.y.hi === other.y.lo &&
                one.y.hiOpen !== other.y.loOpen;
              expect(stacked && one.outcome === other.outcome).toBe(false);
            }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe.each(shipped)('the telling inputs in %s', (_, procedure) => {
  const random = seeded(4);
  const { height } = procedure.deck.reference;

  it('are two, the height upwards, and span a map that holds the state', () => {
    for (const target of targetsOf(procedure).edges) {
      const scenario = drawScenario(procedure, target, 'edge', random)!;
      const [x, y] = tellingInputs(procedure, scenario.phase, scenario.state)!;
      expect(x).not.toBe(y);
      expect(x).not.toBe(height);
      const map = decisionMap(procedure, scenario.phase, scenario.state, x, y);
      const [cell] = cellsAt(map, scenario.state);
      expect(map.outcomes[cell!.outcome]!.actions).toEqual(scenario.decision.actions);
    }
  });
});
