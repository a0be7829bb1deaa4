import type { Answer, Prompt, Ask } from '../cards/types.ts';
import { unreadable, type AskOf, type FormResult } from './form-grade.ts';

/** The right one is desired; there is nothing between right and wrong. */
export function gradeChoice(
  prompt: Prompt,
  ask: AskOf<'choice', Ask>,
  answer: AskOf<'choice', Answer>,
): FormResult {
  const { options, correct } = ask;
  const { chosen } = answer;
  const at = options.findIndex((option) => option.id === chosen);
  if (at < 0)
    return unreadable('unknown-choice', 'The chosen answer is not among those shown. Choose one of them.');
  const right = chosen === correct;
  const wrong = () =>
    prompt.card.kind === 'complete-by'
      ? sayGates(at - options.findIndex((option) => option.id === correct))
      : `not “${options[at]!.label}”`;
  return {
    ok: true,
    performance: right ? 'desired' : 'outside',
    headline: right ? 'right' : wrong(),
    detail: { form: 'choice', chosen, correct },
  };
}

/** Gates are shown in the order they are flown, so a wrong one is so many too late or too early. */
function sayGates(late: number): string {
  const count = Math.abs(late);
  return `${count} ${count === 1 ? 'gate' : 'gates'} too ${late > 0 ? 'late' : 'early'}`;
}
