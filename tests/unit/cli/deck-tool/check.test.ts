import { describe, expect, it } from 'vitest';
import { deckTool } from './in-memory.ts';

describe('check', () => {
  it('says what a faultless deck holds', async () => {
    const { exitCode, out, err } = await deckTool('check good.deck.yaml');
    expect([exitCode, err]).toEqual([0, []]);
    expect(out).toHaveLength(1);
    expect(out[0]).toMatch(
      /^good\.deck\.yaml: no errors; 5 gates, 1 checklist, 17 rules in 5 tables and \d+ cards\.$/,
    );
  });

  it('shows an error with line, column, where and mend, and ends with 1', async () => {
    const { exitCode, out } = await deckTool('check wrong-unit.deck.yaml');
    expect(exitCode).toBe(1);
    expect(out[0]).toMatch(/^wrong-unit\.deck\.yaml:\d+:\d+ error unknown-unit/);
    expect(out[0]).toContain('furlong');
    expect(out.at(-1)).toBe('wrong-unit.deck.yaml: 1 error.');
  });

  it('shows a condition that can not be read as an error', async () => {
    const { exitCode, out } = await deckTool('check bad-condition.deck.yaml');
    expect(exitCode).toBe(1);
    expect(out[0]).toMatch(/^bad-condition\.deck\.yaml:\d+:\d+ error bad-condition/);
  });

  it('shows a gap with a situation that no rule answers, and the line of its table', async () => {
    const { exitCode, out } = await deckTool('check gap.deck.yaml');
    expect(exitCode).toBe(1);
    expect(out[0]).toMatch(/^gap\.deck\.yaml:\d+:\d+ error gap/);
    const closure = Number(/closure (\d+)/.exec(out[0]!)?.[1]);
    expect(closure).toBeGreaterThanOrEqual(45);
    expect(closure).toBeLessThan(50);
  });

  it('shows a leg that can not be flown, with the line of the gate where it ends', async () => {
    const { exitCode, out } = await deckTool('check too-steep.deck.yaml');
    expect(exitCode).toBe(1);
    expect(out[0]).toMatch(/^too-steep\.deck\.yaml:\d+:\d+ error leg-not-flyable/);
    expect(out[0]).toContain('from “Far gate” to “Middle gate”');
  });

  it('ends with 0 when there are only warnings', async () => {
    const { exitCode, out } = await deckTool('check unused.deck.yaml');
    expect(exitCode).toBe(0);
    expect(out[0]).toContain('warning unused-source');
    expect(out.at(-1)).toMatch(/^unused\.deck\.yaml: no errors and 1 warning; 5 gates/);
  });

  it('judges every file, also after one that is missing or faulty', async () => {
    const { exitCode, out, err } = await deckTool('check gone.deck.yaml gap.deck.yaml good.deck.yaml');
    expect(exitCode).toBe(1);
    expect(err).toEqual([`gone.deck.yaml can't be read: there is no such file.`]);
    expect(out.some((line) => line.startsWith('gap.deck.yaml: 1 error'))).toBe(true);
    expect(out.at(-1)).toMatch(/^good\.deck\.yaml: no errors/);
  });

  it('writes findings as lines of JSON when asked, and nothing for a faultless deck', async () => {
    const { exitCode, out } = await deckTool('check --json gap.deck.yaml good.deck.yaml');
    expect(exitCode).toBe(1);
    expect(out).toHaveLength(1);
    const finding: unknown = JSON.parse(out[0]!);
    expect(finding).toMatchObject({ file: 'gap.deck.yaml', severity: 'error', code: 'gap' });
    expect(finding).toMatchObject({ path: ['tables', 0], line: expect.any(Number), column: 5 });
    expect(finding).toMatchObject({ counterexample: { closure: expect.any(Number) } });
  });
});
