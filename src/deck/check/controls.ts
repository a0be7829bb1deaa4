/** Controls: which action opposes which, which means "leave it", what each does. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { valueAt, isList } from '../plain-data.ts';
import { quoted } from '../quoting.ts';
import type { Control } from '../types.ts';
import { ifUnknown, mendOf } from './unknown-name.ts';

export function* checkControls(parts: DeckParts): Generator<Draft> {
  for (const control of parts.controls) {
    yield* checkOpposites(parts, control);
    yield* checkNeutrals(parts, control);
    for (const action of control.actions)
      for (const id of Object.keys(action.effects ?? {}))
        yield* ifUnknown(parts, 'quantity', id, parts.pathOf(action, 'effects', id), true);
  }
}

/** The ids of a control's actions, those of broken ones too; null when one lacks its id. */
export function actionIdsOf(parts: DeckParts, control: Control): ReadonlySet<string> | null {
  const actions = valueAt(parts.data, parts.pathOf(control, 'actions'));
  const ids = isList(actions) ? actions.map((action) => valueAt(action, ['id'])) : [];
  const named = ids.filter((id) => typeof id === 'string');
  return named.length === ids.length ? new Set(named) : null;
}

function* checkOpposites(parts: DeckParts, control: Control): Generator<Draft> {
  const ids = actionIdsOf(parts, control);
  for (const action of control.actions) {
    if (action.opposes === undefined) continue;
    const path = parts.pathOf(action, 'opposes');
    if (action.opposes === action.id)
      yield {
        code: 'opposes-itself',
        message: `An action opposes another one, ${quoted(action.id)} names itself; name its opposite or take the line away.`,
        path,
      };
    else if (ids && !ids.has(action.opposes)) yield unknownAction(parts, action.opposes, control, ids, path);
  }
}

export function unknownAction(
  parts: DeckParts,
  id: string,
  control: Control,
  ids: ReadonlySet<string>,
  path: Draft['path'],
): Draft {
  return {
    code: 'unknown-action',
    message: `An action named here must belong to the control ${quoted(control.label)}, found ${quoted(id)}; ${mendOf(parts, id, ids, 'write one of its actions, or add it there')}.`,
    path,
  };
}

function* checkNeutrals(parts: DeckParts, control: Control): Generator<Draft> {
  const neutral = control.actions.filter((action) => action.neutral);
  for (const action of neutral.slice(1))
    yield {
      code: 'second-neutral',
      message: `A control has one neutral action, ${quoted(neutral[0]!.label)} is it already; take “neutral” away from one of the two.`,
      path: parts.pathOf(action, 'neutral'),
    };
  if (neutral.length > 0 || parts.isBroken(control)) return;
  const reason = reasonForNeutral(parts, control.id);
  yield {
    code: 'missing-neutral',
    severity: reason === null ? 'warning' : 'error',
    message:
      reason === null
        ? 'A control should have a neutral action, the one that leaves it as it is, this one has none; add “neutral: true” to that action.'
        : `A control needs a neutral action when ${reason}, this one has none; add “neutral: true” to the action that means to leave it.`,
    path: parts.pathOf(control, 'actions'),
    onKey: true,
  };
}

/** Where "nothing is called for" can be the answer. */
function reasonForNeutral(parts: DeckParts, id: string): string | null {
  const tables = parts.tables.filter((table) => table.control === id);
  const overriding = tables.find((table) => table.overriding);
  if (overriding) return `an overriding table like ${quoted(overriding.label)} works it`;
  if (!parts.isComplete('tables')) return null;
  const decided = new Set(tables.flatMap((table) => table.phases));
  const idle = parts.phases.find((phase) => phase.controls.includes(id) && !decided.has(phase.id));
  return idle ? `a phase like ${quoted(idle.label)} has no table for it` : null;
}
