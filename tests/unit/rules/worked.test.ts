import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/rules/analyse.ts';
import { workedProcedure } from '../cards/worked-deck.ts';

const found = (...edits: readonly (readonly [string, string])[]) =>
  analyse(workedProcedure(...edits)).map(({ code, severity, path, message }) => ({
    code,
    severity,
    path,
    message,
  }));

describe('worked values', () => {
  it('are fine where all that is drawn has a say, and some of it comes to a value', () => {
    expect(found()).toEqual([]);
  });

  it('are told of a draw without a say in the result', () => {
    expect(
      found(['draw: { wind-speed: [0, 25]', 'draw: { temperature: [0, 25], wind-speed: [0, 25]']),
    ).toEqual([
      {
        code: 'draw-without-effect',
        severity: 'warning',
        path: ['worked', 0, 'draw', 'temperature'],
        message:
          'What is drawn anew should have a say in “Closure”, “Temperature” has none; take it out, or use it in the formula.',
      },
    ]);
  });

  it('are told of draws that come to nothing', () => {
    expect(found(['draw: { temperature: [20, 60]', 'draw: { temperature: [50, 60]'])).toMatchObject([
      { code: 'draw-without-value', severity: 'warning', path: ['worked', 1, 'draw'] },
    ]);
  });

  it('are told of draws to which one answer is right throughout', () => {
    expect(
      found(
        ['barge-speed: [0, 12] }\n    desired: 1\n', 'barge-speed: [0, 12] }\n    desired: 20\n'],
        ['adequate: 4', 'adequate: 30'],
      ),
    ).toMatchObject([
      {
        code: 'draw-too-narrow',
        severity: 'warning',
        path: ['worked', 0, 'draw'],
        message:
          'What is drawn anew should ask for more than one answer, all of it comes to 23 to 60\u00a0kt, where one answer is desired throughout; draw from further apart, or lower “desired”.',
      },
    ]);
  });
});
