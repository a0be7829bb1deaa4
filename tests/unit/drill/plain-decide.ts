/**
 * A deck decided the plain way, straight from its text: conditions are read anew for each value, tables
 * asked one after the other. Shares no code with the rule engine; what the engine and the sampler claim
 * must agree with it.
 */
import type { AuthoredRule, Deck, DecisionTable } from '../../../src/deck/types.ts';
import type { State } from '../../../src/rules/types.ts';

type Test = (value: number) => boolean;
const read = new Map<string, Test>();

/** `-`, comparisons, intervals, numbers, lists of them by comma, and `not(…)`. */
function testOf(text: string): Test {
  const there = read.get(text);
  if (there) return there;
  const made = readTest(text.trim());
  read.set(text, made);
  return made;
}

function readTest(text: string): Test {
  if (text === '-') return () => true;
  const negated = /^not\((.*)\)$/.exec(text);
  if (negated) {
    const inner = readTest(negated[1]!.trim());
    return (value) => !inner(value);
  }
  const parts = text.split(',').map((part) => readPart(part.trim()));
  return (value) => parts.some((part) => part(value));
}

function readPart(part: string): Test {
  const range = /^([[(\]])\s*(-?[\d.]+?)\s*\.\.\s*(-?[\d.]+)\s*([\])[])$/.exec(part);
  if (range) {
    const [, from, low, high, to] = range;
    const [lo, hi] = [Number(low), Number(high)];
    return (value) => (from === '[' ? value >= lo : value > lo) && (to === ']' ? value <= hi : value < hi);
  }
  const compared = /^(<=|>=|!=|<|>|=)?\s*(-?[\d.]+)$/.exec(part);
  if (!compared) throw new Error(`“${part}” is no condition that this reader knows.`);
  const bound = Number(compared[2]);
  const compare: Record<string, Test> = {
    '<': (value) => value < bound,
    '<=': (value) => value <= bound,
    '>': (value) => value > bound,
    '>=': (value) => value >= bound,
    '!=': (value) => value !== bound,
    '=': (value) => value === bound,
  };
  return compare[compared[1] ?? '=']!;
}

const fits = ({ when }: AuthoredRule, state: State): boolean =>
  Object.entries(when).every(([id, condition]) => testOf(condition)(state[id]!));

/** The rule that decides in a table; null where none does, or several that the policy doesn't allow. */
function winnerIn(table: DecisionTable, state: State): AuthoredRule | null {
  const fitting = table.rules.filter((rule) => fits(rule, state));
  const spokesman = (rules: readonly AuthoredRule[]) => rules.find(({ critical }) => critical) ?? rules[0]!;
  if (fitting.length === 0) return null;
  switch (table.hit) {
    case 'first':
      return fitting[0]!;
    case 'unique':
      return fitting.length === 1 ? fitting[0]! : null;
    case 'any':
      return new Set(fitting.map(({ then }) => then)).size === 1 ? spokesman(fitting) : null;
    case 'priority': {
      const listed = table.priority?.find((action) => fitting.some(({ then }) => then === action));
      const best = fitting.filter(({ then }) => listed === undefined || then === listed);
      return new Set(best.map(({ then }) => then)).size === 1 ? spokesman(best) : null;
    }
  }
}

export interface PlainDecision {
  /** Control -> action, of the tables that give one. */
  readonly actions: Readonly<Record<string, string>>;
  readonly overriding: boolean;
  /** `table/rule` of each that decides. */
  readonly rules: readonly string[];
}

export function plainDecide({ tables = [] }: Deck, phase: string, state: State): PlainDecision {
  const here = tables.filter(({ phases }) => phases.includes(phase));
  for (const table of here.filter(({ overriding }) => overriding)) {
    const winner = winnerIn(table, state);
    if (winner)
      return {
        actions: { [table.control]: winner.then },
        overriding: true,
        rules: [`${table.id}/${winner.id}`],
      };
  }
  const won = here.flatMap((table) => {
    const winner = table.overriding ? null : winnerIn(table, state);
    return winner ? [{ table, winner }] : [];
  });
  return {
    actions: Object.fromEntries(won.map(({ table, winner }) => [table.control, winner.then])),
    overriding: false,
    rules: won.map(({ table, winner }) => `${table.id}/${winner.id}`),
  };
}

/** What is asked of one control, an overriding action being another answer than any other; null where nothing is. */
export function answerOn(control: string, { actions, overriding }: PlainDecision): string | null {
  if (overriding) return `override ${Object.entries(actions).flat().join(' ')}`;
  return actions[control] ?? null;
}
