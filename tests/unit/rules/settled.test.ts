import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide } from '../../../src/rules/decide.ts';
import { contains, interval } from '../../../src/rules/intervals.ts';
import { isSettled } from '../../../src/rules/settled.ts';
import type { Box } from '../../../src/rules/space.ts';
import type { State } from '../../../src/rules/types.ts';
import { gridOf, procedureOf, smallDeck } from './small-procedure.ts';

const isWhole = (state: State): boolean => Object.values(state).every(Number.isInteger);

/** Some inputs within an interval, the others free; and a state of it. */
const boxedState = smallDeck(3).chain((deck) => {
  const states = gridOf(deck.box).filter(isWhole);
  const inputs = Object.keys(deck.box);
  return fc.record({
    deck: fc.constant(deck),
    state: fc.constantFrom(...states),
    widths: fc.tuple(...inputs.map(() => fc.option(fc.integer({ min: 0, max: 2 })))),
  });
});

const outcomeOf = ({ actions, overriding }: ReturnType<typeof decide>): string =>
  JSON.stringify([overriding !== null, Object.entries(actions).sort()]);

describe('a box of states', () => {
  it('is settled exactly when all of its states that can be read off require the same', () => {
    fc.assert(
      fc.property(boxedState, ({ deck, state, widths }) => {
        const procedure = procedureOf(deck);
        const box: Box = new Map(
          Object.keys(deck.box).flatMap((id, i) => {
            const width = widths[i];
            if (width === null || width === undefined) return [];
            return [[id, [interval(state[id]! - width, state[id]! + width)]] as const];
          }),
        );
        const alike = gridOf(deck.box)
          .filter(isWhole)
          .filter((other) => [...box].every(([id, set]) => contains(set, other[id]!)));
        const outcomes = new Set(alike.map((other) => outcomeOf(decide(procedure, 'here', other))));
        expect(isSettled(procedure, 'here', state, box)).toBe(outcomes.size === 1);
      }),
      { numRuns: 300 },
    );
  });
});
