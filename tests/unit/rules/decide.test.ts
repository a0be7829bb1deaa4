import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkState } from '../../../src/rules/check-state.ts';
import { decide } from '../../../src/rules/decide.ts';
import { edgesOf } from '../../../src/rules/edges.ts';
import type { Decision, State } from '../../../src/rules/types.ts';
import { naiveDecide, plainly, type NaiveDecision } from './naive.ts';
import { gridOf, procedureOf, smallDeck, type SmallDeck, type SmallTable } from './small-procedure.ts';

const when = (text: string, fits: (value: number) => boolean) => ({ a: { text, fits } });
const over = (limit: number) => when(`> ${limit}`, (value) => value > limit);
const upTo = (limit: number) => when(`<= ${limit}`, (value) => value <= limit);

const power = (hit: SmallTable['hit'], ...rules: [object, string, boolean?][]): SmallTable => ({
  id: 'power-table',
  control: 'power',
  hit,
  overriding: false,
  rules: rules.map(([conditions, then, critical = false], i) => ({
    id: `rule-${i}`,
    when: conditions as SmallTable['rules'][number]['when'],
    then,
    critical,
  })),
});
const deckOf = (...tables: SmallTable[]): SmallDeck => ({ box: { a: [0, 100] }, tables });
const decided = (deck: SmallDeck, a: number): Decision => decide(procedureOf(deck), 'here', { a });

describe('a decision', () => {
  it('has the action of each table and the neutral action of each control without one', () => {
    const deck = deckOf(power('first', [over(50), 'more-power'], [{}, 'hold-power']));
    expect(decided(deck, 51)).toMatchObject({
      actions: { power: 'more-power', pitch: 'hold-pitch', nozzle: 'hold-nozzle', call: 'hold-call' },
      overriding: null,
      reasons: [{ table: 'power-table', rule: 'rule-0', because: 'rule-0 fits.' }],
    });
    expect(decided(deck, 50).actions['power']).toBe('hold-power');
  });

  it('lacks the control that no rule answers, and names the table', () => {
    const decision = decided(deckOf(power('unique', [over(50), 'more-power'])), 50);
    expect(decision.actions).not.toHaveProperty('power');
    expect(decision.unanswered).toEqual(['power-table']);
  });

  it('lacks the control whose rules break the hit policy, and names them', () => {
    const deck = deckOf(power('unique', [over(50), 'more-power'], [over(70), 'more-power']));
    const decision = decided(deck, 71);
    expect(decision.actions).not.toHaveProperty('power');
    expect(decision.conflicts).toEqual([{ table: 'power-table', rules: ['rule-0', 'rule-1'] }]);
    expect(decided(deck, 70).conflicts).toEqual([]);
  });

  it('lets rules overlap under “any” while they agree, and gives the critical one as the reason', () => {
    const deck = deckOf(power('any', [over(50), 'more-power'], [over(70), 'more-power', true]));
    expect(decided(deck, 71)).toMatchObject({ conflicts: [], reasons: [{ rule: 'rule-1', critical: true }] });
    const torn = deckOf(power('any', [over(50), 'more-power'], [over(70), 'less-power']));
    expect(decided(torn, 71).conflicts).toHaveLength(1);
  });

  it('goes by the list under “priority”, whatever the order of the rules', () => {
    const deck = deckOf(power('priority', [{}, 'hold-power'], [over(50), 'more-power']));
    expect(decided(deck, 51).actions['power']).toBe('more-power');
  });

  it('is only the overriding action where one is called for', () => {
    const goAround: SmallTable = {
      ...power('any', [over(90), 'more-call', true]),
      id: 'go',
      control: 'call',
      overriding: true,
    };
    const decision = decided(deckOf(power('first', [{}, 'hold-power']), goAround), 91);
    expect(decision.actions).toEqual({ call: 'more-call' });
    expect(decision.overriding).toMatchObject({ table: 'go', rule: 'rule-0', critical: true });
    expect(decision.reasons).toEqual([decision.overriding]);
  });

  it('is the one that plain evaluation gives, in every state of any tables', () => {
    fc.assert(
      fc.property(smallDeck(3), (deck) => {
        const procedure = procedureOf(deck);
        for (const state of gridOf(deck.box))
          expect(plainly(decide(procedure, 'here', state))).toEqual(naiveDecide(deck, state));
      }),
      { numRuns: 150 },
    );
  });
});

