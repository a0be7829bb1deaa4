import { describe, expect, it } from 'vitest';
import { deckTool } from './in-memory.ts';

type Line = Record<'id' | 'kind' | 'gate' | 'prompt' | 'expected', string>;
const read = (lines: readonly string[]): Line[] => lines.map((line) => JSON.parse(line) as Line);

describe('cards', () => {
  it('lists each card once with its kind, gate, prompt and expected answer', async () => {
    const { exitCode, out, err } = await deckTool('cards good.deck.yaml');
    expect([exitCode, err]).toEqual([0, []]);
    const cards = read(out);
    expect(new Set(cards.map(({ id }) => id)).size).toBe(cards.length);
    expect(Object.keys(cards[0]!)).toEqual(['id', 'kind', 'gate', 'prompt', 'expected']);
    const altitude = cards.find(({ id }) => id === 'value/middle/altitude');
    expect(altitude).toMatchObject({ kind: 'value', gate: 'middle', expected: '300\u00a0ft' });
    expect(altitude?.prompt).toMatch(/^Gate 2 of 5 · Middle gate · Altitude/);
  });

  it('shows a rule in a situation of its own, another one for another seed', async () => {
    const rule = async (argv: string) =>
      read((await deckTool(argv)).out).find(({ id }) => id === 'rule/far-speed/far-fast')!.prompt;
    const first = await rule('cards good.deck.yaml');
    expect(Number(/Closure (\d+)/.exec(first)?.[1])).toBeGreaterThan(70);
    expect(await rule('cards good.deck.yaml --seed 1')).toBe(first);
    expect(await rule('cards good.deck.yaml --seed 2')).not.toBe(first);
  });

  it('says the errors of a faulty deck and lists nothing', async () => {
    const { exitCode, out, err } = await deckTool('cards wrong-unit.deck.yaml');
    expect([exitCode, out]).toEqual([1, []]);
    expect(err.join('\n')).toContain('unknown-unit');
  });

  it('says that a file is missing', async () => {
    expect(await deckTool('cards gone.deck.yaml')).toMatchObject({ exitCode: 1, out: [] });
  });
});
