/** What a key press means where controls are set and called. */
import { moveFor, type RowMove } from './control-keys.ts';
import { belongsElsewhere } from './keyboard.ts';
import type { AtOnce, PassCalls } from './pass-calls.ts';

export type CallKey =
  | { readonly kind: 'call' }
  | { readonly kind: 'at-once'; readonly one: AtOnce }
  | { readonly kind: 'move'; readonly move: RowMove };

/**
 * Null when the key belongs to nothing here, or to something else on the page. After a click on a choice Enter
 * still calls; one reached with the Tab key is pressed by it.
 * @param chosen control -> action of every row.
 */
export function callKeyOf(
  event: KeyboardEvent,
  calls: PassCalls,
  chosen: Readonly<Record<string, string>>,
): CallKey | null {
  const onChoice = event.target instanceof Element && event.target.matches('.choice:not(:focus-visible)');
  if (event.key === ' ' && onChoice) return null;
  if (belongsElsewhere(event) && !(event.key === 'Enter' && onChoice)) return null;
  if (event.key === 'Enter') return { kind: 'call' };
  const one = calls.atOnce.find(({ key }) => key === event.key.toLowerCase());
  if (one) return { kind: 'at-once', one };
  const move = moveFor(event.key, calls.rows, chosen, calls.keys);
  return move && { kind: 'move', move };
}
