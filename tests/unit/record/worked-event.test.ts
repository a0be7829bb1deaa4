import { describe, expect, it } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import { assess } from '../../../src/grading/assess.ts';
import { answerEvent } from '../../../src/record/answer-event.ts';
import { parseEvent } from '../../../src/record/schema.ts';
import type { DaySet } from '../../../src/record/types.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { cardNamed, compiled } from '../cards/procedures.ts';
import { workedProcedure } from '../cards/worked-deck.ts';
import { eveningMs, testIds } from './examples.ts';

const own = workedProcedure();
const context = { desiredInARow: 0, timing: 1 };
/** What is set for the day and not drawn. */
const set: DaySet = { 'wind-angle': 30, 'pressure-altitude': 900 };
const setDay: Procedure = compiled(deckOfDay(own.deck, set).deck);

function answeredOn(procedure: Procedure, cardId: string, day?: DaySet) {
  const prompt = promptFor(procedure, cardNamed(cardId, procedure), 77);
  const graded = assess(procedure, prompt, { form: 'number', text: '20' }, 9_000, context);
  if (!graded.ok) throw new Error(graded.problem.message);
  const { assessment } = graded;
  const given = { deck: procedure.deck, prompt, assessment, mode: 'recall', elapsedMs: 9_000 } as const;
  return answerEvent({ ...given, ...(day ? { day } : {}) }, testIds().next(eveningMs), eveningMs);
}

describe('the event of an answer to a worked value', () => {
  it('keeps what was called, how far off it was, what was due, and how that is worked out', () => {
    const event = answeredOn(own, 'worked/over-deck');
    expect(event).toMatchObject({
      card: 'worked/over-deck',
      cardKind: 'worked',
      value: 20,
      expected: "Wind over deck = barge's speed + true wind × cos true wind off the bow",
      due: `${20 - event.signedError!}\u00a0kt`,
    });
    expect(parseEvent({ ...event })).toEqual({ ok: true, event });
  });

  it.each(cardsOf(own).flatMap(({ id, kind }) => (kind === 'worked' ? [id] : [])))(
    'is enough to draw the same question again, on the day it was asked: %s',
    (cardId) => {
      const event = answeredOn(setDay, cardId, set);
      const again = compiled(deckOfDay(own.deck, event.day ?? {}).deck);
      const prompt = promptFor(again, cardNamed(event.card, again), event.seed);
      const graded = assess(again, prompt, { form: 'number', text: String(event.value) }, 9_000, context);
      expect(graded).toMatchObject({
        assessment: {
          performance: event.performance,
          headline: event.headline,
          detail: { signedError: event.signedError },
          expected: event.due,
        },
      });
    },
  );
});
