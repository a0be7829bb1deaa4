/**
 * A session being answered. A run is plain data: its items and what has been answered so far. All else
 * follows from these, so that an answer taken back restores the run exactly, and a run written
 * down and read again goes on where it was.
 *
 * A card not answered desired comes back after a few others, until it is, so that the last that is
 * done with a card in a session is to get it right. Not at once, for a repeat straight away tests only
 * what was just read (common practice, no source).
 */
import type { Performance } from '../rules/types.ts';
import type { SessionItem, SessionPlan } from './types.ts';
import { MOST_REPEATS, REPEAT_SUCCESS } from './worth.ts';

export interface SessionRun {
  readonly items: readonly SessionItem[];
  /** In the order given; each belongs to the card that was current then. */
  readonly answers: readonly Performance[];
}

export interface RunCard extends SessionItem {
  /** 0 when it is shown for the first time in this session. */
  readonly repeat: number;
}

export interface RunProgress {
  /** Cards that are through, among them those given up. */
  readonly done: number;
  /** Cards that came back as often as they may and were not answered desired. */
  readonly givenUp: readonly string[];
  /** Cards still to be answered, those that came back included. */
  readonly left: number;
}

/** Other cards between a card that was not answered desired and its return, while there are as many. */
export const REPEAT_AFTER = 4;

export function startRun(plan: Pick<SessionPlan, 'items'>): SessionRun {
  return { items: plan.items, answers: [] };
}

/** The card to answer now; null when the run is over. */
export function current(run: SessionRun): RunCard | null {
  return replayed(run).queue[0] ?? null;
}

/** The run after an answer to the current card. A run that is over stays as it is. */
export function answered(run: SessionRun, performance: Performance): SessionRun {
  if (current(run) === null) return run;
  return { ...run, answers: [...run.answers, performance] };
}

/** The run before its last answer. A run without one stays as it is. */
export function takenBack(run: SessionRun): SessionRun {
  return run.answers.length === 0 ? run : { ...run, answers: run.answers.slice(0, -1) };
}

export function progress(run: SessionRun): RunProgress {
  const { queue, givenUp } = replayed(run);
  return { done: run.items.length - queue.length, givenUp, left: queue.length };
}

/** Expected seconds until the run is over, repeats included. `secondsFor` gives those of one showing of a card. */
export function remainingSeconds(run: SessionRun, secondsFor: (cardId: string) => number): number {
  const showings = ({ repeat, showings: expected }: RunCard): number =>
    repeat === 0 ? expected : 1 / REPEAT_SUCCESS;
  return replayed(run).queue.reduce((sum, card) => sum + showings(card) * secondsFor(card.id), 0);
}

/** The queue after all answers so far. Some hundred answers to some dozen cards: microseconds. */
function replayed({ items, answers }: SessionRun): { queue: readonly RunCard[]; givenUp: readonly string[] } {
  const queue: RunCard[] = items.map((item) => ({ ...item, repeat: 0 }));
  const givenUp: string[] = [];
  for (const performance of answers) {
    const card = queue.shift();
    if (card === undefined) break;
    if (performance === 'desired') continue;
    if (card.repeat < MOST_REPEATS) queue.splice(REPEAT_AFTER, 0, { ...card, repeat: card.repeat + 1 });
    else givenUp.push(card.id);
  }
  return { queue, givenUp };
}
