/** A deck's tables with their conditions read, ready to be decided with. */
import type { DocumentPath, Finding } from '../deck/findings.ts';
import { controlOf, neutralOf } from '../deck/lookup.ts';
import type { Deck, DecisionTable, Phase, Quantity } from '../deck/types.ts';
import type { RuleCode } from './codes.ts';
import { equals, intersect, interval, isEmpty } from './intervals.ts';
import { sayIntervals } from './say-intervals.ts';
import type { IntervalSet, PhaseRules, Procedure, Rule, Table } from './types.ts';
import { parseUnary } from './unary.ts';

export interface Compiled {
  /** Null when a condition can't be read. */
  readonly procedure: Procedure | null;
  readonly findings: readonly Finding[];
}

/** Reads every condition of a checked deck, those of rules and those of words for intervals. */
export function compileRules(deck: Deck): Compiled {
  const reader = new ConditionReader(deck);
  deck.quantities.forEach((quantity, index) => reader.words(quantity, ['quantities', index, 'words']));
  const tables = (deck.tables ?? []).map((table, index) => reader.table(table, ['tables', index]));
  const faulty = reader.findings.some(({ severity }) => severity === 'error');
  const phases = faulty ? null : (deck.phases ?? []).map((phase) => rulesOf(deck, phase, tables));
  return {
    procedure: phases && { deck, phases: new Map(phases.map((rules) => [rules.phase.id, rules])) },
    findings: reader.findings,
  };
}

function rulesOf(deck: Deck, phase: Phase, tables: readonly Table[]): PhaseRules {
  const here = tables.filter(({ authored }) => authored.phases.includes(phase.id));
  const place = ({ control }: Table) => phase.controls.indexOf(control);
  return {
    phase,
    box: new Map(Object.entries(phase.state).map(([id, range]) => [id, interval(...range)])),
    overriding: here.filter(({ authored }) => authored.overriding === true),
    base: here
      .filter((table) => table.authored.overriding !== true && place(table) >= 0)
      .sort((one, other) => place(one) - place(other)),
    neutral: new Map(phase.controls.map((id) => [id, neutralOf(controlOf(deck, id)).id])),
  };
}

class ConditionReader {
  readonly findings: Finding[] = [];
  readonly #quantities: ReadonlyMap<string, Quantity>;

  constructor(deck: Deck) {
    this.#quantities = new Map(deck.quantities.map((quantity) => [quantity.id, quantity]));
  }

  table(authored: DecisionTable, path: DocumentPath): Table {
    const rules = authored.rules.map((rule, index): Rule => {
      const when = Object.entries(rule.when).flatMap(([id, condition]) => {
        const quantity = this.#quantities.get(id);
        if (!quantity) throw new Error(`Rule “${rule.id}” tests “${id}”, which is no quantity of the deck.`);
        const set = this.#condition(condition, quantity, [...path, 'rules', index, 'when', id]);
        const restrains = set !== null && !equals(set, [interval(...quantity.range)]);
        return restrains ? [[id, set] as const] : [];
      });
      const { id, then, because, critical = false } = rule;
      return { id, index, when: new Map(when), then, because, critical };
    });
    return { id: authored.id, authored, control: authored.control, rules };
  }

  words(quantity: Quantity, path: DocumentPath): void {
    const sets = (quantity.words ?? []).map(({ when }, index) =>
      this.#condition(when, quantity, [...path, index, 'when']),
    );
    sets.forEach((set, index) => {
      const earlier = sets.findIndex(
        (other, j) => j < index && other && set && !isEmpty(intersect(other, set)),
      );
      if (earlier < 0 || !set) return;
      const [one, other] = [quantity.words![earlier]!.say, quantity.words![index]!.say];
      const shared = sayIntervals(intersect(sets[earlier]!, set), quantity);
      const message = `Words for intervals must not overlap, but “${one}” and “${other}” both fit ${quantity.label} ${shared}: move an end of one, with ( or ) to leave it out.`;
      this.#report('overlapping-words', 'error', message, [...path, index, 'when']);
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
    if (isEmpty(parsed.set)) {
      const message = `A condition should hold for some values of its quantity, but “${text}” lies outside the range of ${quantity.label}, ${sayIntervals([range], quantity, interval(-Infinity, Infinity))}: mend the condition or widen the range.`;
      this.#report('condition-outside-range', 'warning', message, path);
    }
    return parsed.set;
  }

  #report(code: RuleCode, severity: Finding['severity'], message: string, path: DocumentPath): void {
    this.findings.push({ code, severity, message, path });
  }
}
