/** Where a rule is what decides. */
import { Claims } from './claims.ts';
import type { Budget } from './cover.ts';
import { rulesOfPhase } from './decide.ts';
import { onSteps } from './on-steps.ts';
import { boxOf, meet, type Block, type Box } from './space.ts';
import type { PhaseRules, Procedure, Rule, Table } from './types.ts';

/** Enough for every table a person writes; a rule of more is drawn from these. */
const mostBoxes = 2000;
const work = 50_000_000;

/**
 * The states of a phase that a rule decides, after hit policy and overriding tables, as disjoint boxes;
 * inputs a box doesn't name may have any value of the phase. Empty when the table is not of the phase or
 * the rule never decides. At most 2,000 boxes: a table more torn than that gives a part.
 */
export function regionOf(
  procedure: Procedure,
  phaseId: string,
  tableId: string,
  ruleId: string,
): readonly Box[] {
  const rules = rulesOfPhase(procedure, phaseId);
  const found = findRule(rules, tableId, ruleId);
  if (!found) return [];
  const claims = claimsOf(rules, found.table);
  const block = claims.blockOf(found.rule);
  return block ? regionIn(claims, found.rule, block).map((piece) => boxOf(claims.space, piece)) : [];
}

/**
 * The part of a rule's region that holds states a pilot can read off: each value a multiple of its
 * quantity's step. Each set of each box holds at least one such value.
 */
export function callableRegionOf(
  procedure: Procedure,
  rules: PhaseRules,
  table: Table,
  rule: Rule,
): readonly Box[] {
  const claims = claimsOf(rules, table);
  const block = claims.blockOf(rule);
  const start = block && meet(claims.space, block, onSteps(procedure.deck, claims.space));
  return start ? regionIn(claims, rule, start).map((piece) => boxOf(claims.space, piece)) : [];
}

export function findRule(
  { overriding, base }: PhaseRules,
  tableId: string,
  ruleId: string,
): { table: Table; rule: Rule } | null {
  const table = [...overriding, ...base].find(({ id }) => id === tableId);
  const rule = table?.rules.find(({ id }) => id === ruleId);
  return table && rule ? { table, rule } : null;
}

function regionIn(claims: Claims, rule: Rule, start: Block): readonly Block[] {
  const budget: Budget = { left: work };
  return claims.left(start, claims.rivalsOf(rule), mostBoxes, budget).blocks;
}

const known = new WeakMap<PhaseRules, Map<Table, Claims>>();

function claimsOf(rules: PhaseRules, table: Table): Claims {
  const ofPhase = known.get(rules) ?? new Map<Table, Claims>();
  known.set(rules, ofPhase);
  const claims = ofPhase.get(table) ?? new Claims(rules, table, { left: work });
  ofPhase.set(table, claims);
  return claims;
}
