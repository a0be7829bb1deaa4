/** A rule as a pilot would say it: "altitude over 340 ft and closure over 20 kt". */
import { quantityOf } from '../../../deck/lookup.ts';
import { sayList, sayNumber, sayValue } from '../../../deck/say.ts';
import type { AuthoredRule, Deck, Quantity } from '../../../deck/types.ts';

const number = String.raw`[-+]?\d+(?:\.\d+)?`;
const comparison = new RegExp(`^(<=|>=|<|>|=)?\\s*(${number})$`);
const interval = new RegExp(`^([\\[(\\]])\\s*(${number})\\s*\\.\\.\\s*(${number})\\s*([\\])\\[])$`);

function sayOne(test: string, quantity: Quantity): string {
  const compared = comparison.exec(test);
  if (compared) {
    const value = sayValue(Number(compared[2]), quantity);
    switch (compared[1]) {
      case '<':
        return `under ${value}`;
      case '<=':
        return `${value} or less`;
      case '>':
        return `over ${value}`;
      case '>=':
        return `${value} or more`;
      default:
        return value;
    }
  }
  const between = interval.exec(test);
  if (between) {
    const [, opens, lo, hi, closes] = between;
    const from = sayNumber(Number(lo), quantity.step);
    const to = sayValue(Number(hi), quantity);
    const [openLo, openHi] = [opens !== '[', closes !== ']'];
    if (openLo && openHi) return `over ${from} and under ${to}`;
    if (openLo) return `over ${from}, up to ${to}`;
    return openHi ? `from ${from} to under ${to}` : `${from} to ${to}`;
  }
  // Rarer forms are shown as the author wrote them: right, if not smooth.
  return test;
}

/** A condition on one quantity in words, without its name; null when any value will do. */
export function sayCondition(condition: string, quantity: Quantity): string | null {
  const text = condition.trim();
  if (text === '-') return null;
  const negated = /^not\s*\((.*)\)$/.exec(text);
  const tests = (negated ? negated[1]! : text).split(',').map((test) => sayOne(test.trim(), quantity));
  return `${negated ? 'not ' : ''}${sayList(tests, 'or')}`;
}

/** All of a rule's conditions in one phrase; "in all other cases" when it has none. */
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
