import { describe, expect, it, test } from 'vitest';
import {
  asLevel,
  firstLevel,
  ladder,
  nextLevel,
  sayLevel,
  sayTurn,
  shownQuantities,
} from '../../../src/drill/difficulty.ts';
import { tableOf } from '../../../src/deck/lookup.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import type { Mark } from '../../../src/drill/types.ts';
import { interval } from '../../../src/rules/intervals.ts';
import { seeded } from '../../../src/rules/random.ts';
import { isSettled } from '../../../src/rules/settled.ts';
import { shipped, small } from '../cards/procedures.ts';

const right: Mark = { performance: 'desired', timeliness: 'prompt' };
const late: Mark = { performance: 'desired', timeliness: 'late' };
const partly: Mark = { performance: 'adequate', timeliness: 'prompt' };
const missed: Mark = { performance: 'outside', timeliness: 'prompt' };

describe('the ladder', () => {
  test.each([
    ['stays without an answer', 2, [], 2],
    ['stays after one right answer', 2, [right], 2],
    ['goes up after two in a row', 2, [right, right], 3],
    ['does not count a right answer from before a fault', 2, [right, partly, right], 2],
    ['does not go up for a late one', 2, [right, late], 2],
    ['goes down after a miss', 2, [missed], 1],
    ['goes down after a miss that follows right answers', 2, [right, missed], 1],
    ['stays at its foot', 0, [missed], 0],
    ['stays at its top', ladder.length - 1, [right, right], ladder.length - 1],
  ])('%s', (_, level, marks, next) => {
    expect(nextLevel(level, marks)).toBe(next);
  });

  it('never becomes easier in any respect on the way up', () => {
    const closeness = ['wide', 'near', 'edge'];
    const shown = ['needed', 'all'];
    ladder.slice(1).forEach((step, i) => {
      const before = ladder[i]!;
      expect(closeness.indexOf(step.closeness)).toBeGreaterThanOrEqual(closeness.indexOf(before.closeness));
      expect(shown.indexOf(step.shown)).toBeGreaterThanOrEqual(shown.indexOf(before.shown));
      expect(step.windowFactor).toBeLessThanOrEqual(before.windowFactor);
      expect(step).not.toEqual(before);
    });
  });

  it('has its own words for each step, and takes any number for a level', () => {
    expect(new Set(ladder.map((_, level) => sayLevel(level))).size).toBe(ladder.length);
    for (const [level, { closeness }] of ladder.entries())
      expect(sayTurn(level) !== null).toBe(closeness === 'wide');
    expect([-3, 99, 1.4, NaN].map(asLevel)).toEqual([0, ladder.length - 1, 1, firstLevel]);
  });
});

describe('the quantities shown', () => {
  const fair = { phase: 'approach', table: 'speed', rule: 'fair' };

  it('are all of the phase from the middle of the ladder on', () => {
    const scenario = drawScenario(small, fair, 'wide', seeded(1))!;
    expect(shownQuantities(small, scenario, ladder.length - 1)).toEqual(['altitude', 'closure', 'sink']);
  });

  it.each(shipped)(
    'at the foot fix the decision and hold what its reasons speak of, and none is too many: %s',
    (_, procedure) => {
      const random = seeded(9);
      for (const target of targetsOf(procedure).rules) {
        const scenario = drawScenario(procedure, target, 'wide', random)!;
        const { phase, state } = scenario;
        const shown = shownQuantities(procedure, scenario, 0);
        const box = (ids: readonly string[]) =>
          new Map(ids.map((id) => [id, [interval(state[id]!, state[id]!)]]));
        expect(isSettled(procedure, phase, state, box(shown))).toBe(true);
        const own = tableOf(procedure.deck, target.table).rules.find(({ id }) => id === target.rule)!;
        expect(shown).toEqual(expect.arrayContaining(Object.keys(own.when)));
        const spoken = scenario.decision.reasons.flatMap(({ table, rule }) =>
          Object.keys(tableOf(procedure.deck, table).rules.find(({ id }) => id === rule)!.when),
        );
        for (const id of shown)
          if (!spoken.includes(id))
            expect(isSettled(procedure, phase, state, box(shown.filter((other) => other !== id)))).toBe(
              false,
            );
      }
    },
  );
});
