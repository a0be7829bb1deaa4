import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import { promptForState } from '../../../src/cards/rule.ts';
import type { Answer, Prompt } from '../../../src/cards/types.ts';
import { assess } from '../../../src/grading/assess.ts';
import { decide } from '../../../src/rules/decide.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { cardNamed, shipped, small } from '../cards/procedures.ts';
import { graded, untroubled } from './small-calls.ts';

/** The answer that a pilot who knows it all gives. */
function expectedAnswer(procedure: Procedure, { ask }: Prompt): Answer {
  switch (ask.form) {
    case 'number':
      return { form: 'number', text: String(ask.band.target) };
    case 'sequence':
      return { form: 'sequence', chosen: ask.expected };
    case 'choice':
      return { form: 'choice', chosen: ask.correct };
    case 'controls':
      return { form: 'controls', chosen: decide(procedure, ask.phase, ask.state).actions };
    case 'point':
      return { form: 'point', at: ask.spot.at };
    case 'text':
      return { form: 'text', text: ask.accept[0]! };
  }
}

const procedures = [['small deck', small] as const, ...shipped];

describe('every card', () => {
  test.each(procedures)(
    'of %s is desired with its expected answer and outside without one',
    (_file, procedure) => {
      for (const card of cardsOf(procedure))
        for (let seed = 0; seed < 5; seed++) {
          const prompt = promptFor(procedure, card, seed);
          const right = assess(procedure, prompt, expectedAnswer(procedure, prompt), 1_000, untroubled);
          expect(right, card.id).toMatchObject({
            ok: true,
            assessment: { performance: 'desired', rating: 3 },
          });
          const none = assess(procedure, prompt, { form: 'none' }, 1_000, untroubled);
          expect(none, card.id).toMatchObject({
            ok: true,
            assessment: { performance: 'outside', rating: 1 },
          });
          if (!right.ok || !none.ok) continue;
          expect(none.assessment.expected).toBe(right.assessment.expected);
          // A worked value's card names its formula; its prompt expects what that comes to on the drawn day.
          if (card.kind === 'worked') {
            expect(right.assessment.expected).toMatch(/\d/);
            continue;
          }
          // A rule's card expects its own action; its prompt what the whole state calls for.
          if (card.kind !== 'rule') expect(right.assessment.expected).toBe(card.expected);
        }
    },
  );

  test.each(procedures)('of %s has words for what, where, and what is right', (_file, procedure) => {
    for (const card of cardsOf(procedure)) {
      const { place, title } = promptFor(procedure, card, 7);
      for (const words of [card.label, card.expected, place, title])
        expect(words.trim(), card.id).not.toBe('');
      expect(card.windowMs, card.id).toBeGreaterThan(0);
    }
  });

  test.each(shipped)(
    'of %s: a rule’s card shows states in which its own action is called for',
    (_file, procedure) => {
      for (const card of cardsOf(procedure).filter(({ kind }) => kind === 'rule'))
        for (let seed = 0; seed < 10; seed++) {
          const { ask } = promptFor(procedure, card, seed);
          if (ask.form !== 'controls') throw new Error(ask.form);
          const reasons = decide(procedure, ask.phase, ask.state).reasons.map(
            ({ table, rule }) => `rule/${table}/${rule}`,
          );
          expect(reasons, `seed ${seed}`).toContain(card.id);
        }
    },
  );
});

