/** Where a rule is what decides. */
import type { Deck } from '../deck/types.ts';
import { Claims } from './claims.ts';
import type { Budget, Uncovered } from './cover.ts';
import { rulesOfPhase } from './decide.ts';
import { onSteps } from './on-steps.ts';
import { boxOf, meet, type Block, type Box, type Space } from './space.ts';
import type { PhaseRules, Procedure, Rule, Table } from './types.ts';

/** Enough for every table a person writes; a rule of more is drawn from these. */
const mostBoxes = 2000;
const work = 50_000_000;
/** For what overriding tables take, once for a table in a phase. */
const claimsWork = 5_000_000;

/** How far to look: boxes at most, and the work for them. */
export interface RegionLimits {
  readonly most: number;
  readonly budget: Budget;
}

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
  return block ? regionIn(claims, found.rule, block).blocks.map((piece) => boxOf(claims.space, piece)) : [];
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
  return callableIn(procedure, rules, table, rule, { most: mostBoxes, budget: { left: work } }).boxes;
}

/** What was found of a region within some limits; it may be all of it, or even empty, only when `complete`. */
export interface RegionPart {
  readonly boxes: readonly Box[];
  readonly complete: boolean;
}

/** The same as `callableRegionOf`, within limits; nothing is found when the limits don't reach to begin. */
export function lookForRegion(
  procedure: Procedure,
  rules: PhaseRules,
  table: Table,
  rule: Rule,
  limits: RegionLimits,
): RegionPart {
  if (limits.budget.left > 0) limits.budget.left -= groundWork(rules, table);
  if (limits.budget.left <= 0) return { boxes: [], complete: false };
  return callableIn(procedure, rules, table, rule, limits);
}

function callableIn(
  { deck }: Procedure,
  rules: PhaseRules,
  table: Table,
  rule: Rule,
  limits: RegionLimits,
): RegionPart {
  const claims = claimsOf(rules, table);
  const block = claims.blockOf(rule);
  const start = block && meet(claims.space, block, stepsIn(deck, claims.space));
  if (!start) return { boxes: [], complete: true };
  const { blocks, stopped } = regionIn(claims, rule, start, limits);
  return {
    boxes: blocks.map((piece) => boxOf(claims.space, piece)),
    complete: stopped === null && !claims.incomplete,
  };
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

function regionIn(
  claims: Claims,
  rule: Rule,
  start: Block,
  { most, budget }: RegionLimits = { most: mostBoxes, budget: { left: work } },
): Uncovered {
  return claims.left(start, claims.rivalsOf(rule), most, budget);
}

const known = new WeakMap<PhaseRules, Map<Table, Claims>>();

function claimsOf(rules: PhaseRules, table: Table): Claims {
  const ofPhase = known.get(rules) ?? new Map<Table, Claims>();
  known.set(rules, ofPhase);
  const claims = ofPhase.get(table) ?? new Claims(rules, table, { left: claimsWork });
  ofPhase.set(table, claims);
  return claims;
}

const knownSteps = new WeakMap<Space, Block>();

function stepsIn(deck: Deck, space: Space): Block {
  const block = knownSteps.get(space) ?? onSteps(deck, space);
  knownSteps.set(space, block);
  return block;
}

/**
 * Roughly what the first question about a table's regions costs before any search, in conditions looked
 * at: each input's range is cut at the ends of every condition, and each condition laid over the parts.
 */
function groundWork(rules: PhaseRules, table: Table): number {
  if (known.get(rules)?.has(table)) return 0;
  const all = [...rules.overriding, table].flatMap((one) => one.rules);
  let work = 0;
  for (const quantity of rules.box.keys()) {
    const conditions = all.filter(({ when }) => when.has(quantity)).length;
    work += 4 * conditions * conditions;
  }
  return work;
}
