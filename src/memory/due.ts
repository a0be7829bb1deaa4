/**
 * When a card is due. Due dates are instants, but a pilot plans by days: what falls due at nine in the
 * evening may be rehearsed that morning, so a card is due from the start of the local day its due
 * instant falls in.
 */
import { DAY_MS, type LocalDay } from './local-day.ts';
import type { CardMemory, SessionCard } from './types.ts';

type Dates = Pick<CardMemory, 'lastMs' | 'dueMs'>;

/**
 * Whether a card is due on a day. An interval of whole days waits for the day after its answer, even
 * when that day has 25 hours or the pilot has flown west: nothing is asked twice on one day. A card
 * that was not known has a shorter interval, and stays due until it is.
 */
export function isDue(memory: Dates, today: LocalDay): boolean {
  if (answeredAhead(memory, today)) return true;
  const answeredBefore = memory.lastMs < today.startMs || memory.dueMs - memory.lastMs < DAY_MS;
  return memory.dueMs < today.endMs && answeredBefore;
}

/** The first instant at which `isDue` holds, if the card isn't answered before. Epoch milliseconds. */
export function dueFromMs(memory: Dates, dayAt: (ms: number) => LocalDay): number {
  const fromMs = dayAt(memory.dueMs).startMs;
  return memory.dueMs - memory.lastMs < DAY_MS ? fromMs : Math.max(fromMs, dayAt(memory.lastMs).endMs);
}

/** When the first of some cards falls due, among those that don't yet; null when there is none. Epoch milliseconds. */
export function nextDueMs(
  cards: readonly Pick<SessionCard, 'memory'>[],
  nowMs: number,
  dayAt: (ms: number) => LocalDay,
): number | null {
  const today = dayAt(nowMs);
  let next: number | null = null;
  for (const { memory } of cards) {
    if (memory === null || isDue(memory, today)) continue;
    const fromMs = dueFromMs(memory, dayAt);
    if (next === null || fromMs < next) next = fromMs;
  }
  return next;
}

/**
 * A last answer well after today: the clock was ahead then, and who knows by how much. Such a card is due
 * at once, instead of being lost until the wrong date comes round; its next answer puts it right.
 */
function answeredAhead({ lastMs }: Dates, today: LocalDay): boolean {
  return lastMs >= today.endMs + DAY_MS;
}
