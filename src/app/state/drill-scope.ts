/** Which phase's scenarios belong to a card. */
import type { Card } from '../../cards/types.ts';
import { gateIndexOf, tableOf } from '../../deck/lookup.ts';
import type { Deck, Phase } from '../../deck/types.ts';

/** Phases that have rules: only those can be drilled. */
export const drillPhases = (deck: Deck): readonly Phase[] =>
  (deck.phases ?? []).filter((phase) => deck.tables?.some((table) => table.phases.includes(phase.id)));

/** The phase to drill from a card: that of its rule, else the one that leads up to, or away from, its gate. */
export function drillPhaseFor(deck: Deck, card: Card): string | null {
  const phases = drillPhases(deck);
  if (card.kind === 'rule') {
    const table = tableOf(deck, card.id.split('/')[1]!);
    return phases.find((phase) => table.phases.includes(phase.id))?.id ?? null;
  }
  if (card.gate === null) return null;
  const at = gateIndexOf(deck, card.gate);
  const spans = phases.map(({ id, from, to }) => ({
    id,
    from: gateIndexOf(deck, from),
    to: gateIndexOf(deck, to),
  }));
  const inside = spans.find(({ from, to }) => from < at && at <= to) ?? spans.find(({ from }) => from === at);
  return inside?.id ?? null;
}
