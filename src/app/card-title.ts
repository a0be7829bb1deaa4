/** What a card is called in a list: a rule by what it looks at, not by the name its author gave it. */
import type { Card } from '../cards/types.ts';
import type { Deck } from '../deck/types.ts';
import { sayWhen } from './rule-sentence.ts';

/** "Power in the groove: sink over 320 ft/min"; other cards have a name of their own. */
export function cardTitle(deck: Deck, card: Card): string {
  if (card.kind !== 'rule') return card.label;
  const [, tableId, ruleId] = card.id.split('/');
  const table = deck.tables?.find(({ id }) => id === tableId);
  const rule = table?.rules.find(({ id }) => id === ruleId);
  if (!table || !rule) return card.label;
  const when = sayWhen(deck, rule);
  return `${table.label}: ${when.charAt(0).toLowerCase()}${when.slice(1)}`;
}
