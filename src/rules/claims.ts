/** Which states of a phase each rule of a table fits, which are taken from it, and which it decides. */
import { uncovered, type Budget, type Uncovered } from './cover.ts';
import { clash, inOrderOfPrecedence } from './hit-policy.ts';
import { blockOf, doMeet, spaceFor, wholeOf, type Block, type Space } from './space.ts';
import type { PhaseRules, Rule, Table } from './types.ts';

interface Claim {
  readonly rule: Rule;
  readonly block: Block;
}

/** A table in one of its phases, as blocks of a common space. */
export class Claims {
  readonly rules: PhaseRules;
  readonly table: Table;
  readonly space: Space;
  /** The states that overriding tables take before this one is asked. */
  readonly overridden: readonly Block[];
  /** True when the work allowed did not reach to find all of `overridden`. */
  readonly incomplete: boolean;
  /** Rules that fit some state of the phase, in order of precedence. */
  readonly claims: readonly Claim[];
  readonly #blocks: ReadonlyMap<Rule, Block>;

  constructor(rules: PhaseRules, table: Table, budget: Budget) {
    this.rules = rules;
    this.table = table;
    const place = rules.overriding.indexOf(table);
    const before = place < 0 ? rules.overriding : rules.overriding.slice(0, place);
    this.space = spaceFor(
      rules.box,
      [...before, table].flatMap((one) => one.rules),
    );
    this.claims = claimsIn(this.space, table);
    this.#blocks = new Map(this.claims.map(({ rule, block }) => [rule, block]));
    const taken = before.map((one) => decidedBy(this.space, claimsIn(this.space, one), one, budget));
    this.overridden = taken.flatMap(({ blocks }) => blocks);
    this.incomplete = taken.some(({ stopped }) => stopped !== null);
  }

  /** The states a rule fits, whoever decides there; null when it fits none of the phase. */
  blockOf(rule: Rule): Block | null {
    return this.#blocks.get(rule) ?? null;
  }

  /** The states of rules that `test` picks. */
  blocksWhere(test: (rule: Rule) => boolean): Block[] {
    return this.claims.filter(({ rule }) => test(rule)).map(({ block }) => block);
  }

  /** What is left of a block outside what others take, see `uncovered`. */
  left(start: Block, others: readonly Block[], most: number, budget: Budget): Uncovered {
    return uncovered(this.space, start, others, most, budget);
  }

  /** Blocks of which none may hold a state that the rule decides. */
  rivalsOf(rule: Rule): Block[] {
    return [...this.overridden, ...rivalsAmong(this.claims, this.table, rule)];
  }

  whole(): Block {
    return wholeOf(this.space);
  }
}

function claimsIn(space: Space, table: Table): Claim[] {
  return inOrderOfPrecedence(table).flatMap((rule) => {
    const block = blockOf(space, rule);
    return block ? [{ rule, block }] : [];
  });
}

/** Earlier rules decide before it; later ones that clash with it leave the state undecided. */
function rivalsAmong(claims: readonly Claim[], table: Table, rule: Rule): Block[] {
  const place = claims.findIndex((claim) => claim.rule === rule);
  return claims
    .filter((other, i) => i < place || (i > place && clash(table, rule, other.rule)))
    .map(({ block }) => block);
}

/** The states to which a table gives an action: all that its rules fit, less where they conflict. */
function decidedBy(space: Space, claims: readonly Claim[], table: Table, budget: Budget): Uncovered {
  const contested = claims.some(({ rule, block }, i) =>
    claims.some((other, j) => j > i && clash(table, rule, other.rule) && doMeet(space, block, other.block)),
  );
  if (!contested) return { blocks: claims.map(({ block }) => block), stopped: null };
  const regions = claims.map(({ rule, block }) =>
    uncovered(space, block, rivalsAmong(claims, table, rule), Infinity, budget),
  );
  return {
    blocks: regions.flatMap(({ blocks }) => blocks),
    stopped: regions.find(({ stopped }) => stopped !== null)?.stopped ?? null,
  };
}
