/** What one answered card costs the core, against the bare memory library on the same answers. */
import { createEmptyCard, fsrs, type Card as BareCard, type Grade } from 'ts-fsrs';
import { cardsOf, promptFor } from '../../src/cards/registry.ts';
import type { Answer, Prompt } from '../../src/cards/types.ts';
import { assess } from '../../src/grading/assess.ts';
import { createScheduler } from '../../src/memory/scheduler.ts';
import { answerEvent } from '../../src/record/answer-event.ts';
import { eventIds } from '../../src/record/event-id.ts';
import { Fold } from '../../src/record/fold.ts';
import { seeded } from '../../src/rules/random.ts';
import type { Procedure } from '../../src/rules/types.ts';
import { measure, type Measured } from './measure.ts';

/** Answers a card gets before the record starts afresh: as many as in a year or two. */
const answersPerCard = 12;
const dayMs = 86_400_000;
const startMs = Date.UTC(2026, 0, 1);
const rounds = 15;

interface Asked {
  readonly prompt: Prompt;
  readonly answer: Answer;
}

/** Assess, schedule, append (in memory): all that happens between the answer and the next card. */
export function answeredCard(procedure: Procedure, asked: readonly Asked[]): Measured {
  const { deck } = procedure;
  const scheduler = createScheduler();
  const random = seeded(1);
  const ids = eventIds((count) => Uint8Array.from({ length: count }, () => random() * 256));
  const context = { desiredInARow: 0, timing: 1 };
  let fold = new Fold(scheduler);
  const calls = asked.length * answersPerCard;
  return measure(
    (call) => {
      const turn = call % calls;
      if (turn === 0) fold = new Fold(scheduler);
      const { prompt, answer } = asked[turn % asked.length]!;
      const nowMs = startMs + Math.floor(turn / asked.length) * 7 * dayMs + turn;
      const graded = assess(procedure, prompt, answer, 1500, context);
      if (!graded.ok) throw new Error(graded.problem.message);
      const { assessment } = graded;
      const event = answerEvent(
        { deck, prompt, assessment, mode: 'recall', elapsedMs: 1500 },
        ids.next(nowMs),
        nowMs,
      );
      return fold.add([event]);
    },
    rounds,
    calls,
  );
}

/** The library's own step from card to card, at the same times. */
export function bareStep(cards: number): Measured {
  const bare = fsrs({ enable_fuzz: false });
  const grade: Grade = 3;
  const states: BareCard[] = [];
  const calls = cards * answersPerCard;
  return measure(
    (call) => {
      const turn = call % calls;
      const at = turn % cards;
      const now = new Date(startMs + Math.floor(turn / cards) * 7 * dayMs + turn);
      const before = turn < cards ? createEmptyCard(now) : states[at]!;
      return (states[at] = bare.next(before, now, grade).card);
    },
    rounds,
    calls,
  );
}

/** One prompt of every card, each with its right answer. */
export function askedOnce(procedure: Procedure, rightAnswer: (prompt: Prompt) => Answer): Asked[] {
  return cardsOf(procedure).map((card, index) => {
    const prompt = promptFor(procedure, card, index);
    return { prompt, answer: rightAnswer(prompt) };
  });
}
