/** The structure of decision tables. Their conditions are judged by the rule engine. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted } from '../quoting.ts';
import { sayList } from '../say.ts';
import type { Control, DecisionTable } from '../types.ts';
import { actionIdsOf, unknownAction } from './controls.ts';
import { shownIn } from './phases.ts';
import { ifUnknown, mendOf, repeated } from './unknown-name.ts';

export function* checkTables(parts: DeckParts): Generator<Draft> {
  for (const table of parts.tables) {
    yield* checkNames(parts, table);
    yield* checkPhases(parts, table);
    yield* checkConditions(parts, table);
    const control = parts.known.control.get(table.control);
    if (control) yield* checkActions(parts, table, control);
    yield* checkPriority(parts, table, control ? actionIdsOf(parts, control) : null);
  }
  yield* secondTables(parts);
}

function* checkNames(parts: DeckParts, table: DecisionTable): Generator<Draft> {
  yield* ifUnknown(parts, 'control', table.control, parts.pathOf(table, 'control'));
  for (const [index, id] of table.phases.entries())
    yield* ifUnknown(parts, 'phase', id, parts.pathOf(table, 'phases', index));
  for (const [index, id] of table.inputs.entries())
    yield* ifUnknown(parts, 'quantity', id, parts.pathOf(table, 'inputs', index));
  yield* repeated(table.phases, parts.pathOf(table, 'phases'));
  yield* repeated(table.inputs, parts.pathOf(table, 'inputs'));
  yield* repeated(table.priority ?? [], parts.pathOf(table, 'priority'));
}

function* checkPhases(parts: DeckParts, table: DecisionTable): Generator<Draft> {
  for (const id of table.phases) {
    const phase = parts.known.phase.get(id);
    if (!phase) continue;
    if (!phase.controls.includes(table.control) && parts.known.control.has(table.control))
      yield {
        code: 'control-not-in-phase',
        message: `A table works a control of its phases, ${quoted(phase.label)} has no ${quoted(table.control)} among its controls; add it there or change the table.`,
        path: parts.pathOf(table, 'control'),
      };
    const shown = shownIn(parts, phase);
    if (!shown) continue;
    for (const [index, input] of table.inputs.entries())
      if (!shown.has(input) && parts.known.quantity.has(input))
        yield {
          code: 'quantity-not-in-phase',
          message: `A table decides on quantities shown in its phases, ${quoted(phase.label)} has no ${quoted(input)} in its “state”; add it there with its range or change the table.`,
          path: parts.pathOf(table, 'inputs', index),
        };
  }
}

function* checkConditions(parts: DeckParts, table: DecisionTable): Generator<Draft> {
  const inputs = new Set(table.inputs);
  const { quantity } = parts.known;
  // Which quantity a misspelt input stood for can't be told, and it has been told of.
  const hasUnknownInput = table.inputs.some((id) => !quantity.has(id));
  const told = new Set<string>();
  for (const rule of table.rules)
    for (const id of Object.keys(rule.when)) {
      const isQuantity = quantity.ids.has(id);
      if (inputs.has(id) || (isQuantity && (hasUnknownInput || told.has(id)))) continue;
      told.add(id);
      const mend = isQuantity
        ? 'add it to the inputs or take it out of the rules'
        : mendOf(parts, id, inputs, 'write one of these');
      yield {
        code: 'condition-not-input',
        message: `Conditions stand on the table’s inputs ${sayList(table.inputs.map(quoted))}, found ${quoted(id)}; ${mend}.`,
        path: parts.pathOf(rule, 'when', id),
        onKey: true,
      };
    }
}

function* checkActions(parts: DeckParts, table: DecisionTable, control: Control): Generator<Draft> {
  const ids = actionIdsOf(parts, control);
  if (!ids) return;
  for (const rule of table.rules)
    if (!ids.has(rule.then)) yield unknownAction(parts, rule.then, control, ids, parts.pathOf(rule, 'then'));
  for (const [index, id] of (table.priority ?? []).entries())
    if (!ids.has(id)) yield unknownAction(parts, id, control, ids, parts.pathOf(table, 'priority', index));
}

function* checkPriority(
  parts: DeckParts,
  table: DecisionTable,
  actions: ReadonlySet<string> | null,
): Generator<Draft> {
  const { hit, priority } = table;
  if (hit !== 'priority') {
    if (priority)
      yield {
        code: 'unexpected-priority',
        message: `Only a table with “hit: priority” ranks its actions, this one has “hit: ${hit}”; take “priority” away or change “hit”.`,
        path: parts.pathOf(table, 'priority'),
        onKey: true,
      };
    return;
  }
  if (!priority) {
    if (!parts.isBroken(table))
      yield {
        code: 'missing-priority',
        message:
          'A table with “hit: priority” must rank its actions, “priority” is missing; add a list of them, the first to win first.',
        path: parts.pathOf(table, 'hit'),
      };
    return;
  }
  const ranked = new Set(priority);
  const unranked = new Set(table.rules.map((rule) => rule.then).filter((action) => !ranked.has(action)));
  // A misspelt action among them has been told of.
  const isMisspelt = actions !== null && priority.some((id) => !actions.has(id));
  if (unranked.size > 0 && !isMisspelt)
    yield {
      code: 'incomplete-priority',
      message: `“priority” must rank every action of the rules, it lacks ${sayList([...unranked].slice(0, 5).map(quoted))}; add what is missing.`,
      path: parts.pathOf(table, 'priority'),
    };
}

/** One base table answers for a control in a phase; overriding ones come on top. */
function* secondTables(parts: DeckParts): Generator<Draft> {
  const first = new Map<string, DecisionTable>();
  for (const table of parts.tables) {
    if (table.overriding) continue;
    for (const [index, phase] of table.phases.entries()) {
      const key = `${phase} ${table.control}`;
      const before = first.get(key);
      if (before && before !== table)
        yield {
          code: 'second-table',
          message: `One table answers for a control in a phase, ${quoted(before.label)} does so here already; join the two, change the phases, or mark one as overriding.`,
          path: parts.pathOf(table, 'phases', index),
        };
      if (!before) first.set(key, table);
    }
  }
}
