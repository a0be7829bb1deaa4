import { describe, expect, it } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import type { Prompt } from '../../../src/cards/types.ts';
import { assess } from '../../../src/grading/assess.ts';
import type { Assessment } from '../../../src/grading/types.ts';
import { answerEvent } from '../../../src/record/answer-event.ts';
import { parseEvent } from '../../../src/record/schema.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { shippedDeck } from '../../reference/shipped-deck.ts';
import { assessed, eveningMs, testIds } from './examples.ts';

/** An answer to a rule of the shipped deck: nose up called, and nothing else, where power was asked for too. */
const calledWrong = (() => {
  const procedure = compileRules(shippedDeck('marram-recovery')).procedure!;
  const card = cardsOf(procedure).find(({ kind }) => kind === 'rule')!;
  for (let seed = 1; ; seed++) {
    const prompt = promptFor(procedure, card, seed);
    const answer = { form: 'controls', chosen: { pitch: 'nose-up' } } as const;
    const graded = assess(procedure, prompt, answer, 500, { desiredInARow: 0, timing: 1 });
    if (graded.ok && graded.assessment.expected !== card.expected)
      return { procedure, prompt, assessment: graded.assessment };
  }
})();

const id = testIds().next(eveningMs);
const given = assessed();

describe('the event of an answer', () => {
  it('keeps what was asked, what was called, and what came of it', () => {
    expect(answerEvent(given, id, eveningMs)).toEqual({
      kind: 'answer',
      id,
      atMs: eveningMs,
      deck: 'marram-recovery',
      deckVersion: '1.0.0',
      card: 'value/alongside/altitude',
      cardKind: 'value',
      critical: true,
      mode: 'recall',
      seed: 77,
      performance: 'adequate',
      timeliness: 'late',
      rating: 2,
      elapsedMs: 2100,
      value: 160,
      signedError: 20,
      headline: '20 ft high',
      expected: '140 ft',
    });
  });

  it('keeps where a drill’s scenario was drawn, and nothing of it for other answers', () => {
    const drill = { phase: 'closing', closeness: 'edge', edge: 'sink', side: 'above' } as const;
    const event = answerEvent({ ...given, mode: 'drill', drill }, id, eveningMs);
    expect(event.drill).toEqual(drill);
    expect(parseEvent({ ...event })).toEqual({ ok: true, event });
    expect(Object.keys(answerEvent(given, id, eveningMs))).not.toContain('drill');
  });

  it('keeps the controls that were worked, in words, and what the state asked for, where that is more than the rule', () => {
    const { procedure, prompt, assessment } = calledWrong;
    const event = answerEvent({ ...given, deck: procedure.deck, prompt, assessment }, id, eveningMs);
    expect(event.called).toBe('nose up');
    expect(event.due).toBe(assessment.expected);
    expect(event.expected).toBe(prompt.card.expected);
    expect(parseEvent({ ...event })).toEqual({ ok: true, event });
  });

  it('keeps the day it was asked for, and nothing of it where that is the deck’s own', () => {
    const day = { 'wind-speed': 20, temperature: -5 };
    const event = answerEvent({ ...given, day }, id, eveningMs);
    expect(event.day).toEqual(day);
    expect(parseEvent({ ...event })).toEqual({ ok: true, event });
    for (const own of [given, { ...given, day: {} }])
      expect(Object.keys(answerEvent(own, id, eveningMs))).not.toContain('day');
  });

  it('is refused with a day that is no list of numbers', () => {
    const event = answerEvent(given, id, eveningMs);
    for (const day of [20, { 'wind-speed': '20' }, Object.fromEntries(Array(41).entries())])
      expect(parseEvent({ ...event, day })).toMatchObject({ ok: false });
  });

  it('has no number when none was called', () => {
    const assessment: Assessment = { ...given.assessment, detail: { form: 'none' } };
    const event = answerEvent({ ...given, assessment }, id, eveningMs);
    expect(Object.keys(event)).not.toContain('value');
    expect(Object.keys(event)).not.toContain('signedError');
  });

  it.each<[string, Partial<typeof given>, Partial<Assessment>, Partial<Prompt>, number]>([
    ['words without end', {}, { headline: 'x'.repeat(9000), expected: 'y'.repeat(9000) }, {}, eveningMs],
    ['a prompt left open for a month', { elapsedMs: 30 * 86_400_000 }, {}, {}, eveningMs],
    ['a stopwatch that ran backwards', { elapsedMs: -3 }, {}, {}, eveningMs],
    ['a clock with fractions', {}, {}, {}, eveningMs + 0.25],
    ['a clock before 1970', {}, {}, {}, -1],
  ])('can be read back, also with %s', (_, change, assessment, prompt, nowMs) => {
    const changed = {
      ...given,
      ...change,
      assessment: { ...given.assessment, ...assessment },
      prompt: { ...given.prompt, ...prompt },
    };
    const event = answerEvent(changed, id, nowMs);
    expect(parseEvent(event)).toEqual({ ok: true, event });
  });
});
