import { describe, expect, it } from 'vitest';
import { readProcedure } from '../../../../src/rules/read.ts';
import { decide } from '../../../../src/rules/decide.ts';
import type { State } from '../../../../src/rules/types.ts';
import { fixtureDeckText } from '../../deck/fixture.ts';
import { deckTool } from './in-memory.ts';

interface Situation {
  readonly state: State;
  readonly cue: string;
  readonly actions: Readonly<Record<string, string>>;
  readonly overriding: string | null;
  readonly rules: readonly string[];
}
type Line = Situation & {
  readonly phase: string;
  readonly closeness?: string;
  readonly edge?: { readonly quantity: string };
  readonly twin?: Situation & { readonly quantity: string };
};
const read = (lines: readonly string[]): Line[] => lines.map((line) => JSON.parse(line) as Line);
const { procedure } = readProcedure(fixtureDeckText);

describe('scenarios', () => {
  it('writes as many situations as asked for, each with its phase, state, cue and what is required', async () => {
    const { exitCode, out, err } = await deckTool('scenarios good.deck.yaml --count 40 --seed 3');
    expect(exitCode).toBe(0);
    const lines = read(out);
    expect(lines).toHaveLength(40);
    for (const { phase, state, cue, actions, overriding, rules } of lines) {
      const decision = decide(procedure!, phase, state);
      expect(actions).toEqual(decision.actions);
      expect(overriding).toBe(decision.overriding?.action ?? null);
      expect(rules).toEqual(decision.reasons.map(({ table, rule }) => `${table}/${rule}`));
      expect(cue).not.toBe('');
    }
    expect(new Set(lines.map(({ closeness }) => closeness)).size).toBeGreaterThan(1);
    expect(err.at(-1)).toMatch(
      /^Drawn: (\d+) of \1 rules(?: \(\d+ of the deck, each counted once in every phase it serves\))?, .* inputs .*, 0 of \d+ twin pairs\.$/,
    );
  });

  it('writes the same for the same seed, something else for another', async () => {
    const { out } = await deckTool('scenarios good.deck.yaml --seed 1');
    expect(out).toHaveLength(20);
    expect((await deckTool('scenarios good.deck.yaml')).out).toEqual(out);
    expect((await deckTool('scenarios good.deck.yaml --seed 2')).out).not.toEqual(out);
  });

  it('keeps to one rule and one closeness', async () => {
    const lines = read(
      (await deckTool('scenarios good.deck.yaml --rule far-speed/far-fast --closeness edge')).out,
    );
    for (const { rules, closeness, edge } of lines) {
      expect(rules).toContain('far-speed/far-fast');
      expect(closeness).toBe('edge');
      expect(edge).toBeDefined();
    }
  });

  it('writes twins: alike but for one quantity, with other actions', async () => {
    const { out, err } = await deckTool('scenarios good.deck.yaml --twins --count 200');
    for (const { phase, state, actions, overriding, twin } of read(out)) {
      const differing = Object.keys(state).filter((id) => state[id] !== twin!.state[id]);
      expect(differing).toEqual([twin!.quantity]);
      expect([twin!.actions, twin!.overriding]).not.toEqual([actions, overriding]);
      expect(decide(procedure!, phase, twin!.state).actions).toEqual(twin!.actions);
    }
    expect(err.at(-1)).toMatch(/(\d+) of \1 twin pairs\.$/);
  });

  it('says that there is no such rule', async () => {
    const { exitCode, out, err } = await deckTool('scenarios good.deck.yaml --rule far-speed/none');
    expect([exitCode, out]).toEqual([2, []]);
    expect(err.join()).toContain('no rule “far-speed/none”');
  });

  it('says the errors of a faulty deck and draws nothing', async () => {
    const { exitCode, out, err } = await deckTool('scenarios wrong-unit.deck.yaml');
    expect([exitCode, out]).toEqual([1, []]);
    expect(err.join('\n')).toContain('unknown-unit');
  });
});
