/** From the cards that count to what the planner and the refresher work with. */
import type { CardKind } from '../cards/types.ts';
import type { SessionCard } from '../memory/types.ts';
import type { EventWeights, PlanCard } from './types.ts';

/** @param secondsFor one showing of a kind, see `memory/seconds.ts` */
export function planCard(
  { id, kind, critical, memory }: SessionCard,
  weights: EventWeights,
  secondsFor: (kind: CardKind) => number,
): PlanCard {
  return { id, memory, seconds: secondsFor(kind), weight: critical ? weights.critical : weights.other };
}
