import { describe, expect, it, test } from 'vitest';
import type { Ask, Card, Prompt } from '../../../src/cards/types.ts';
import { gradeChoice } from '../../../src/grading/grade-choice.ts';
import { gradePoint } from '../../../src/grading/grade-point.ts';
import { smallDeck } from '../cards/small-deck.ts';

const plate = smallDeck.plates![0]!;
const spotTwo = plate.spots[1]!;
const point = (x: number, y: number) =>
  gradePoint({ form: 'point', plate, spot: spotTwo }, { form: 'point', at: [x, y] });

describe('a point on a plate', () => {
  test.each([
    ['on it', 200, 50, 'desired', 'on the spot'],
    ['at the edge of desired', 206, 58, 'desired', 'on the spot'],
    ['at the edge of adequate', 215, 70, 'adequate', '25\u00a0ft off'],
    ['beyond', 240, 50, 'outside', '40\u00a0ft off'],
    ['on another spot', 300, 51, 'outside', 'that is spot 1'],
  ])('%s', (_name, x, y, performance, headline) => {
    expect(point(x, y)).toMatchObject({ ok: true, performance, headline });
  });

  it('says small distances of a chart in miles as they are', () => {
    const chart = { ...plate, unit: 'nm' as const, size: [4, 1] as const };
    const spot = { ...spotTwo, at: [2, 0.5] as const, desiredWithin: 0.05, adequateWithin: 0.2 };
    const answer = { form: 'point', at: [2.123, 0.5] } as const;
    expect(gradePoint({ form: 'point', plate: { ...chart, spots: [spot] }, spot }, answer)).toMatchObject({
      performance: 'adequate',
      headline: '0.12\u00a0nm off',
    });
  });

  it('keeps where it was and how far off', () => {
    expect(point(203, 54)).toMatchObject({ detail: { form: 'point', at: [203, 54], distance: 5 } });
  });

  test.each([
    [NaN, 50, 'not-a-number'],
    [200, Infinity, 'not-a-number'],
    [-1, 50, 'out-of-range'],
    [200, 101, 'out-of-range'],
  ])('(%d, %d) is no point of the drawing', (x, y, code) => {
    expect(point(x, y)).toMatchObject({ ok: false, problem: { code } });
  });
});

describe('a choice', () => {
  const ask: Extract<Ask, { form: 'choice' }> = {
    form: 'choice',
    options: ['a', 'b', 'c'].map((id) => ({ id, label: `Gate ${id}` })),
    correct: 'b',
  };
  const promptOf = (kind: Card['kind']) => ({ card: { kind } as Card, ask }) as Prompt;
  const grade = (chosen: string, kind: Card['kind'] = 'note') =>
    gradeChoice(promptOf(kind), ask, { form: 'choice', chosen });

  test.each([
    ['b', 'note', 'desired', 'right'],
    ['a', 'note', 'outside', 'not “Gate a”'],
    ['a', 'complete-by', 'outside', '1 gate too early'],
    ['c', 'complete-by', 'outside', '1 gate too late'],
  ] as const)('of %s for a %s card', (chosen, kind, performance, headline) => {
    expect(grade(chosen, kind)).toMatchObject({ ok: true, performance, headline });
  });

  it('must be among those shown', () => {
    expect(grade('z')).toMatchObject({ ok: false, problem: { code: 'unknown-choice' } });
    expect(grade('constructor')).toMatchObject({ ok: false, problem: { code: 'unknown-choice' } });
  });
});
