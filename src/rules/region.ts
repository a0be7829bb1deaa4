/** Where a rule is what decides. */
import { Claims } from './claims.ts';
import type { Budget } from './cover.ts';
import { rulesOfPhase } from './decide.ts';
import { atomsIn, boxOf, meet, wholeOf, type Block, type Box, type Space } from './space.ts';
import { multiplesIn } from './steps.ts';
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
  const start = block && meet(claims.space, block, onSteps(procedure, claims.space));
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

/** The states whose atoms each hold a multiple of the step. */
export function onSteps({ deck }: Procedure, space: Space): Block {
  const block = wholeOf(space);
  for (const axis of space.axes) {
    const { step } = deck.quantities.find(({ id }) => id === axis.quantity)!;
    for (const i of atomsIn(block, axis)) {
      const held = axis.atoms[i]!.some((piece) => multiplesIn(piece, step).count > 0);
      if (!held) block[axis.firstWord + (i >> 5)]! &= ~(1 << (i & 31));
    }
  }
  return block;
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
