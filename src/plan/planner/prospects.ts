/** What the first rehearsal of each card in each session would lead to, exactly; worked out once. */
import { expectedShowings } from '../../memory/worth.ts';
import { rehearse } from '../rehearsal.ts';
import type { PlanInput } from '../types.ts';

/** Numbers of card c and session k stand at c * sessions + k. */
export interface Prospects {
  readonly cards: number;
  readonly sessions: number;
  /** Chance of recall at the event without any rehearsal, by card. */
  readonly untouched: Float64Array;
  readonly chance: Float64Array;
  readonly showings: Float64Array;
  readonly recalledStability: Float64Array;
  readonly recalledDifficulty: Float64Array;
  readonly relearnedStability: Float64Array;
  readonly relearnedDifficulty: Float64Array;
}

export function prospectsOf({ cards, sessions, eventMs, scheduler }: PlanInput): Prospects {
  const numbers = (): Float64Array => new Float64Array(cards.length * sessions.length);
  const found = {
    cards: cards.length,
    sessions: sessions.length,
    untouched: Float64Array.from(cards, ({ memory }) => scheduler.retrievability(memory, eventMs)),
    chance: numbers(),
    showings: numbers(),
    recalledStability: numbers(),
    recalledDifficulty: numbers(),
    relearnedStability: numbers(),
    relearnedDifficulty: numbers(),
  };
  cards.forEach(({ memory }, c) => {
    sessions.forEach(({ atMs }, k) => {
      const at = c * sessions.length + k;
      const { chance, recalled, relearned } = rehearse(scheduler, memory, atMs);
      found.chance[at] = chance;
      found.showings[at] = expectedShowings(chance);
      found.recalledStability[at] = recalled.stability;
      found.recalledDifficulty[at] = recalled.difficulty;
      found.relearnedStability[at] = relearned.stability;
      found.relearnedDifficulty[at] = relearned.difficulty;
    });
  });
  return found;
}
