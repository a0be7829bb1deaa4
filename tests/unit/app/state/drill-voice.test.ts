import { describe, expect, test } from 'vitest';
import { aloud, sayAsked, sayGraded, sayTimeLeft } from '../../../../src/app/state/drill-voice.ts';
import type { Prompt } from '../../../../src/cards/types.ts';
import type { Assessment } from '../../../../src/grading/types.ts';

const prompt = { title: 'In the groove, 340 ft, sinking fast' } as Prompt;

describe('what is read aloud in a drill', () => {
  test('the state and the time, when a scenario begins', () => {
    expect(sayAsked(3, 20, prompt, 5000)).toBe(
      'Scenario 3 of 20. In the groove, 340 feet, sinking fast. 5 seconds.',
    );
    expect(sayAsked(3, 20, prompt, Infinity)).toMatch(/Untimed\.$/);
  });

  test.each([
    ['nothing at the start', 8000, 100, null],
    ['half the time', 8000, 4000, 'Half the time left: 4 seconds.'],
    ['the same words until the end', 8000, 7900, 'Half the time left: 4 seconds.'],
    ['nothing once it has closed: the page says that', 8000, 8000, ''],
    ['nothing in a window too short for it', 4000, 3000, null],
    ['nothing when untimed', Infinity, 100_000, null],
  ])('the time left: %s', (_, windowMs, elapsedMs, words) => {
    expect(sayTimeLeft(windowMs, elapsedMs)).toBe(words);
  });

  test.each([
    ['sink −40\u00a0ft/min', 'sink minus 40 feet per minute'],
    ['drift 3\u00a0kt to the left, 165\u00a0ft', 'drift 3 knots to the left, 165 feet'],
    ['bank 28°, 1.2\u00a0nm, thrust 95\u00a0%', 'bank 28 degrees, 1.2 nautical miles, thrust 95 per cent'],
    ['angle of attack 10.0\u00a0units', 'angle of attack 10.0\u00a0units'],
    ['kt and ft on their own', 'kt and ft on their own'],
  ])('%j with its units in words', (text, words) => {
    expect(aloud(text)).toBe(words);
  });

  test('a missed go-around once, not again as what was called for', () => {
    const missed = { performance: 'outside', timeliness: 'prompt', expected: 'go around' } as Assessment;
    expect(sayGraded({ ...missed, headline: 'missed: go around' })).toBe('Outside. Missed: go around.');
  });

  test('the result, with what was called for when it was not called', () => {
    const assessment = {
      performance: 'outside',
      timeliness: 'late',
      headline: 'wrong way on power',
      expected: 'more power',
    } as Assessment;
    expect(sayGraded(assessment)).toBe('Outside, late. Wrong way on power. Called for: more power.');
    expect(
      sayGraded({
        ...assessment,
        performance: 'desired',
        timeliness: 'prompt',
        headline: 'every control right',
      }),
    ).toBe('Desired. Every control right.');
  });
});
