/** A card with its answer, to be read before it is asked once more. */
import { groundOf } from '../../cards/registry.ts';
import type { Card, Prompt } from '../../cards/types.ts';
import { tableOf } from '../../deck/lookup.ts';
import type { Source } from '../../deck/types.ts';
import type { Procedure } from '../../rules/types.ts';
import { sayWhen } from '../rule-sentence.ts';

export interface Look {
  readonly card: Card;
  readonly place: string;
  readonly title: string;
  readonly expected: string;
  readonly because: string | null;
  readonly source: Source;
}

/** A rule is told as such, not by one of its states. */
export function lookAt(procedure: Procedure, prompt: Prompt): Look {
  const { card, place } = prompt;
  const { because, source } = groundOf(procedure, card);
  const title = card.kind === 'rule' ? ruleInWords(procedure, card) : prompt.title;
  return { card, place, title, expected: card.expected, because, source };
}

function ruleInWords({ deck }: Procedure, card: Card): string {
  const [, tableId, ruleId] = card.id.split('/');
  const rule = tableOf(deck, tableId!).rules.find(({ id }) => id === ruleId)!;
  return sayWhen(deck, rule);
}
