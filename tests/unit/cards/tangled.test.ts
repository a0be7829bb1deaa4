import { describe, expect, it } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import type { Budget } from '../../../src/rules/cover.ts';
import { seeded } from '../../../src/rules/random.ts';
import { drawState } from '../../../src/rules/draw.ts';
import { canDecide, decides, witnessWork } from '../../../src/rules/witness.ts';
import { compiled } from './procedures.ts';
import { tangledDeck } from './tangled-deck.ts';

describe('a table too tangled to be proved', () => {
  const ruleCount = 401;
  const procedure = compiled(tangledDeck(ruleCount));
  const [rules] = procedure.phases.values();
  const [table] = rules!.base;

  it('takes no more work than all the rules of a deck may', () => {
    const budget: Budget = { left: witnessWork };
    for (const rule of table!.rules) expect(canDecide(procedure, rules!, table!, rule, budget)).toBe(true);
    // The step that uses up the rest may go over by what it takes itself: one try, or the ground of one table.
    const oneTry = 2 * ruleCount;
    const ground = 4 * ruleCount ** 2 * rules!.box.size;
    expect(budget.left).toBeGreaterThan(-oneTry - ground);
    const before = budget.left;
    for (const rule of table!.rules) canDecide(procedure, rules!, table!, rule, budget);
    expect(budget.left).toBe(before);
  });

  it('gives a card for each of its rules, and each of them something to ask', () => {
    const cards = cardsOf(procedure).filter(({ kind }) => kind === 'rule');
    expect(cards).toHaveLength(ruleCount);
    for (const card of cards.filter((_, i) => i % 50 === 0)) {
      const { ask } = promptFor(procedure, card, 3);
      expect(ask.form === 'controls' && Object.keys(ask.state)).toHaveLength(12);
    }
  });

  it('shows states that the rule decides, where some are found', () => {
    const drawn = table!.rules.slice(0, 60).map((rule) => ({
      rule,
      ...drawState(procedure, table!.id, rule.id, seeded(rule.index))!,
    }));
    const decided = drawn.filter(({ rule, state }) => decides(rules!, table!, rule, state));
    expect(decided.length).toBeGreaterThan(55);
  });
});

describe('a rule that never decides', () => {
  it('gives no card where that can be found out', () => {
    const never = { id: 'never', when: {}, then: 'hold', because: 'Made.' };
    const deck = tangledDeck(4, 2);
    const [table] = deck.tables!;
    const shadowed = { ...table!, rules: [{ ...never, id: 'always' }, ...table!.rules, never] };
    const ids = cardsOf(compiled({ ...deck, tables: [shadowed] })).map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith('rule/'))).toEqual(['rule/large/always']);
  });
});
