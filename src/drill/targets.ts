/** What there is to drill in a procedure: rules, the inputs that matter to them, edges, twins. */
import { cardId } from '../cards/ids.ts';
import type { CardId } from '../cards/types.ts';
import { blockOf } from '../rules/space.ts';
import { regionOf } from '../rules/region.ts';
import type { PhaseRules, Procedure, Rule, Table } from '../rules/types.ts';
import { groundOf, isEdge, type Ground } from './crossings.ts';
import type {
  EdgeTarget,
  InputTarget,
  RuleTarget,
  Side,
  Targets,
  Unreachable,
  WhyUnreachable,
} from './types.ts';

/** Says which rule's card an answer to a target counts on. */
export const cardOf = ({ table, rule }: RuleTarget): CardId => cardId('rule', table, rule);

const known = new WeakMap<Procedure, Targets>();

/**
 * Everything that can be drilled: exact, from the regions of the rules, over the states that can be read
 * off. A rule counts once for each phase in which it decides. An input matters to a rule there when
 * changing it alone can change what is asked of the rule's control, an overriding action coming or going
 * included (the independence of a condition in modified condition/decision coverage, RTCA DO-178C). For
 * each such input there is a twin pair. An edge is where that happens from one step to the next; where a
 * rule that asks for the same follows first, there is none.
 * Worked out once for a procedure.
 */
export function targetsOf(procedure: Procedure): Targets {
  const there = known.get(procedure);
  if (there) return there;
  const rules: RuleTarget[] = [];
  const inputs: InputTarget[] = [];
  const edges: EdgeTarget[] = [];
  const unreachable: Unreachable[] = [];
  for (const place of everyRule(procedure)) {
    const target = { phase: place.rules.phase.id, table: place.table.id, rule: place.rule.id };
    const ground = groundOf(procedure, target)!;
    if (ground.region.length === 0) {
      unreachable.push({ ...target, why: whyUnreachable(procedure, place, ground) });
      continue;
    }
    rules.push(target);
    for (const { quantity } of ground.lines) {
      const crossings = ground.crossings(quantity);
      if (crossings.length === 0) continue;
      inputs.push({ ...target, quantity });
      for (const side of ['below', 'above'] satisfies Side[])
        if (crossings.some((crossing) => crossing.side === side && isEdge(crossing)))
          edges.push({ ...target, quantity, side });
    }
  }
  const targets: Targets = { rules, inputs, edges, twins: inputs, unreachable };
  known.set(procedure, targets);
  return targets;
}

interface Place {
  readonly rules: PhaseRules;
  readonly table: Table;
  readonly rule: Rule;
}

function everyRule({ phases }: Procedure): Place[] {
  return [...phases.values()].flatMap((rules) =>
    [...rules.base, ...rules.overriding].flatMap((table) =>
      table.rules.map((rule) => ({ rules, table, rule })),
    ),
  );
}

function whyUnreachable(
  procedure: Procedure,
  { rules, table, rule }: Place,
  { field }: Ground,
): WhyUnreachable {
  if (!blockOf(field.space, rule)) return 'never-fits';
  const decides = regionOf(procedure, rules.phase.id, table.id, rule.id).length > 0;
  return decides ? 'between-steps' : 'always-beaten';
}

/** Why a rule decides nothing, to follow its name: "is beaten by other rules wherever it fits". */
export function sayUnreachable(why: WhyUnreachable): string {
  switch (why) {
    case 'never-fits':
      return 'fits nothing that can occur here';
    case 'always-beaten':
      return 'is beaten by other rules wherever it fits';
    case 'between-steps':
      return 'decides only between two steps of a quantity, which nobody can read off';
  }
}
