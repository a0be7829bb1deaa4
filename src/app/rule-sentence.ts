/** A rule as a pilot would say it: "Altitude over 340 ft and closure over 20 kt". */
import { instructionOf } from '../cards/wording.ts';
import { actionOf, controlOf, quantityOf, tableOf } from '../deck/lookup.ts';
import { sayList } from '../deck/say.ts';
import type { AuthoredRule, Deck, Quantity } from '../deck/types.ts';
import { interval } from '../rules/intervals.ts';
import { sayIntervals } from '../rules/say-intervals.ts';
import { parseUnary } from '../rules/unary.ts';

/** A condition on one quantity in words, without its name; null when any value will do. */
export function sayCondition(condition: string, quantity: Quantity): string | null {
  const domain = interval(...quantity.range);
  const parsed = parseUnary(condition, domain);
  // A deck that was loaded has no such condition; if one slips through, it is shown as it was written.
  if (!parsed.ok) return condition;
  const words = sayIntervals(parsed.set, quantity, domain);
  return words === 'any' ? null : words;
}

/** All of a rule's conditions in one phrase; "In all other cases" when it has none. */
export function sayWhen(deck: Deck, rule: AuthoredRule): string {
  const parts = Object.entries(rule.when).flatMap(([id, condition]) => {
    const quantity = quantityOf(deck, id);
    const said = sayCondition(condition, quantity);
    return said === null ? [] : [`${quantity.spoken ?? quantity.label.toLowerCase()} ${said}`];
  });
  if (parts.length === 0) return 'In all other cases';
  const sentence = sayList(parts);
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** A rule with its table and what it calls for: "Go around abeam. Distance from the ship under 0.8 nm: go around". */
export function sayRule(deck: Deck, tableId: string, ruleId: string): string {
  const table = tableOf(deck, tableId);
  const rule = table.rules.find(({ id }) => id === ruleId);
  if (!rule) return table.label;
  const action = actionOf(controlOf(deck, table.control), rule.then);
  return `${table.label}. ${sayWhen(deck, rule)}: ${instructionOf(action)}`;
}
