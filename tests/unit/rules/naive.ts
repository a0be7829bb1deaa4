/** The decision worked out the slow and plain way, from predicates: what `decide` must agree with. */
import type { Decision, State } from '../../../src/rules/types.ts';
import { priorityOf, type SmallDeck, type SmallRule, type SmallTable } from './small-procedure.ts';

export const fits = (rule: SmallRule, state: State): boolean =>
  Object.entries(rule.when).every(([input, condition]) => condition.fits(state[input]!));

export type Verdict =
  | { readonly kind: 'none' }
  | { readonly kind: 'conflict'; readonly rules: readonly string[] }
  | { readonly kind: 'rule'; readonly rule: SmallRule };

/** Among rules with the same claim a critical one is the reason, else the first written. */
const spokesman = (rules: readonly SmallRule[]): SmallRule =>
  rules.find(({ critical }) => critical) ?? rules[0]!;

export function verdictOf(table: SmallTable, state: State): Verdict {
  const fitting = table.rules.filter((rule) => fits(rule, state));
  if (fitting.length === 0) return { kind: 'none' };
  const conflict: Verdict = { kind: 'conflict', rules: fitting.map(({ id }) => id) };
  switch (table.hit) {
    case 'first':
      return { kind: 'rule', rule: fitting[0]! };
    case 'unique':
      return fitting.length > 1 ? conflict : { kind: 'rule', rule: fitting[0]! };
    case 'any':
      return new Set(fitting.map(({ then }) => then)).size > 1
        ? conflict
        : { kind: 'rule', rule: spokesman(fitting) };
    case 'priority': {
      const best = priorityOf(table.control).find((action) => fitting.some(({ then }) => then === action));
      return { kind: 'rule', rule: spokesman(fitting.filter(({ then }) => then === best)) };
    }
  }
}

export interface NaiveDecision {
  readonly actions: Decision['actions'];
  readonly overriding: string | null;
  /** `table/rule` of each reason. */
  readonly reasons: readonly string[];
  readonly unanswered: readonly string[];
  readonly conflicts: Decision['conflicts'];
}

export function naiveDecide({ tables }: SmallDeck, state: State): NaiveDecision {
  const conflicts: { table: string; rules: readonly string[] }[] = [];
  for (const table of tables.filter(({ overriding }) => overriding)) {
    const verdict = verdictOf(table, state);
    if (verdict.kind === 'conflict') conflicts.push({ table: table.id, rules: verdict.rules });
    if (verdict.kind !== 'rule') continue;
    const name = `${table.id}/${verdict.rule.id}`;
    const actions = { [table.control]: verdict.rule.then };
    return { actions, overriding: name, reasons: [name], unanswered: [], conflicts };
  }
  const actions: Record<string, string> = {};
  const reasons: string[] = [];
  const unanswered: string[] = [];
  for (const control of ['power', 'pitch', 'nozzle', 'call']) {
    const table = tables.find((candidate) => !candidate.overriding && candidate.control === control);
    if (!table) {
      actions[control] = `hold-${control}`;
      continue;
    }
    const verdict = verdictOf(table, state);
    if (verdict.kind === 'conflict') conflicts.push({ table: table.id, rules: verdict.rules });
    if (verdict.kind === 'none') unanswered.push(table.id);
    if (verdict.kind !== 'rule') continue;
    actions[control] = verdict.rule.then;
    reasons.push(`${table.id}/${verdict.rule.id}`);
  }
  return { actions, overriding: null, reasons, unanswered, conflicts };
}

export const plainly = ({
  actions,
  overriding,
  reasons,
  unanswered,
  conflicts,
}: Decision): NaiveDecision => ({
  actions,
  overriding: overriding && `${overriding.table}/${overriding.rule}`,
  reasons: reasons.map(({ table, rule }) => `${table}/${rule}`),
  unanswered,
  conflicts,
});
