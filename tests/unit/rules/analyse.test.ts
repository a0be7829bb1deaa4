import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/rules/analyse.ts';
import { Claims } from '../../../src/rules/claims.ts';
import { largePieces } from '../../../src/rules/analysis/pieces.ts';
import { contains } from '../../../src/rules/intervals.ts';
import { boxOf, type Box } from '../../../src/rules/space.ts';
import type { State } from '../../../src/rules/types.ts';
import { fits, naiveDecide, verdictOf } from './naive.ts';
import {
  gridOf,
  priorityOf,
  procedureOf,
  smallDeck,
  type SmallDeck,
  type SmallRule,
  type SmallTable,
} from './small-procedure.ts';

const runs = { numRuns: 60 };
const all = { limit: 1000 };

/** True where an overriding table before this one decides. */
function isOverridden({ tables }: SmallDeck, table: SmallTable, state: State): boolean {
  const overriding = tables.filter((other) => other.overriding);
  const before = table.overriding ? overriding.slice(0, overriding.indexOf(table)) : overriding;
  return before.some((other) => verdictOf(other, state).kind === 'rule');
}

const findingsOf = (deck: SmallDeck) => analyse(procedureOf(deck), all);
const ofTable = (deck: SmallDeck, table: SmallTable, code: string) =>
  findingsOf(deck).filter((found) => found.code === code && found.path[1] === deck.tables.indexOf(table));

describe('gaps', () => {
  it('are found where a table has an unanswered state, and only there; the example is one', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const grid = gridOf(deck.box);
        for (const table of deck.tables) {
          const unanswered = (state: State) => naiveDecide(deck, state).unanswered.includes(table.id);
          const gaps = ofTable(deck, table, 'gap');
          expect(gaps.length > 0).toBe(grid.some(unanswered));
          for (const { counterexample } of gaps) expect(unanswered(counterexample!)).toBe(true);
        }
      }),
      runs,
    );
  });

  it('are disjoint boxes that hold all unanswered states and no other', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const procedure = procedureOf(deck);
        const phase = procedure.phases.get('here')!;
        const table = phase.base[0]!;
        const budget = { left: Infinity };
        const claims = new Claims(phase, table, budget);
        const covers = [...claims.overridden, ...claims.blocksWhere(() => true)];
        const { blocks } = largePieces(claims.space, claims.whole(), covers, Infinity, budget);
        const boxes = blocks.map((block) => boxOf(claims.space, block));
        const holds = (box: Box, state: State) => [...box].every(([id, set]) => contains(set, state[id]!));
        const wrong = gridOf(deck.box).filter((state) => {
          const expected = Number(naiveDecide(deck, state).unanswered.includes(table.id));
          return boxes.filter((box) => holds(box, state)).length !== expected;
        });
        expect(wrong).toEqual([]);
      }),
      runs,
    );
  });
});

/** True when both fit and the hit policy forbids it. Small decks list all actions under `priority`. */
function inConflict({ hit }: SmallTable, one: SmallRule, other: SmallRule, state: State): boolean {
  if (!fits(one, state) || !fits(other, state)) return false;
  return hit === 'unique' || (hit === 'any' && one.then !== other.then);
}

describe('conflicts', () => {
  it('are the pairs of rules that break the hit policy in a state that is not overridden, and no others', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const grid = gridOf(deck.box);
        for (const table of deck.tables) {
          const expected = table.rules.flatMap((other, j) =>
            table.rules
              .slice(0, j)
              .filter((one) =>
                grid.some((s) => inConflict(table, one, other, s) && !isOverridden(deck, table, s)),
              )
              .map(() => j),
          );
          const found = ofTable(deck, table, 'conflict');
          expect(found.map(({ path }) => path[3])).toEqual(expected);
          for (const { counterexample, path } of found) {
            expect(fits(table.rules[Number(path[3])]!, counterexample!)).toBe(true);
            expect(naiveDecide(deck, counterexample!).conflicts.map((conflict) => conflict.table)).toContain(
              table.id,
            );
          }
        }
      }),
      runs,
    );
  });
});

/** What becomes of a rule over the whole grid. */
function fateOf(deck: SmallDeck, table: SmallTable, rule: SmallRule): string | null {
  const rank = ({ then }: SmallRule) => priorityOf(table.control).indexOf(then);
  const beats = (other: SmallRule) =>
    (table.hit === 'first' && table.rules.indexOf(other) < table.rules.indexOf(rule)) ||
    (table.hit === 'priority' && rank(other) < rank(rule));
  const left = gridOf(deck.box).filter(
    (state) => fits(rule, state) && !table.rules.some((other) => beats(other) && fits(other, state)),
  );
  if (left.length === 0) return 'never-fires';
  return left.every((state) => isOverridden(deck, table, state)) ? 'always-overridden' : null;
}

const effects = (deck: SmallDeck, states: readonly State[]): string =>
  JSON.stringify(
    states.map((state) => {
      const { actions, overriding, reasons, conflicts } = naiveDecide(deck, state);
      const critical = reasons.map((reason) => {
        const [table, rule] = reason.split('/');
        const { control, rules } = deck.tables.find(({ id }) => id === table)!;
        return [control, rules.find(({ id }) => id === rule)!.critical];
      });
      return [
        Object.entries(actions).sort(),
        overriding !== null,
        critical,
        conflicts.map(({ table }) => table),
      ];
    }),
  );

describe('idle rules', () => {
  it('never fire, or are always overridden, exactly when no state of the grid says otherwise', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const findings = findingsOf(deck);
        deck.tables.forEach((table, i) => {
          table.rules.forEach((rule, j) => {
            const found = findings.filter(
              ({ code, path }) =>
                (code === 'never-fires' || code === 'always-overridden') && path[1] === i && path[3] === j,
            );
            const fate = fateOf(deck, table, rule);
            expect(found.map(({ code }) => code)).toEqual(fate === null ? [] : [fate]);
          });
        });
      }),
      runs,
    );
  });

  it('are pointless exactly when taking them out, from the last to the first, changes no decision', () => {
    fc.assert(
      fc.property(smallDeck(2), (deck) => {
        const grid = gridOf(deck.box);
        const findings = findingsOf(deck);
        deck.tables.forEach((table, i) => {
          // Where rules conflict nothing is decided, and what is lost there can't be told.
          if (table.hit === 'unique' || findings.some((f) => f.code === 'conflict' && f.path[1] === i))
            return;
          const pointless: number[] = [];
          let rest = table;
          for (const rule of table.rules.toReversed()) {
            if (fateOf(deck, table, rule) !== null) continue;
            const without = { ...rest, rules: rest.rules.filter((other) => other !== rule) };
            const with_ = { ...deck, tables: deck.tables.with(i, rest) };
            const same =
              effects(with_, grid) === effects({ ...deck, tables: deck.tables.with(i, without) }, grid);
            if (!same) continue;
            pointless.unshift(table.rules.indexOf(rule));
            rest = without;
          }
          const found = findings.filter(({ code, path }) => code === 'pointless-rule' && path[1] === i);
          expect(found.map(({ path }) => path[3])).toEqual(pointless);
        });
      }),
      runs,
    );
  });
});
