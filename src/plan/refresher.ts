/**
 * A refresher before an event: which cards to ask in the minutes there are now, and what to read once more.
 *
 * A card's gain is what a rehearsal now adds to its weighted chance at the event, expected over being recalled and
 * not. To choose the cards with the greatest sum of gains within the seconds is the knapsack problem:
 * solved by dynamic programming over the seconds in small steps (Bellman, from memory), seconds rounded up
 * so that the minutes are kept.
 */
import { expectedShowings } from '../memory/worth.ts';
import type { Scheduler } from '../memory/types.ts';
import { rehearse } from './rehearsal.ts';
import type { PlanCard } from './types.ts';

export interface RefresherItem {
  readonly id: string;
  /** What it adds to the weighted chance at the event. */
  readonly gain: number;
  /** Expected, repeats included. */
  readonly seconds: number;
}

export interface Refresher {
  /** In the order of the input, which is that of the procedure. */
  readonly items: readonly RefresherItem[];
  readonly seconds: number;
  /** Sum of the gains. */
  readonly gain: number;
}

/** Steps into which the minutes are cut; a card's seconds are rounded up by less than one of them. */
const STEPS = 3000;

/** @param cards that count for the event, in the order of the procedure */
export function pickRefresher(
  cards: readonly PlanCard[],
  minutes: number,
  nowMs: number,
  eventMs: number,
  scheduler: Scheduler,
): Refresher {
  const seconds = Math.max(0, minutes * 60);
  const worthwhile = cards
    .map((card) => itemOf(card, nowMs, eventMs, scheduler))
    .filter((item) => item.gain > 0 && item.seconds <= seconds);
  const items = mostGain(worthwhile, seconds);
  return {
    items,
    seconds: items.reduce((sum, item) => sum + item.seconds, 0),
    gain: items.reduce((sum, item) => sum + item.gain, 0),
  };
}

function itemOf(card: PlanCard, nowMs: number, eventMs: number, scheduler: Scheduler): RefresherItem {
  const { chance, recalled, relearned } = rehearse(scheduler, card.memory, nowMs);
  const after =
    chance * scheduler.retrievability(recalled, eventMs) +
    (1 - chance) * scheduler.retrievability(relearned, eventMs);
  return {
    id: card.id,
    gain: card.weight * (after - scheduler.retrievability(card.memory, eventMs)),
    seconds: card.seconds * expectedShowings(chance),
  };
}

function mostGain(items: readonly RefresherItem[], seconds: number): readonly RefresherItem[] {
  if (items.reduce((sum, item) => sum + item.seconds, 0) <= seconds) return items;
  const step = seconds / STEPS;
  const best = new Float64Array(STEPS + 1);
  const taken = items.map((item) => {
    const steps = Math.ceil(item.seconds / step);
    const takes = new Uint8Array(STEPS + 1);
    for (let room = STEPS; room >= steps; room--) {
      const withIt = best[room - steps]! + item.gain;
      if (withIt <= best[room]!) continue;
      best[room] = withIt;
      takes[room] = 1;
    }
    return { steps, takes };
  });
  const chosen = new Set<RefresherItem>();
  let room = STEPS;
  for (let i = items.length - 1; i >= 0; i--) {
    const { steps, takes } = taken[i]!;
    if (takes[room] === 0) continue;
    chosen.add(items[i]!);
    room -= steps;
  }
  addWhatStillFits(items, chosen, seconds);
  return items.filter((item) => chosen.has(item));
}

/** The rounding may have left a little room. */
function addWhatStillFits(
  items: readonly RefresherItem[],
  chosen: Set<RefresherItem>,
  seconds: number,
): void {
  let left = seconds;
  for (const item of chosen) left -= item.seconds;
  for (const item of [...items].sort((one, other) => other.gain - one.gain))
    if (!chosen.has(item) && item.seconds <= left) {
      chosen.add(item);
      left -= item.seconds;
    }
}

/** A page holds about as many lines. */
const MOST_TO_READ = 24;
/** What is as likely as this to be recalled need not be read. Own choice. */
const SURE = 0.95;

/**
 * What to read once more, after the refresher: what was missed in it, then what is most in doubt at the event by
 * weight, at most a page of it, in the order of the input.
 * @param cards with their memories after the refresher
 * @param missed ids of the cards not answered desired the first time
 */
export function toReadOnceMore(
  cards: readonly PlanCard[],
  missed: ReadonlySet<string>,
  eventMs: number,
  scheduler: Scheduler,
  most = MOST_TO_READ,
): readonly string[] {
  const doubtful = cards
    .map(({ id, memory, weight }) => {
      const chance = scheduler.retrievability(memory, eventMs);
      return { id, chance, wasMissed: missed.has(id), doubt: weight * (1 - chance) };
    })
    .filter(({ chance, wasMissed }) => wasMissed || chance < SURE)
    .sort((one, other) => Number(other.wasMissed) - Number(one.wasMissed) || other.doubt - one.doubt)
    .slice(0, most);
  const chosen = new Set(doubtful.map(({ id }) => id));
  return cards.filter(({ id }) => chosen.has(id)).map(({ id }) => id);
}
