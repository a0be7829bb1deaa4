/** Conditions as they are written -> interval sets, and what is wrong with them. */
import type { DocumentPath, Finding } from '../deck/findings.ts';
import type { AuthoredRule, DecisionTable, Quantity } from '../deck/types.ts';
import type { RuleCode } from './codes.ts';
import { equals, intersect, interval, isEmpty } from './intervals.ts';
import { sayIntervals } from './say-intervals.ts';
import type { IntervalSet, Rule, Table } from './types.ts';
import { parseUnary } from './unary.ts';

type Word = NonNullable<Quantity['words']>[number];

export class ConditionReader {
  readonly findings: Finding[] = [];
  readonly #quantityOf: (id: string) => Quantity | undefined;

  constructor(quantityOf: (id: string) => Quantity | undefined) {
    this.#quantityOf = quantityOf;
  }

  /** A condition on a quantity that is nowhere is left to the loader, which names it. */
  table(authored: DecisionTable, pathOf: (rule: AuthoredRule, index: number) => DocumentPath): Table {
    const rules = authored.rules.map((rule, index): Rule => {
      const when = Object.entries(rule.when).flatMap(([id, condition]) => {
        const quantity = this.#quantityOf(id);
        if (!quantity) return [];
        const set = this.#condition(condition, quantity, [...pathOf(rule, index), 'when', id]);
        const restrains = set !== null && !equals(set, [interval(...quantity.range)]);
        return restrains ? [[id, set] as const] : [];
      });
      const { id, then, because, critical = false } = rule;
      return { id, index, when: new Map(when), then, because, critical };
    });
    return { id: authored.id, authored, control: authored.control, rules };
  }

  words(quantity: Quantity, pathOf: (word: Word, index: number) => DocumentPath): void {
    const words = quantity.words ?? [];
    const place = (index: number) => [...pathOf(words[index]!, index), 'when'];
    const sets = words.map(({ when }, index) => this.#condition(when, quantity, place(index)));
    sets.forEach((set, index) => {
      const earlier = sets.findIndex(
        (other, j) => j < index && other && set && !isEmpty(intersect(other, set)),
      );
      if (earlier < 0 || !set) return;
      const [one, other] = [words[earlier]!.say, words[index]!.say];
      const shared = sayIntervals(intersect(sets[earlier]!, set), quantity);
      const message = `Words for intervals must not overlap, but “${one}” and “${other}” both fit ${quantity.label} ${shared}: move an end of one, with ( or ) to leave it out.`;
      this.#report('overlapping-words', 'error', message, place(index));
    });
  }

  /** The set a condition stands for within its quantity's range; null when it can't be read. */
  #condition(text: string, quantity: Quantity, path: DocumentPath): IntervalSet | null {
    const range = interval(...quantity.range);
    const parsed = parseUnary(text, range);
    if (!parsed.ok) {
      this.#report('bad-condition', 'error', parsed.problem.message, path);
      return null;
    }
    if (parsed.doubt) this.#report('doubtful-comma', 'warning', parsed.doubt.message, path);
    // A range upside down holds nothing: the loader says so, and of the condition nothing can be said.
    if (isEmpty(parsed.set) && range.lo < range.hi) {
      const message = `A condition should hold for some values of its quantity, but “${text}” lies outside the range of ${quantity.label}, ${sayIntervals([range], quantity, interval(-Infinity, Infinity))}: mend the condition or widen the range.`;
      this.#report('condition-outside-range', 'warning', message, path);
    }
    return parsed.set;
  }

  #report(code: RuleCode, severity: Finding['severity'], message: string, path: DocumentPath): void {
    this.findings.push({ code, severity, message, path });
  }
}
