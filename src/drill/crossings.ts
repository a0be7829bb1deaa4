/**
 * Where a rule's region meets another answer along one input: the states on the two sides of an edge.
 * Found from the regions of all rules, so that none is missed and none is claimed that isn't there.
 */
import { answerGridOf, type AnswerGrid } from '../rules/answer-grid.ts';
import { uncovered } from '../rules/cover.ts';
import { fieldOf, type Field } from '../rules/field.ts';
import { findRule } from '../rules/region.ts';
import type { Block, Space } from '../rules/space.ts';
import { rulesOfPhase } from '../rules/decide.ts';
import type { PhaseRules, Procedure, Rule, Table } from '../rules/types.ts';
import { holdsRun, linesOf, type Line } from './lines.ts';
import type { RuleTarget, Side } from './types.ts';

/** States alike but for one input: on the one value the rule decides, on the other something else is asked. */
export interface Crossing {
  /** The values of the other inputs for which this holds. */
  readonly block: Block;
  readonly side: Side;
  /** Counts of steps: the rule's last value, and the nearest at which the answer is another. */
  readonly inner: number;
  readonly outer: number;
  /** Where the other answer begins, in the quantity's unit. */
  readonly at: number;
  /** Neighbouring values from `inner` away from the edge, itself among them, that are the rule's too. */
  readonly room: number;
}

/** A torn table may have more; these are enough to draw from. */
const mostCrossings = 500;
const mostBlocks = 2000;
const work = 50_000_000;

/** A rule in a phase, with what is worked out of it when it is first asked for. */
export class Ground {
  readonly field: Field;
  readonly lines: readonly Line[];
  readonly region: readonly Block[];
  readonly table: Table;
  readonly rule: Rule;
  readonly grid: AnswerGrid;
  readonly #crossings = new Map<string, readonly Crossing[]>();
  #others: readonly Block[] | null = null;

  constructor(procedure: Procedure, rules: PhaseRules, table: Table, rule: Rule) {
    this.field = fieldOf(procedure, rules);
    this.grid = answerGridOf(procedure, rules);
    this.lines = linesOf(procedure, this.field);
    this.region = this.field.regionOf(table, rule);
    this.table = table;
    this.rule = rule;
  }

  /** The crossings along an input; empty when it alone never changes what is asked of the rule's control. */
  crossings(quantity: string): readonly Crossing[] {
    let found = this.#crossings.get(quantity);
    if (!found) {
      found = this.#find(quantity);
      this.#crossings.set(quantity, found);
    }
    return found;
  }

  #find(quantity: string): readonly Crossing[] {
    const line = this.lines.find((one) => one.quantity === quantity);
    if (!line || line.firstWord < 0) return [];
    this.#others ??= otherAnswers(this.field, this.table, this.rule);
    const best: Record<Side, Crossing[]> = { below: [], above: [] };
    for (const inside of this.region)
      for (const outside of this.#others) {
        const block = commonBut(this.field.space, inside, outside, quantity);
        if (!block) continue;
        for (const found of along(line, inside, outside)) {
          const kept = best[found.side];
          const closer = kept[0] ? gapOf(found) - gapOf(kept[0]) : 0;
          if (closer < 0) kept.length = 0;
          if (closer <= 0 && kept.length < mostCrossings) kept.push({ ...found, block });
        }
      }
    return [...best.below, ...best.above];
  }
}

/** True when no value lies between the two: the rule's region ends where another answer begins. */
export const isEdge = (crossing: Crossing): boolean => gapOf(crossing) === 1;

const gapOf = ({ inner, outer }: Pick<Crossing, 'inner' | 'outer'>): number => Math.abs(outer - inner);

/** The callable states, as blocks, in which the rule's control is asked for something else, or overridden. */
function otherAnswers(field: Field, table: Table, rule: Rule): readonly Block[] {
  const { rules, space, callable } = field;
  const overriding = rules.overriding.flatMap((one) =>
    one.rules
      .filter(
        ({ then }) => one.control !== table.control || then !== rule.then || !isOverriding(rules, table),
      )
      .flatMap((other) => field.regionOf(one, other)),
  );
  if (!isOverriding(rules, table)) {
    const others = table.rules.filter(({ then }) => then !== rule.then);
    return [...overriding, ...others.flatMap((other) => field.regionOf(table, other))];
  }
  const all = rules.overriding.flatMap((one) => one.rules.flatMap((other) => field.regionOf(one, other)));
  return [...overriding, ...uncovered(space, callable, all, mostBlocks, { left: work }).blocks];
}

const isOverriding = (rules: PhaseRules, table: Table): boolean => rules.overriding.includes(table);

/** What two blocks share on every axis but one; there it has what the first has. Null when they share nothing. */
function commonBut({ axes }: Space, one: Block, other: Block, quantity: string): Block | null {
  for (const axis of axes) {
    if (axis.quantity === quantity) continue;
    let common = 0;
    for (let w = axis.firstWord; w < axis.firstWord + axis.words; w++) common |= one[w]! & other[w]!;
    if (common === 0) return null;
  }
  const block = one.map((word, w) => word & other[w]!);
  const { firstWord, words } = axes.find((axis) => axis.quantity === quantity)!;
  block.set(one.subarray(firstWord, firstWord + words), firstWord);
  return block;
}

/** The places along a line at which values of the one block are followed by values of the other. */
function along(line: Line, inside: Block, outside: Block): Omit<Crossing, 'block'>[] {
  const held = [...line.runs.entries()].filter(
    ([, run]) => holdsRun(inside, line, run) || holdsRun(outside, line, run),
  );
  return held.slice(1).flatMap(([high, above], i) => {
    const [low, below] = held[i]!;
    const rises = holdsRun(inside, line, below);
    if (rises === holdsRun(inside, line, above)) return [];
    const last = below.first + below.count - 1;
    return rises
      ? {
          side: 'above' as const,
          inner: last,
          outer: above.first,
          at: above.piece.lo,
          room: roomFrom(line, inside, low, -1),
        }
      : {
          side: 'below' as const,
          inner: above.first,
          outer: last,
          at: below.piece.hi,
          room: roomFrom(line, inside, high, 1),
        };
  });
}

/** How many neighbouring values a block holds from a run on, upwards or downwards. */
function roomFrom(line: Line, block: Block, from: number, way: 1 | -1): number {
  let room = 0;
  for (let i = from; i >= 0 && i < line.runs.length && holdsRun(block, line, line.runs[i]!); i += way)
    room += line.runs[i]!.count;
  return room;
}

const known = new WeakMap<PhaseRules, Map<Rule, Ground>>();

/** Null for a phase, table or rule that the procedure hasn't. Kept for as long as the procedure is. */
export function groundOf(procedure: Procedure, { phase, table, rule }: RuleTarget): Ground | null {
  if (!procedure.phases.has(phase)) return null;
  const rules = rulesOfPhase(procedure, phase);
  const found = findRule(rules, table, rule);
  if (!found) return null;
  const grounds = known.get(rules) ?? new Map<Rule, Ground>();
  known.set(rules, grounds);
  const ground = grounds.get(found.rule) ?? new Ground(procedure, rules, found.table, found.rule);
  grounds.set(found.rule, ground);
  return ground;
}