describe('an answer', () => {
  const value = promptFor(small, cardNamed('value/far/airspeed'), 1);
  const right: Answer = { form: 'number', text: '140' };

  test.each([
    [1_000, 2, 1, 'prompt', 4],
    [1_000, 1, 1, 'prompt', 3],
    [1_000, 9, Infinity, 'prompt', 3],
    [5_000, 2, 1, 'prompt', 3],
    [5_001, 2, 1, 'late', 2],
    [10_001, 2, 1, 'timed-out', 1],
    [10_001, 2, 1.5, 'late', 2],
    [NaN, 9, 1, 'prompt', 3],
    [-5, 9, 1, 'prompt', 3],
  ])(
    'after %d ms, %d desired before, timing %d: %s',
    (elapsedMs, desiredInARow, timing, timeliness, rating) => {
      expect(assess(small, value, right, elapsedMs, { desiredInARow, timing })).toMatchObject({
        answer: right,
        assessment: { performance: 'desired', timeliness, rating },
      });
    },
  );

  test.each([
    [1_000, 1, 'no answer'],
    [20_000, 1, 'no answer in time'],
    [20_000, Infinity, 'no answer'],
  ])('not given after %d ms, timing %d: %s', (elapsedMs, timing, headline) => {
    expect(assess(small, value, { form: 'none' }, elapsedMs, { desiredInARow: 0, timing })).toMatchObject({
      assessment: {
        performance: 'outside',
        rating: 1,
        headline,
        expected: '140\u00a0kt',
        detail: { form: 'none' },
      },
    });
  });

  it('not given where the overriding action was required is critical', () => {
    const state = { altitude: 120, closure: 60, sink: 500 };
    const prompt = promptForState(small, cardNamed('rule/speed/fast'), 'approach', state, 1);
    expect(graded(prompt, { form: 'none' })).toMatchObject({ critical: true, expected: 'go around' });
  });

  it('of another form is refused with what to do instead', () => {
    expect(assess(small, value, { form: 'choice', chosen: '140' }, 0, untroubled)).toEqual({
      ok: false,
      problem: { code: 'wrong-form', message: 'This question is answered by typing a number.' },
    });
  });

  it('that can’t be read leaves the prompt open', () => {
    expect(assess(small, value, { form: 'number', text: '1e9' }, 0, untroubled)).toMatchObject({
      ok: false,
      problem: { code: 'out-of-range' },
    });
  });
});

const hostileText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.constantFrom(
    '',
    '__proto__',
    'constructor',
    '1e999',
    '-0',
    'NaN',
    '<img onerror=x>',
    '\u0000',
    '\ud800',
    '9'.repeat(5000),
  ),
);
/** Ids that exist somewhere, ids that don't, and ids that name what every object has. */
const anyId = fc.oneof(
  hostileText,
  fc.constantFrom('fuel', 'wheels', 'far', 'pitch', 'nose-up', 'call', 'go-around', 'late-checks/fuel', '0'),
);
const number = fc.oneof(fc.double(), fc.integer({ min: -50, max: 450 }));
const anyAnswer: fc.Arbitrary<Answer> = fc.oneof(
  fc.record({ form: fc.constant('number' as const), text: hostileText }),
  fc.record({ form: fc.constant('sequence' as const), chosen: fc.array(anyId, { maxLength: 8 }) }),
  fc.record({ form: fc.constant('choice' as const), chosen: anyId }),
  fc.record({ form: fc.constant('controls' as const), chosen: fc.dictionary(anyId, anyId, { maxKeys: 4 }) }),
  fc.record({ form: fc.constant('point' as const), at: fc.tuple(number, number) }),
  fc.record({ form: fc.constant('text' as const), text: hostileText }),
  fc.constant({ form: 'none' as const }),
);

describe('whatever is answered to whatever is asked', () => {
  const cards = cardsOf(small);

  it('gives an assessment or a problem, and never throws', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cards),
        fc.integer(),
        anyAnswer,
        fc.double(),
        fc.record({ desiredInARow: fc.double(), timing: fc.double() }),
        (card, seed, answer, elapsedMs, context) => {
          const result = assess(small, promptFor(small, card, seed), answer, elapsedMs, context);
          if (!result.ok) {
            expect(result.problem.message).not.toBe('');
            return;
          }
          const { rating, headline, expected, detail } = result.assessment;
          expect([1, 2, 3, 4]).toContain(rating);
          expect(headline).not.toBe('');
          expect(expected).not.toBe('');
          expect(detail.form).toBe(answer.form);
          // What is recorded must survive being written down.
          expect(JSON.parse(JSON.stringify(result.assessment))).toEqual(result.assessment);
        },
      ),
      { numRuns: 1500 },
    );
  });

  it('never rates an answer above the one that is expected', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cards),
        fc.integer(),
        anyAnswer,
        fc.nat(20_000),
        fc.nat(4),
        (card, seed, answer, ms, row) => {
          const prompt = promptFor(small, card, seed);
          const context = { desiredInARow: row, timing: 1 };
          const given = assess(small, prompt, answer, ms, context);
          const best = assess(small, prompt, expectedAnswer(small, prompt), ms, context);
          if (given.ok && best.ok)
            expect(given.assessment.rating).toBeLessThanOrEqual(best.assessment.rating);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('changes neither prompt nor answer', () => {
    fc.assert(
      fc.property(fc.constantFrom(...cards), fc.integer(), anyAnswer, (card, seed, answer) => {
        const prompt = promptFor(small, card, seed);
        const before = structuredClone({ prompt, answer });
        assess(small, prompt, answer, 1_000, untroubled);
        expect({ prompt, answer }).toEqual(before);
      }),
      { numRuns: 200 },
    );
  });
});
