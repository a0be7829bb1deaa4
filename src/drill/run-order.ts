/** The order within a run. */
import type { PlanItem } from './types.ts';

/** Other scenarios between the two halves of a twin pair, where the run has them. */
const apart = 2;

interface Waiting {
  readonly item: PlanItem;
  /** Which half of a pair it is. */
  readonly half: 'first' | 'second' | null;
  /** The place from which on it may come. */
  readonly from: number;
}

/**
 * Mixed, so that each answer has to be found anew: a scenario differs in phase from the one before
 * wherever it can, and between the two halves of a pair come at least two others, so that the second is
 * not just the opposite of what was called last. Pairs begin spread over the run, early enough that
 * their second halves find their place.
 * @param items the halves of a pair in the order in which they are to come; other items that come earlier
 * do so where nothing else decides.
 */
export function inRunOrder(items: readonly PlanItem[]): PlanItem[] {
  const order: PlanItem[] = [];
  for (let next = nextInRun(items, order); next; next = nextInRun(items, order)) order.push(next);
  return order;
}

/**
 * What comes next in such an order; null at its end.
 * @param asked those that have come, in their order.
 * @param waits those that come only when nothing else is left.
 */
export function nextInRun(
  items: readonly PlanItem[],
  asked: readonly PlanItem[],
  waits: (item: PlanItem) => boolean = () => false,
): PlanItem | null {
  const place = asked.length;
  const before = asked[place - 1]?.phase;
  const left = waiting(items, asked);
  const ofPhase = (phase: string) => left.filter(({ item }) => item.phase === phase).length;
  // Of equal turn the phase with most left, so that none is left over at the end to follow itself.
  const ranks = left.map(
    (one) =>
      rankOf(one, place, before) +
      (waits(one.item) ? 1000 : 0) -
      ofPhase(one.item.phase) / (items.length + 1),
  );
  return left[ranks.indexOf(Math.min(...ranks))]?.item ?? null;
}

/** What may come, now or later: not the second half of a pair before its first has come. */
function waiting(items: readonly PlanItem[], asked: readonly PlanItem[]): Waiting[] {
  const placeOf = new Map(asked.map((item, place) => [item, place]));
  const pairs = new Map<number, PlanItem[]>();
  for (const item of items)
    if (item.kind === 'twin') pairs.set(item.pair, [...(pairs.get(item.pair) ?? []), item]);
  const whole = [...pairs.values()].filter(({ length }) => length > 1);
  const spacing = Math.max(0, items.length - 2 - apart) / Math.max(1, whole.length);
  return items.flatMap((item): Waiting[] => {
    if (placeOf.has(item)) return [];
    const pair = whole.findIndex((halves) => halves.includes(item));
    if (pair < 0) return [{ item, half: null, from: 0 }];
    const [first] = whole[pair]!;
    if (item === first) return [{ item, half: 'first', from: Math.floor(spacing * pair) }];
    const began = placeOf.get(first!);
    return began === undefined ? [] : [{ item, half: 'second', from: began + 1 + apart }];
  });
}

/** Lowest first. */
function rankOf({ item, half, from }: Waiting, place: number, before: string | undefined): number {
  const early = Math.max(0, from - place);
  // A second half too early is the last resort, the one that has waited longest before others.
  if (half === 'second' && early > 0) return 100 + early;
  const samePhase = item.phase === before ? 10 : 0;
  const turn = half === 'second' ? 0 : half === 'first' && early === 0 ? 1 : half === 'first' ? 3 : 2;
  return samePhase + turn;
}
