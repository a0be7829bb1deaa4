/** What the parts of the analysis share: the table at hand, the work left, and the words for findings. */
import type { DocumentPath, Finding, Severity } from '../../deck/findings.ts';
import { quantityOf } from '../../deck/lookup.ts';
import { sayList, sayValue } from '../../deck/say.ts';
import type { Quantity } from '../../deck/types.ts';
import type { Claims } from '../claims.ts';
import type { RuleCode } from '../codes.ts';
import type { Budget } from '../cover.ts';
import { typical } from '../sample.ts';
import { sayIntervals } from '../say-intervals.ts';
import { boxOf, type Block, type Box } from '../space.ts';
import type { PhaseRules, Procedure, State, Table } from '../types.ts';

/** A table under analysis. */
export interface TableReport {
  readonly procedure: Procedure;
  readonly table: Table;
  /** `['tables', index]`. */
  readonly path: DocumentPath;
  /** The table in each of its phases, in the procedure's order. */
  readonly places: readonly Claims[];
  /** Findings of one kind in one phase before the rest is left out. */
  readonly limit: number;
  readonly budget: Budget;
}

export interface Part {
  readonly findings: readonly Finding[];
  /** Kinds of findings of which there may be more than shown. */
  readonly more: readonly string[];
}

export function finding(
  code: RuleCode,
  severity: Severity,
  path: DocumentPath,
  message: string,
  counterexample?: State,
): Finding {
  return { code, severity, path, message, ...(counterexample ? { counterexample } : {}) };
}

/** "in “Final turn” when altitude is over 340 ft and closure is under 10 kt". */
export function sayWhere({ procedure }: TableReport, { rules }: Claims, box: Box): string {
  const conditions = [...box].map(([id, set]) => {
    const quantity = quantityOf(procedure.deck, id);
    return `${nameOf(quantity)} is ${sayIntervals(set, quantity, rules.box.get(id)!)}`;
  });
  const phase = `in “${rules.phase.label}”`;
  return conditions.length === 0 ? `anywhere ${phase}` : `${phase} when ${sayList(conditions)}`;
}

/** "altitude 345 ft, closure 5 kt": what the table and those that override it look at. */
export function sayState({ procedure }: TableReport, { space }: Claims, state: State): string {
  return space.axes
    .map(({ quantity: id }) => {
      const quantity = quantityOf(procedure.deck, id);
      return `${nameOf(quantity)} ${sayValue(state[id]!, quantity)}`;
    })
    .join(', ');
}

const nameOf = ({ spoken, label }: Quantity): string =>
  spoken ?? label.charAt(0).toLowerCase() + label.slice(1);

/** A state in the middle of a block, on the quantities' steps wherever the block has such values. */
export function stateIn({ procedure: { deck } }: TableReport, { rules, space }: Claims, block: Block): State {
  return typicalState(rules, boxOf(space, block), (id) => quantityOf(deck, id).step);
}

function typicalState({ box: whole }: PhaseRules, box: Box, stepOf: (id: string) => number): State {
  const values = [...whole].map(([id, range]) => {
    const set = box.get(id) ?? [range];
    // Only between two neighbouring doubles is there no value at all; then the end has to do.
    return [id, typical(set, stepOf(id)) ?? set[0]!.lo] as const;
  });
  return Object.fromEntries(values);
}
