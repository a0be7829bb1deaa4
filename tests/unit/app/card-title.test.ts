import { describe, expect, it } from 'vitest';
import { cardTitle } from '../../../src/app/card-title.ts';
import { cardsOf } from '../../../src/cards/registry.ts';
import { cardNamed, shipped, small } from '../cards/procedures.ts';

describe('the name of a card in a list', () => {
  it('is its own, except for a rule', () => {
    const value = cardsOf(small).find(({ kind }) => kind === 'value')!;
    expect(cardTitle(small.deck, value)).toBe(value.label);
    expect(cardTitle(small.deck, { ...cardNamed(value.id), id: 'rule/none/none', kind: 'rule' })).toBe(
      value.label,
    );
  });

  it.each(shipped)('of a rule of %s says what it looks at, in no signs', (_, procedure) => {
    const rules = cardsOf(procedure).filter(({ kind }) => kind === 'rule');
    expect(rules.length).toBeGreaterThan(0);
    for (const card of rules) {
      const title = cardTitle(procedure.deck, card);
      expect(title).not.toBe(card.label);
      expect(title).not.toMatch(/[<>[\]=]|\.\./);
    }
  });
});
