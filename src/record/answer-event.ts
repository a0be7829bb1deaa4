/** Assessment -> event: what the record keeps of an answer. */
import type { Deck } from '../deck/types.ts';
import type { Prompt } from '../cards/types.ts';
import { markOfRecall } from '../drill/recall-mark.ts';
import type { DrillMark } from '../drill/types.ts';
import { sayCalled } from '../grading/say-called.ts';
import type { Assessment } from '../grading/types.ts';
import { most } from './schema.ts';
import type { AnswerEvent, DaySet, EventId } from './types.ts';

/** An answer that has been assessed, with what it was an answer to. */
export interface AssessedAnswer {
  readonly deck: Pick<Deck, 'id' | 'version' | 'controls'>;
  readonly prompt: Prompt;
  readonly assessment: Assessment;
  readonly mode: AnswerEvent['mode'];
  /** From the prompt's showing to the answer, in milliseconds. */
  readonly elapsedMs: number;
  /** Where the scenario of a drill was drawn: `markOf`. Of one in Recall it is told from the grade. */
  readonly drill?: DrillMark;
  /** What is set otherwise than in the deck, where it was asked for another day. */
  readonly day?: DaySet;
}

/** The event of an answer. Words past the record's longest are cut, a prompt left open counts 11 days at most. */
export function answerEvent(
  { deck, prompt, assessment, mode, elapsedMs, drill, day }: AssessedAnswer,
  id: EventId,
  nowMs: number,
): AnswerEvent {
  const { card, seed } = prompt;
  const { performance, timeliness, rating, detail } = assessment;
  const mark = drill ?? markOfRecall(prompt, assessment);
  const called = sayCalled(deck, prompt, detail);
  return {
    kind: 'answer',
    id,
    atMs: Math.max(0, Math.floor(nowMs)),
    deck: deck.id,
    deckVersion: deck.version,
    card: card.id,
    cardKind: card.kind,
    critical: card.critical,
    mode,
    seed,
    performance,
    timeliness,
    rating,
    elapsedMs: Math.min(Math.max(0, elapsedMs), most.elapsedMs),
    // JSON has no −0: adding 0 makes it 0 from the start.
    ...(detail.form === 'number' ? { value: detail.value + 0, signedError: detail.signedError + 0 } : {}),
    ...(mark ? { drill: mark } : {}),
    ...(day && Object.keys(day).length > 0 ? { day } : {}),
    headline: cut(assessment.headline, most.headline),
    // The card's, not the scenario's: it changes only when the deck does, not with the day.
    expected: cut(card.expected, most.expected),
    ...(called ? { called: cut(called, most.headline) } : {}),
    ...(assessment.expected === card.expected ? {} : { due: cut(assessment.expected, most.headline) }),
  };
}

const cut = (text: string, longest: number): string =>
  text.length <= longest ? text : `${text.slice(0, longest - 1)}…`;
