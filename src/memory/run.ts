/**
 * A session being answered. A run is plain data: its items and what has been answered so far. All else
 * follows from these, so that an answer taken back restores the run exactly, and a run written
 * down and read again goes on where it was.
 *
 * A card not answered desired comes back after a few others, until it is, so that the last that is
 * done with a card in a session is to get it right. Not at once, for a repeat straight away tests only
 * what was just read (common practice, no source). Missed again, it is first shown with its answer, and asked
 * a few others later: another guess would teach nothing.
 */
import type { Performance } from '../rules/types.ts';
import type { SessionItem, SessionPlan } from './types.ts';
import { MOST_REPEATS } from './worth.ts';

/** An answer, or a look at a card that is to be looked at before it is asked once more. */
export type RunStep = Performance | 'looked';

export interface SessionRun {
  readonly items: readonly SessionItem[];
  /** In the order given; each belongs to the card that was current then. */
  readonly answers: readonly RunStep[];
}

export interface RunCard extends SessionItem {
  /** 0 when it is shown for the first time in this session. */
  readonly repeat: number;
  /** Missed so often that it is to be looked at, and asked later. Answered all the same, it counts as asked. */
  readonly lookFirst: boolean;
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

/** From this repeat on a card is looked at first: it has been missed as often. */
export const LOOK_FROM_REPEAT = 2;

export function startRun(plan: Pick<SessionPlan, 'items'>): SessionRun {
  return { items: plan.items, answers: [] };
}

/** The card to answer now; null when the run is over. */
export function current(run: SessionRun): RunCard | null {
  return replayed(run).queue[0] ?? null;
}

/** The run after an answer to the current card. A run that is over stays as it is. */
export function answered(run: SessionRun, performance: Performance): SessionRun {
  return current(run) === null ? run : { ...run, answers: [...run.answers, performance] };
}

/** The run after a look at the current card; one that isn't to be looked at first stays as it is. */
export function looked(run: SessionRun): SessionRun {
  return current(run)?.lookFirst ? { ...run, answers: [...run.answers, 'looked'] } : run;
}

/** The run before its last answer or look. A run without one stays as it is. */
export function takenBack(run: SessionRun): SessionRun {
  return run.answers.length === 0 ? run : { ...run, answers: run.answers.slice(0, -1) };
}

export function progress(run: SessionRun): RunProgress {
  const { queue, givenUp } = replayed(run);
  return { done: run.items.length - queue.length, givenUp, left: queue.length };
}

/** The queue after all answers so far. Some hundred answers to some dozen cards: microseconds. */
function replayed({ items, answers }: SessionRun): { queue: readonly RunCard[]; givenUp: readonly string[] } {
  const queue: RunCard[] = items.map((item) => ({ ...item, repeat: 0, lookFirst: false }));
  const givenUp: string[] = [];
  for (const step of answers) {
    const card = queue.shift();
    if (card === undefined) break;
    if (step === 'desired') continue;
    const repeat = card.repeat + 1;
    if (step === 'looked') queue.splice(REPEAT_AFTER, 0, { ...card, lookFirst: false });
    else if (repeat > MOST_REPEATS) givenUp.push(card.id);
    else queue.splice(REPEAT_AFTER, 0, { ...card, repeat, lookFirst: repeat >= LOOK_FROM_REPEAT });
  }
  return { queue, givenUp };
}
