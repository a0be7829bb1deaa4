import { describe, expect, test } from 'vitest';
import { sayAsked, sayGraded, sayTimeLeft } from '../../../../src/app/state/drill-voice.ts';
import type { Prompt } from '../../../../src/cards/types.ts';
import type { Assessment } from '../../../../src/grading/types.ts';

const prompt = { title: 'In the groove, 340 ft, sinking fast' } as Prompt;

describe('what is read aloud in a drill', () => {
  test('the state and the time, when a scenario begins', () => {
    expect(sayAsked(3, 20, prompt, 5000)).toBe(
      'Scenario 3 of 20. In the groove, 340 ft, sinking fast. 5 seconds.',
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
