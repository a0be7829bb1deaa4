import { describe, expect, it } from 'vitest';
import { sayCondition, sayWhen } from '../../../src/app/rule-sentence.ts';
import type { Quantity } from '../../../src/deck/types.ts';
import { shippedDecks } from './parts/shipped-decks.ts';

const altitude: Quantity = { id: 'altitude', label: 'Altitude', unit: 'ft', range: [0, 5000], step: 5 };

describe('a condition in words', () => {
  it.each([
    ['< 600', 'under 600\u00a0ft'],
    ['>= 600', '600\u00a0ft or more'],
    ['[600..700]', '600 to 700\u00a0ft'],
    ['(600..700]', 'over 600 up to 700\u00a0ft'],
    ['< 100, > 900', 'under 100\u00a0ft or over 900\u00a0ft'],
    ['not([100..900])', 'under 100\u00a0ft or over 900\u00a0ft'],
  ])('%s is “%s”', (condition, words) => {
    expect(sayCondition(condition, altitude)).toBe(words);
  });

  it.each(['-', '>= 0', '[0..5000]'])('is nothing where any value will do, as in %s', (condition) => {
    expect(sayCondition(condition, altitude)).toBeNull();
  });

  it('is left as written when it can’t be read', () => {
    expect(sayCondition('odd one', altitude)).toBe('odd one');
  });
});

describe('a rule in words', () => {
  const deck = shippedDecks.find((candidate) => candidate.id === 'marram-recovery')!;

  it('names all its conditions in one sentence', () => {
    const rule = { id: 'r', when: { altitude: '> 700', sink: '< 150' }, then: 'less-power', because: 'b' };
    expect(sayWhen(deck, rule)).toBe('Altitude over 700\u00a0ft and sink under 150\u00a0ft/min');
  });

  it('says so when it holds in all other cases', () => {
    expect(sayWhen(deck, { id: 'r', when: {}, then: 'x', because: 'b' })).toBe('In all other cases');
    expect(sayWhen(deck, { id: 'r', when: { altitude: '-' }, then: 'x', because: 'b' })).toBe(
      'In all other cases',
    );
  });

  it('reads without symbols for every rule of the shipped decks', () => {
    for (const shipped of shippedDecks)
      for (const table of shipped.tables ?? [])
        for (const rule of table.rules) expect(sayWhen(shipped, rule)).not.toMatch(/[<>[\]=]|\.\./);
  });
});
