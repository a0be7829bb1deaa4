/** The order within a run. */
import type { PlanItem } from './types.ts';

/** Other scenarios between the two halves of a twin pair, where the run has them. */
const apart = 2;

interface Waiting {
  readonly item: PlanItem;
  /** The second half of a pair, and the place from which on it may come. */
  readonly second: PlanItem | null;
  readonly isSecond: boolean;
  readonly from: number;
}

/**
 * Mixed, so that each answer has to be found anew: a scenario differs in phase from the one before
 * wherever it can, and between the two halves of a pair come at least two others, so that the second is
 * not just the opposite of what was called last. Pairs begin spread over the run, early enough that
 * their second halves find their place.
 * @param groups single items and pairs; earlier ones come earlier where nothing else decides.
 */
export function inRunOrder(groups: readonly (readonly PlanItem[])[]): PlanItem[] {
  const length = groups.flat().length;
  const pairs = groups.filter(({ length: size }) => size > 1);
  const spacing = Math.max(0, length - 2 - apart) / Math.max(1, pairs.length);
  const left = groups.flatMap(([item, second = null]): Waiting[] => {
    if (!item) return [];
    const from = second ? Math.floor(spacing * pairs.findIndex(([first]) => first === item)) : 0;
    return [{ item, second, isSecond: false, from }];
  });
  const order: PlanItem[] = [];
  while (left.length > 0) {
    const place = order.length;
    const before = order[place - 1]?.phase;
    const ofPhase = (phase: string) => left.filter(({ item }) => item.phase === phase).length;
    // Of equal turn the phase with most left, so that none is left over at the end to follow itself.
    const ranks = left.map((one) => rankOf(one, place, before) - ofPhase(one.item.phase) / (length + 1));
    const best = ranks.indexOf(Math.min(...ranks));
    const [{ item, second }] = left.splice(best, 1) as [Waiting];
    order.push(item);
    if (second) left.push({ item: second, second: null, isSecond: true, from: place + 1 + apart });
  }
  return order;
}

/** Lowest first. */
function rankOf(
  { item, second, isSecond, from }: Waiting,
  place: number,
  before: string | undefined,
): number {
  const early = Math.max(0, from - place);
  // A second half too early is the last resort, the one that has waited longest before others.
  if (isSecond && early > 0) return 100 + early;
  const samePhase = item.phase === before ? 10 : 0;
  const turn = isSecond ? 0 : second && early === 0 ? 1 : second ? 3 : 2;
  return samePhase + turn;
}
