/** Cards sorted into classes that can share a table of values. */
import type { PlanCard } from '../types.ts';
import type { Costs } from './dual.ts';

/** More different ratios of seconds to weight than this are put together by likeness. */
const MOST_CLASSES = 24;

/**
 * Cards are of a class when their seconds and weight are in the same ratio. With too many ratios, like ones
 * share a class, at the least ratio among them: their later rehearsals then count as a little cheaper
 * than they are, which leaves the bound a bound. First rehearsals, and the plan, count exactly.
 */
export function costsOf(cards: readonly PlanCard[]): Costs {
  const ratios = cards.map(({ seconds, weight }) => seconds / weight);
  const sorted = [...new Set(ratios)].sort((one, other) => one - other);
  const least = sorted[0]!;
  const width = Math.log(sorted[sorted.length - 1]! / least) / MOST_CLASSES;
  const classOf = (ratio: number): number =>
    sorted.length <= MOST_CLASSES ? ratio : Math.floor(Math.log(ratio / least) / width);

  const members = new Map<number, number[]>();
  ratios.forEach((ratio, card) => {
    const key = classOf(ratio);
    const known = members.get(key);
    if (known) known.push(card);
    else members.set(key, [card]);
  });
  return {
    seconds: Float64Array.from(cards, ({ seconds }) => seconds),
    weights: Float64Array.from(cards, ({ weight }) => weight),
    classes: [...members.values()].map((ofClass) => ({
      secondsPerWeight: Math.min(...ofClass.map((card) => ratios[card]!)),
      cards: ofClass,
    })),
  };
}
