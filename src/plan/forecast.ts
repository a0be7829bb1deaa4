/**
 * What will be remembered at the event if nothing more is done.
 *
 * A card's chance of recall is the forgetting curve of FSRS-6, R = (1 + f t / S)^-w20 with f such
 * that R = 0.9 at t = S, taken from the scheduler. A card never answered counts as not known.
 */
import type { Scheduler, SessionCard } from '../memory/types.ts';
import type { EventWeights } from './types.ts';

export interface Together {
  readonly cards: number;
  /** Weighted mean chance of recall, 0 to 1. */
  readonly mean: number;
  readonly critical: number;
  /** Chance that all critical cards are recalled; 1 when there are none. */
  readonly allCritical: number;
}

export interface Forecast {
  /** In the order of the input. */
  readonly cards: readonly { readonly id: string; readonly chance: number }[];
  /** By id, gates in the order of the input; of a gate all that is asked at it. */
  readonly gates: ReadonlyMap<string, Together>;
  /** By id: the list, its responses, and the gate it must be complete by. */
  readonly checklists: ReadonlyMap<string, Together>;
  /**
   * All together. `allCritical` is the chance of a clean pass. It takes it that one card's recall tells
   * nothing of another's, given the memory model. In truth a good day lifts all and a bad day sinks all,
   * and the critical cards of a gate bring each other to mind: the product then is too low.
   */
  readonly pass: Together;
}

export function forecast(
  cards: readonly SessionCard[],
  atMs: number,
  scheduler: Scheduler,
  weights: EventWeights,
): Forecast {
  const chances = cards.map((card) => ({ card, chance: scheduler.retrievability(card.memory, atMs) }));
  return {
    cards: chances.map(({ card, chance }) => ({ id: card.id, chance })),
    gates: by(chances, ({ gate }) => gate ?? null, weights),
    checklists: by(chances, checklistOf, weights),
    pass: together(chances, weights),
  };
}

interface Chance {
  readonly card: SessionCard;
  readonly chance: number;
}

const CHECKLIST_GROUP = /^checklist\/(.+)$/;
const checklistOf = ({ group }: SessionCard): string | null => CHECKLIST_GROUP.exec(group)?.[1] ?? null;

function by(
  chances: readonly Chance[],
  keyOf: (card: SessionCard) => string | null,
  weights: EventWeights,
): ReadonlyMap<string, Together> {
  const groups = new Map<string, Chance[]>();
  for (const chance of chances) {
    const key = keyOf(chance.card);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(chance);
    else groups.set(key, [chance]);
  }
  return new Map([...groups].map(([key, group]) => [key, together(group, weights)]));
}

function together(chances: readonly Chance[], weights: EventWeights): Together {
  let weight = 0;
  let recalled = 0;
  let critical = 0;
  let allCritical = 1;
  for (const { card, chance } of chances) {
    const counts = card.critical ? weights.critical : weights.other;
    weight += counts;
    recalled += counts * chance;
    if (!card.critical) continue;
    critical += 1;
    allCritical *= chance;
  }
  return { cards: chances.length, mean: weight > 0 ? recalled / weight : 0, critical, allCritical };
}
