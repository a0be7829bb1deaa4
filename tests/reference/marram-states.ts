/** Seeded states of the Marram deck's phases, for laws that hold wherever no go-around is called. */
import { expect } from 'vitest';
import { compileRules } from '../../src/rules/compile.ts';
import { decide } from '../../src/rules/decide.ts';
import { seeded } from '../../src/rules/random.ts';
import { deck } from './marram-legs.ts';

export const procedure = compileRules(deck).procedure!;

export interface Seen {
  readonly state: Readonly<Record<string, number>>;
  readonly actions: Readonly<Record<string, string>>;
}

/** Seeded states of a phase on the quantities' steps, with what is called; those with a go-around left out. */
function* seenIn(phase: string, count = 6000): Generator<Seen> {
  const random = seeded(7);
  const { box } = procedure.phases.get(phase)!;
  for (let i = 0; i < count; i++) {
    const state: Record<string, number> = {};
    for (const [id, { lo, hi }] of box) {
      const { step } = deck.quantities.find((quantity) => quantity.id === id)!;
      state[id] = Math.round((lo + random() * (hi - lo)) / step) * step;
    }
    const { actions, overriding } = decide(procedure, phase, state);
    if (!overriding) yield { state, actions };
  }
}

/** No such state is wrong; shows the first three that are. */
export const never = (phase: string, isWrong: (seen: Seen) => boolean) => {
  const states = [...seenIn(phase)];
  expect(states.length).toBeGreaterThan(300);
  expect(states.filter(isWrong).slice(0, 3)).toEqual([]);
};
