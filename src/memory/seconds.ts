/** How long a card takes this pilot, from the answers given: what a session's length is worked out with. */
import type { CardKind } from '../cards/types.ts';

/** Only the last answers of a kind count: a pilot gets quicker. */
export const LATEST_ANSWERS = 30;

/** How many answers the starting value weighs as much as. */
export const PRIOR_ANSWERS = 5;

/** From the answer to the next card: reading what was right and going on. Own estimate. */
export const FEEDBACK_SECONDS = 3;

/** Seconds to answer, before anything is known of the pilot: about two thirds of the time in which an answer is prompt (`cards/windows.ts`; lists of eight). Own estimates. */
const priorSeconds: Readonly<Record<CardKind, number>> = {
  value: 3.5,
  limit: 4,
  order: 16,
  checklist: 16,
  response: 4,
  'complete-by': 5,
  rule: 5,
  spot: 5,
  note: 8,
  worked: 20,
};

export interface TimedAnswer {
  readonly cardKind: CardKind;
  readonly elapsedMs: number;
}

/**
 * Gives the seconds for one showing of a card of a kind, feedback included. The median of the pilot's
 * last answers, which one answer left lying doesn't move, drawn towards a starting value while there are
 * few: (n · median + k · start) / (n + k).
 * @param answers oldest first
 */
export function secondsPerKind(answers: readonly TimedAnswer[]): (kind: CardKind) => number {
  const seconds = new Map<CardKind, number>();
  for (const [kind, latest] of latestPerKind(answers)) {
    const weighed = latest.length * median(latest) + PRIOR_ANSWERS * priorSeconds[kind];
    seconds.set(kind, weighed / (latest.length + PRIOR_ANSWERS));
  }
  return (kind) => (seconds.get(kind) ?? priorSeconds[kind]) + FEEDBACK_SECONDS;
}

/** The median time to answer a kind of card, and of how many answers. */
export interface AnswerTime {
  readonly answers: number;
  readonly medianSeconds: number;
}

/** Of each kind that was answered, as it goes into the minutes of a session. `answers` oldest first. */
export function answerTimes(answers: readonly TimedAnswer[]): ReadonlyMap<CardKind, AnswerTime> {
  return new Map(
    [...latestPerKind(answers)].map(([kind, latest]) => [
      kind,
      { answers: latest.length, medianSeconds: median(latest) },
    ]),
  );
}

/** The last answers of each kind that was answered, in seconds. */
function latestPerKind(answers: readonly TimedAnswer[]): ReadonlyMap<CardKind, readonly number[]> {
  const latest = new Map<CardKind, number[]>();
  for (const { cardKind, elapsedMs } of answers.toReversed()) {
    if (!(elapsedMs >= 0)) continue;
    const times = latest.get(cardKind) ?? [];
    if (times.length < LATEST_ANSWERS) times.push(elapsedMs / 1000);
    latest.set(cardKind, times);
  }
  return latest;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
