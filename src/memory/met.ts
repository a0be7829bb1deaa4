/** Which gates a pilot has met: asked of them, outside of what belongs to rules. */
import type { SessionCard } from './types.ts';

type Met = Pick<SessionCard, 'kind' | 'gate' | 'memory'>;

/**
 * Whether a gate has been met: a card of it that is no rule has been answered. A drill asks for rules
 * anywhere in the procedure, so rules don't count; a gate that has nothing but rules counts as met.
 */
export function metGates(cards: readonly Met[]): (gate: string) => boolean {
  const known = new Set<string>();
  const met = new Set<string>();
  for (const { kind, gate, memory } of cards) {
    if (kind === 'rule' || gate == null) continue;
    known.add(gate);
    if (memory !== null) met.add(gate);
  }
  return (gate) => met.has(gate) || !known.has(gate);
}
