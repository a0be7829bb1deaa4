/** What was called, in words, so that it can be read long after: "more power, nose up". */
import { instructionOf } from '../cards/wording.ts';
import type { Prompt } from '../cards/types.ts';
import type { Deck } from '../deck/types.ts';
import type { AnswerDetail } from './types.ts';

/**
 * The answer to a prompt in words; null where it is kept as a value, or was none. Of controls those that were
 * worked are said, in the order of their rows.
 */
export function sayCalled(
  { controls = [] }: Pick<Deck, 'controls'>,
  { ask }: Prompt,
  detail: AnswerDetail,
): string | null {
  if (ask.form === 'choice' && detail.form === 'choice')
    return ask.options.find(({ id }) => id === detail.chosen)?.label ?? null;
  if (detail.form === 'text') return detail.text;
  if (ask.form !== 'controls' || detail.form !== 'controls') return null;
  const worked = ask.rows.flatMap(({ id, neutral }) => {
    const chosen = detail.perControl[id]?.chosen ?? neutral;
    const actions = controls.find((control) => control.id === id)?.actions ?? [];
    return chosen === neutral ? [] : actions.filter((one) => one.id === chosen).map(instructionOf);
  });
  return worked.length > 0 ? worked.join(', ') : 'everything left as it was';
}
