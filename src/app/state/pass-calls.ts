/** What can be called while a pass is flown: rows to be set and called, and calls that work at once. */
import { controlsAsk } from '../../cards/rule.ts';
import type { ControlRow } from '../../cards/types.ts';
import { phaseOf } from '../../deck/lookup.ts';
import type { Deck } from '../../deck/types.ts';
import type { Procedure } from '../../rules/types.ts';
import { keysFor, type RowKeys } from './control-keys.ts';

/** An action that beats all others, as going around does: one key, and it is called. */
export interface AtOnce {
  readonly control: string;
  readonly action: string;
  readonly label: string;
  /** Lower case; null when it has none of its own. */
  readonly key: string | null;
}

export interface PassCalls {
  /** In the deck's order of controls, the same in every phase, without those that hold nothing but calls at once. */
  readonly rows: readonly ControlRow[];
  readonly atOnce: readonly AtOnce[];
  /** Of all the deck's controls, so that a key means the same in every phase. */
  readonly keys: ReadonlyMap<string, RowKeys>;
}

export function callsIn(procedure: Procedure, phaseId: string): PassCalls {
  const { deck, phases } = procedure;
  const beating = new Set(
    phases
      .get(phaseId)!
      .overriding.flatMap(({ control, rules }) => rules.map(({ then }) => `${control}/${then}`)),
  );
  const keys = keysFor(deck.controls ?? []);
  // The rows of a phase don't depend on its state.
  const asked = controlsAsk(deck, phaseOf(deck, phaseId), anyState(procedure, phaseId)).rows;
  const rows = inDeckOrder(deck, asked);
  const beats = (row: ControlRow, action: string): boolean =>
    action !== row.neutral && beating.has(`${row.id}/${action}`);
  return {
    keys,
    rows: rows.filter((row) => row.actions.some(({ id }) => id !== row.neutral && !beats(row, id))),
    atOnce: rows.flatMap((row) =>
      row.actions
        .filter(({ id }) => beats(row, id))
        .map(({ id, label }) => ({
          control: row.id,
          action: id,
          label,
          key: keys.get(row.id)?.direct?.get(id) ?? null,
        })),
    ),
  };
}

/** Rows in the order in which the deck lists its controls. */
export const inDeckOrder = (deck: Deck, rows: readonly ControlRow[]): readonly ControlRow[] =>
  (deck.controls ?? []).flatMap(({ id }) => rows.filter((row) => row.id === id));

/** The controls that hold an action which beats all others in a phase. */
export const overridingControls = ({ phases }: Procedure, phaseId: string): ReadonlySet<string> =>
  new Set(phases.get(phaseId)!.overriding.map(({ control }) => control));

const anyState = ({ deck }: Procedure, phase: string): Record<string, number> =>
  Object.fromEntries(Object.entries(phaseOf(deck, phase).state).map(([id, [lo]]) => [id, lo]));
