/** What was called for and what was called, as rows of a table. */
import type { Answer, ControlRow } from '../../cards/types.ts';
import type { AnswerDetail } from '../../grading/types.ts';
import type { Decision } from '../../rules/types.ts';

export interface CalledRow {
  readonly id: string;
  readonly label: string;
  /** "More"; "not asked" where an overriding action leaves nothing to ask. */
  readonly required: string;
  /** "Less"; a dash where nothing was answered. */
  readonly chosen: string;
  readonly verdict: 'right' | 'wrong' | 'opposite' | 'not-asked' | 'unanswered';
  /** What is wrong with it, to follow what was called: ", the wrong way". Empty where it was right. */
  readonly said: string;
}

export function calledRows(
  rows: readonly ControlRow[],
  decision: Decision,
  detail: AnswerDetail,
  answer: Answer | null,
  /** Controls that hold an action which beats all others. */
  overriding: ReadonlySet<string>,
): readonly CalledRow[] {
  const called = answer?.form === 'controls' ? answer.chosen : null;
  return rows.map(({ id, label, actions, neutral }) => {
    const nameOf = (action: string): string => actions.find((one) => one.id === action)?.label ?? action;
    const graded = detail.form === 'controls' ? detail.perControl[id] : undefined;
    const required = graded ? graded.required : (decision.actions[id] ?? null);
    const verdict = graded?.verdict ?? (required === null ? 'not-asked' : 'unanswered');
    return {
      id,
      label,
      required: required === null ? 'not asked' : nameOf(required),
      chosen: called ? nameOf(called[id] ?? neutral) : '–',
      verdict,
      said: sayFault(verdict, decision.overriding?.control === id, overriding.has(id) && called !== null),
    };
  });
}

function sayFault(verdict: CalledRow['verdict'], isMissed: boolean, isNeedless: boolean): string {
  if (verdict !== 'wrong' && verdict !== 'opposite') return '';
  if (isMissed) return ', missed';
  if (isNeedless) return ', not needed';
  return verdict === 'opposite' ? ', the wrong way' : ', not right';
}
