/** Whether what is known of a state is enough to decide it. */
import { uncovered } from './cover.ts';
import { decideIn, rulesOfPhase } from './decide.ts';
import { callableIn, fieldOf, type Field } from './field.ts';
import { doMeet, type Block, type Box } from './space.ts';
import type { Procedure, State, Table } from './types.ts';

const work = 5_000_000;

/**
 * True when every callable state of the box asks for the same actions as the given one; exact, by the
 * rules' regions. Inputs the box doesn't name may have any value of the phase. A deck too torn to find
 * out gives false: then more has to be said than is needed, never less.
 * @param state one of the box's.
 */
export function isSettled(procedure: Procedure, phaseId: string, state: State, box: Box): boolean {
  const rules = rulesOfPhase(procedure, phaseId);
  const field = fieldOf(procedure, rules);
  const start = callableIn(procedure.deck, field, box);
  if (!start) return true;
  const decision = decideIn(rules, state);
  if (decision.overriding) {
    const { control, action } = decision.overriding;
    return covers(field, start, saying(field, rules.overriding, control, action));
  }
  return (
    !touches(field, start, rules.overriding) &&
    rules.base.every((table) => {
      const action = decision.actions[table.control];
      return action === undefined
        ? !touches(field, start, [table])
        : covers(field, start, saying(field, [table], table.control, action));
    })
  );
}

function saying(field: Field, tables: readonly Table[], control: string, action: string): Block[] {
  return tables
    .filter((table) => table.control === control)
    .flatMap((table) =>
      table.rules.filter(({ then }) => then === action).flatMap((rule) => field.regionOf(table, rule)),
    );
}

function covers({ space }: Field, start: Block, blocks: readonly Block[]): boolean {
  const { blocks: left, stopped } = uncovered(space, start, blocks, 1, { left: work });
  return left.length === 0 && stopped === null;
}

function touches(field: Field, start: Block, tables: readonly Table[]): boolean {
  return tables.some((table) =>
    table.rules.some((rule) =>
      field.regionOf(table, rule).some((block) => doMeet(field.space, start, block)),
    ),
  );
}
