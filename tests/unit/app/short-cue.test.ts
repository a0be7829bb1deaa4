import { describe, expect, it } from 'vitest';
import { shortCue } from '../../../src/app/prompt/short-cue.ts';
import { cueOf } from '../../../src/cards/cue.ts';
import { quantityOf } from '../../../src/deck/lookup.ts';
import { decide } from '../../../src/rules/decide.ts';
import { seeded } from '../../../src/rules/random.ts';
import { drawState } from '../../../src/rules/draw.ts';
import { procedureOf } from '../../reference/passes.ts';

const procedure = procedureOf('marram-recovery');
const { deck } = procedure;

describe('a state in a few words', () => {
  const random = seeded(3);
  const drawn = deck.tables!.flatMap(({ id, rules }) =>
    rules.flatMap((rule) => {
      const found = drawState(procedure, id, rule.id, random);
      return found ? [{ ...found, table: id, rule }] : [];
    }),
  );

  it('begins where the full cue does, and is never longer', () => {
    expect(drawn.length).toBeGreaterThan(50);
    for (const { phase: id, state, table, rule } of drawn) {
      const phase = deck.phases!.find((one) => one.id === id)!;
      const short = shortCue(procedure, id, state, { table, rule: rule.id });
      const full = cueOf(procedure, phase, state);
      expect(short.startsWith(phase.cue ?? phase.label)).toBe(true);
      // A word may stand for a number in either: parts are what is counted.
      expect(short.split(', ').length).toBeLessThanOrEqual(full.split(', ').length);
    }
  });

  it('says what the rule looked at, and no more', () => {
    const state = { across: 35, drift: 1, altitude: 185, sink: 10, closure: 5 };
    const { reasons } = decide(procedure, 'crossing', state);
    for (const reason of reasons) {
      const rule = deck
        .tables!.find(({ id }) => id === reason.table)!
        .rules.find(({ id }) => id === reason.rule)!;
      const looked = Object.keys(rule.when);
      if (looked.length === 0) continue;
      const said = shortCue(procedure, 'crossing', state, reason);
      expect(said.split(', ')).toHaveLength(1 + looked.length);
      for (const id of ['drift', 'closure', 'across'] as const)
        if (!looked.includes(id)) expect(said).not.toContain(quantityOf(deck, id).spoken!);
    }
  });

  it('says the two values that matter most, where no rule decided', () => {
    const state = { across: 35, drift: 1, altitude: 185, sink: 10, closure: 5 };
    expect(shortCue(procedure, 'crossing', state, null).split(', ')).toHaveLength(3);
  });
});
