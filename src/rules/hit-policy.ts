/**
 * Which of the rules that fit a state decides (OMG DMN 1.5, hit policies of single-hit tables). One home
 * for it: `decide` and the analysis both ask here.
 */
import type { Rule, Table } from './types.ts';

/** A rule's rank under `priority`, 0 best; actions the list leaves out come last, all alike. */
function rankOf({ authored }: Table, { then }: Rule): number {
  const priority = authored.priority ?? [];
  const place = priority.indexOf(then);
  return place < 0 ? priority.length : place;
}

const isListed = ({ authored }: Table, { then }: Rule): boolean => (authored.priority ?? []).includes(then);

/**
 * The table's rules so that of those that fit the first decides. Where policy leaves it open, among
 * rules that ask for the same action, a critical one comes first: it is the reason that counts.
 */
export function inOrderOfPrecedence(table: Table): readonly Rule[] {
  const { hit } = table.authored;
  if (hit === 'first' || hit === 'unique') return table.rules;
  const rank = (rule: Rule) => (hit === 'priority' ? rankOf(table, rule) : 0);
  return [...table.rules].sort(
    (a, b) => rank(a) - rank(b) || Number(b.critical) - Number(a.critical) || a.index - b.index,
  );
}

/** False when the policy settles whatever fits: no two rules of the table clash. */
export const mayClash = ({ authored }: Table): boolean => authored.hit !== 'first';

/** True when the policy forbids that both fit one state and neither of them is beaten there. */
export function clash(table: Table, one: Rule, other: Rule): boolean {
  switch (table.authored.hit) {
    case 'unique':
      return true;
    case 'any':
      return one.then !== other.then;
    case 'first':
      return false;
    case 'priority':
      return one.then !== other.then && !isListed(table, one) && !isListed(table, other);
  }
}

/** True when wherever both fit the one decides against the other, by policy alone. */
export function beats(table: Table, one: Rule, other: Rule): boolean {
  switch (table.authored.hit) {
    case 'unique':
    case 'any':
      return false;
    case 'first':
      return one.index < other.index;
    case 'priority':
      return rankOf(table, one) < rankOf(table, other);
  }
}
