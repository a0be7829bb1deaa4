/** Which keys work which row of controls. Pure, so that the screen and the keyboard can't disagree. */
import type { ControlRow } from '../../cards/types.ts';

/** What keys are given out by: a control of the deck, or a row of a prompt. */
export interface Keyed {
  readonly id: string;
  readonly label: string;
  readonly axis?: 'vertical' | 'horizontal' | null | undefined;
  readonly actions?: readonly { readonly id: string; readonly label: string }[];
}

export interface RowKeys {
  /** `KeyboardEvent.key` values, lower case; null when one key steps through the choices. */
  readonly back: string | null;
  readonly on: string;
  /** As printed on the screen. */
  readonly shown: string;
  /** Of a row without an axis: action -> the key that calls it at once, lower case. */
  readonly direct?: ReadonlyMap<string, string>;
}

const pairs: Readonly<Record<'vertical' | 'horizontal', readonly RowKeys[]>> = {
  horizontal: [
    { back: 'arrowleft', on: 'arrowright', shown: '← →' },
    { back: 'a', on: 'd', shown: 'A D' },
  ],
  vertical: [
    { back: 'arrowdown', on: 'arrowup', shown: '↑ ↓' },
    { back: 's', on: 'w', shown: 'W S' },
  ],
};

/**
 * Arrows for the first control of each axis, letters for the second. Any other has a letter for each of
 * its actions, "G" for "Go around", or one stepping key where the letters run out. Give it all controls
 * of the deck, so that a key means the same in every phase.
 */
export function keysFor(rows: readonly Keyed[]): ReadonlyMap<string, RowKeys> {
  const free = { horizontal: [...pairs.horizontal], vertical: [...pairs.vertical] };
  const taken = new Set<string>();
  const keys = new Map<string, RowKeys>();
  for (const row of rows) {
    const pair = row.axis ? free[row.axis].shift() : undefined;
    if (!pair) continue;
    keys.set(row.id, pair);
    taken.add(pair.on);
    if (pair.back) taken.add(pair.back);
  }
  for (const row of rows) {
    if (keys.has(row.id)) continue;
    const direct = directKeys(row, taken);
    if (direct) {
      const [on] = [...direct.values()];
      for (const key of direct.values()) taken.add(key);
      keys.set(row.id, { back: null, on: on!, shown: '', direct });
      continue;
    }
    const on = freeLetter(`${row.label}123456789`, taken);
    if (!on) continue;
    taken.add(on);
    keys.set(row.id, { back: null, on, shown: on.toUpperCase() });
  }
  return keys;
}

const freeLetter = (label: string, taken: ReadonlySet<string>): string | undefined =>
  [...label.toLowerCase()].find((key) => /[a-z0-9]/.test(key) && !taken.has(key) && !reserved.has(key));

/** A letter of its own label for each action; null when one has none left. */
function directKeys({ actions }: Keyed, taken: ReadonlySet<string>): ReadonlyMap<string, string> | null {
  if (!actions || actions.length === 0) return null;
  const used = new Set(taken);
  const direct = new Map<string, string>();
  for (const { id, label } of actions) {
    const key = freeLetter(label, used);
    if (!key) return null;
    used.add(key);
    direct.set(id, key);
  }
  return direct;
}

/** Keys that mean something else on the pages that show controls. */
const reserved: ReadonlySet<string> = new Set(['h', 'u', 'p', 'z']);

export interface RowMove {
  readonly row: string;
  readonly action: string;
}

/** What a key press changes, or null when the key belongs to no row shown. A pair stops at the ends; a stepping key goes round. */
export function moveFor(
  key: string,
  rows: readonly ControlRow[],
  chosen: Readonly<Record<string, string>>,
  allKeys: ReadonlyMap<string, RowKeys>,
): RowMove | null {
  const pressed = key.toLowerCase();
  for (const [row, keys] of allKeys) {
    const called = [...(keys.direct ?? [])].find(([, key]) => key === pressed);
    if (called) {
      const isShown = rows.some(
        ({ id, actions }) => id === row && actions.some(({ id }) => id === called[0]),
      );
      return isShown ? { row, action: called[0] } : null;
    }
    if (keys.direct) continue;
    if (pressed !== keys.on && pressed !== keys.back) continue;
    const actions = rows.find((candidate) => candidate.id === row)?.actions;
    if (!actions) return null;
    const at = actions.findIndex((action) => action.id === chosen[row]);
    const next =
      keys.back === null
        ? (at + 1) % actions.length
        : Math.min(actions.length - 1, Math.max(0, at + (pressed === keys.on ? 1 : -1)));
    return { row, action: actions[next]!.id };
  }
  return null;
}
