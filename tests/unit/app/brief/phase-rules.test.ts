import { describe, expect, it } from 'vitest';
import { phaseOf } from '../../../../src/deck/lookup.ts';
import { instructionIn, limitsOf, tablesOf } from '../../../../src/app/pages/brief/phase-rules.ts';
import { shippedDeck } from '../../../reference/shipped-deck.ts';

const deck = shippedDeck('marram-recovery');

describe('the rules of a phase on the briefing sheet', () => {
  it('lists every table of the phase once, those that beat all others first', () => {
    const phase = phaseOf(deck, 'closing');
    const tables = tablesOf(deck, phase);
    const own = deck.tables!.filter(({ phases }) => phases.includes('closing'));
    expect(new Set(tables)).toEqual(new Set(own));
    expect(tables).toHaveLength(own.length);
    const overriding = tables.map((table) => table.overriding === true);
    expect(overriding).toEqual([...overriding].sort((a, b) => Number(b) - Number(a)));
    expect(overriding[0]).toBe(true);
  });

  it('says an action as an instruction with a capital letter', () => {
    const table = deck.tables!.find(({ control }) => control === 'pitch')!;
    expect(instructionIn(deck, table, 'nose-up')).toBe('Nose up');
  });

  it('says each end of a limit with its unit, and why', () => {
    const turn = limitsOf(deck, phaseOf(deck, 'final-turn'));
    expect(turn.map(({ words }) => words)).toContain('Bank never above 35°');
    expect(turn.every(({ because }) => because !== undefined)).toBe(true);
  });
});
