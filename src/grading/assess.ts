/** Prompt and answer to assessment: the one place where an answer is judged. */
import { groundOf } from '../cards/registry.ts';
import type { Answer, Prompt } from '../cards/types.ts';
import { decide } from '../rules/decide.ts';
import { edgesOf } from '../rules/edges.ts';
import type { Procedure } from '../rules/types.ts';
import { unreadable, type FormResult } from './form-grade.ts';
import { gradeChoice } from './grade-choice.ts';
import { gradeControls, sayDecision } from './grade-controls.ts';
import { gradeNumber, resultDue } from './grade-number.ts';
import { gradePoint } from './grade-point.ts';
import { gradeSequence } from './grade-sequence.ts';
import { gradeText } from './grade-text.ts';
import { ratingOf } from './rating.ts';
import { timingOf, type Timing } from './timeliness.ts';
import type { AssessContext, Graded } from './types.ts';

/**
 * Grades an answer given `elapsedMs` after the prompt appeared. An answer that can't be graded (empty,
 * no number, another unit, not among the choices) comes back as a problem in words: the prompt stays
 * open and nothing is recorded. Never throws for a prompt of this procedure, whatever is answered.
 *
 * The assessment is critical when the card is, and whenever an overriding action is missed.
 */
export function assess(
  procedure: Procedure,
  prompt: Prompt,
  answer: Answer,
  elapsedMs: number,
  context: AssessContext,
): Graded {
  const { card } = prompt;
  const timing = timingOf(elapsedMs, card.windowMs, context.timing);
  const result =
    answer.form === 'none' ? notAnswered(procedure, prompt, timing) : gradeForm(procedure, prompt, answer);
  if (!result.ok) return result;
  const { because, source } = result.ground ?? groundOf(procedure, card);
  return {
    ok: true,
    answer,
    assessment: {
      performance: result.performance,
      timeliness: timing.timeliness,
      rating: ratingOf(result.performance, timing, context.desiredInARow),
      critical: card.critical || result.criticalFault === true,
      headline: result.headline,
      expected: result.expected ?? card.expected,
      because,
      source,
      detail: result.detail,
    },
  };
}

function gradeForm(
  procedure: Procedure,
  prompt: Prompt,
  answer: Exclude<Answer, { form: 'none' }>,
): FormResult {
  const { ask } = prompt;
  if (ask.form === 'number' && answer.form === 'number') return gradeNumber(procedure.deck, ask, answer);
  if (ask.form === 'sequence' && answer.form === 'sequence') return gradeSequence(ask, answer);
  if (ask.form === 'choice' && answer.form === 'choice') return gradeChoice(prompt, ask, answer);
  if (ask.form === 'controls' && answer.form === 'controls') return gradeControls(procedure, ask, answer);
  if (ask.form === 'point' && answer.form === 'point') return gradePoint(ask, answer);
  if (ask.form === 'text' && answer.form === 'text') return gradeText(ask, answer);
  return unreadable('wrong-form', `This question is answered by ${byForm[ask.form]}.`);
}

const byForm: Readonly<Record<Prompt['ask']['form'], string>> = {
  number: 'typing a number',
  sequence: 'putting items in order',
  choice: 'choosing one of the answers shown',
  controls: 'setting the controls',
  point: 'pointing to a place on the drawing',
  text: 'typing the answer',
};

/** The window closed, or the pilot asked to see the answer. */
function notAnswered(procedure: Procedure, { ask }: Prompt, timing: Timing): FormResult {
  const missed = {
    ok: true,
    performance: 'outside',
    headline: timing.timeliness === 'timed-out' ? 'no answer in time' : 'no answer',
  } as const;
  if (ask.form !== 'controls') {
    const due = ask.form === 'number' ? resultDue(procedure.deck, ask) : {};
    return { ...missed, ...due, detail: { form: 'none' } };
  }
  const decision = decide(procedure, ask.phase, ask.state);
  return {
    ...missed,
    detail: { form: 'none', scenario: { decision, edges: edgesOf(procedure, ask.phase, ask.state) } },
    criticalFault: decision.overriding !== null,
    expected: sayDecision(procedure, ask.rows, decision),
  };
}
