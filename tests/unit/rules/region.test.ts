import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawState } from '../../../src/rules/draw.ts';
import { contains } from '../../../src/rules/intervals.ts';
import { seeded } from '../../../src/rules/random.ts';
import { regionOf } from '../../../src/rules/region.ts';
import type { Box } from '../../../src/rules/space.ts';
import type { State } from '../../../src/rules/types.ts';
import { naiveDecide } from './naive.ts';
import {
  gridOf,
  procedureOf,
  smallDeck,
  type Condition,
  type SmallDeck,
  type SmallRule,
} from './small-procedure.ts';

const holds = (box: Box, state: State) => [...box].every(([id, set]) => contains(set, state[id]!));

/** Every rule of the deck with its table, as `table/rule`. */
const rulesOf = ({ tables }: SmallDeck) =>
  tables.flatMap((table) => table.rules.map((rule) => ({ table, rule, name: `${table.id}/${rule.id}` })));

describe('the regions of rules', () => {
  it('part the states: each belongs to the rule that decides it, to no other, and in one box', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const procedure = procedureOf(deck);
        const regions = rulesOf(deck).map(({ table, rule, name }) => ({
          name,
          boxes: regionOf(procedure, 'here', table.id, rule.id),
        }));
        for (const state of gridOf(deck.box)) {
          const claimed = regions.flatMap(({ name, boxes }) =>
            boxes.filter((box) => holds(box, state)).map(() => name),
          );
          expect(claimed.sort().join()).toBe([...naiveDecide(deck, state).reasons].sort().join());
        }
      }),
      { numRuns: 150 },
    );
  });

  it('are empty for a table or a rule that the phase does not have', () => {
    const procedure = procedureOf({ box: { a: [0, 3] }, tables: [] });
    expect(regionOf(procedure, 'here', 'power-table', 'rule-0')).toEqual([]);
  });
});

describe('a state drawn for a rule', () => {
  it('is decided by that rule and lies on the steps; there is none only where no such state exists', () => {
    fc.assert(
      fc.property(smallDeck(3), fc.nat(), (deck, seed) => {
        const procedure = procedureOf(deck);
        const random = seeded(seed);
        const onSteps = gridOf(deck.box).filter((state) => Object.values(state).every(Number.isInteger));
        const decidedNames = new Set(onSteps.flatMap((state) => naiveDecide(deck, state).reasons));
        for (const { table, rule, name } of rulesOf(deck)) {
          const drawn = drawState(procedure, table.id, rule.id, random);
          expect(drawn !== null).toBe(decidedNames.has(name));
          if (!drawn) continue;
          expect(Object.keys(drawn.state)).toEqual(Object.keys(deck.box));
          expect(Object.values(drawn.state).every(Number.isInteger)).toBe(true);
          expect(naiveDecide(deck, drawn.state).reasons).toContain(name);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('differs from draw to draw, and comes from small parts of the region as well', () => {
    const rule = (id: string, when: SmallRule['when']): SmallRule => ({
      id,
      when,
      then: 'more-power',
      critical: false,
    });
    const far: Condition = { text: '3, > 10', fits: (value) => value === 3 || value > 10 };
    const table = { id: 'power-table', control: 'power', hit: 'first', overriding: false } as const;
    const procedure = procedureOf({
      box: { a: [0, 1000] },
      tables: [{ ...table, rules: [rule('far', { a: far }), rule('rest', {})] }],
    });
    const random = seeded(5);
    const draw = (id: string) => drawState(procedure, 'power-table', id, random)!.state['a']!;
    const rest = Array.from({ length: 200 }, () => draw('rest'));
    expect([...new Set(rest)].sort((a, b) => a - b)).toEqual([0, 1, 2, 4, 5, 6, 7, 8, 9, 10]);
    const drawn = Array.from({ length: 200 }, () => draw('far'));
    expect(drawn.every(far.fits)).toBe(true);
    expect(drawn.filter((value) => value === 3).length).toBeGreaterThan(20);
    expect(new Set(drawn).size).toBeGreaterThan(80);
  });
});