/** The nearest change seen by walking the grid outwards from a state. */
function scan(deck: SmallDeck, state: State, input: string, direction: 1 | -1) {
  const [lo, hi] = deck.box[input]!;
  const outcome = ({ actions, overriding }: NaiveDecision) => JSON.stringify([actions, overriding !== null]);
  const here = outcome(naiveDecide(deck, state));
  for (let value = state[input]! + direction / 2; value >= lo && value <= hi; value += direction / 2) {
    const there = naiveDecide(deck, { ...state, [input]: value });
    if (outcome(there) === here) continue;
    // A change at a half value holds from the whole value before it.
    const at = Number.isInteger(value) ? value : value - direction / 2;
    return { at, distance: Math.abs(at - state[input]!), actions: there.actions };
  }
  return null;
}

describe('the edges around a state', () => {
  it('lie where the decision changes, at no distance when the state is on the last value of its side', () => {
    const procedure = procedureOf(
      deckOf(power('first', [over(50), 'more-power'], [upTo(20), 'less-power'], [{}, 'hold-power'])),
    );
    const [around] = edgesOf(procedure, 'here', { a: 50 });
    expect(around).toMatchObject({
      quantity: 'a',
      below: { at: 20, distance: 30, actions: { power: 'less-power' } },
      above: { at: 50, distance: 0, actions: { power: 'more-power' } },
    });
  });

  it('are none where nothing changes within the phase, nor where only the rule changes', () => {
    const procedure = procedureOf(deckOf(power('first', [over(50), 'more-power'], [{}, 'more-power'])));
    expect(edgesOf(procedure, 'here', { a: 40 })).toEqual([{ quantity: 'a', below: null, above: null }]);
  });

  it('are those that a walk over the grid finds, for any tables', () => {
    fc.assert(
      fc.property(smallDeck(3), fc.infiniteStream(fc.nat()), (deck, picks) => {
        const procedure = procedureOf(deck);
        const grid = gridOf(deck.box);
        for (const pick of picks.take(20)) {
          const state = grid[pick % grid.length]!;
          for (const { quantity, below, above } of edgesOf(procedure, 'here', state)) {
            expect(below).toEqual(scan(deck, state, quantity, -1));
            expect(above).toEqual(scan(deck, state, quantity, 1));
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('a state from outside', () => {
  const procedure = procedureOf({ box: { a: [0, 100], b: [-5, 5] }, tables: [] });
  it.each([
    ['complete', { a: 0, b: 5 }, []],
    ['with a value missing', { a: 1 }, ['“b” is missing: B, −5 to 5 ft.']],
    ['with a text for a number', { a: '1', b: 0 }, ['“a” is "1", not a number: A, 0 to 100 ft.']],
    [
      'with a value out of the phase',
      { a: 100.5, b: 0 },
      ["“a” is 100.5, which can't occur in “Here”: 0 to 100 ft."],
    ],
    ['with a stranger', { a: 1, b: 0, c: 3 }, ['“c” is not seen in “Here”; it has: a, b.']],
    [
      'that is a list',
      [1, 2],
      ['A state is an object of quantities and numbers, such as {"altitude": 140}.'],
    ],
  ])('%s', (_, state, faults) => {
    expect(checkState(procedure, 'here', state).map((fault) => fault.replaceAll('\u00a0', ' '))).toEqual(
      faults,
    );
  });

  it('of an unknown phase', () => {
    expect(checkState(procedure, 'there', {})).toEqual(['The deck has no phase “there”; it has: here.']);
  });

  it('does not take what it inherits for a quantity', () => {
    expect(checkState(procedure, 'here', Object.create({ a: 1, b: 1 }))).toHaveLength(2);
    expect(checkState(procedure, 'here', JSON.parse('{"a":1,"b":1,"__proto__":2}'))).toHaveLength(1);
  });
});
