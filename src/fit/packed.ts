/** A record of answers in flat arrays, so that it can be gone through some hundred times in a second. */
import { gapDaysBetween, lastMsAfter } from '../memory/gap.ts';
import type { CardAnswers } from './types.ts';

export interface PackedRecord {
  /** Where each card's answers start, and at the end how many answers there are. */
  readonly starts: Int32Array;
  /** Whole days since the last answer on the card that counts; 0 for a first one. */
  readonly gapDays: Float64Array;
  readonly ratings: Uint8Array;
  /** Epoch milliseconds, never running backwards within a card. */
  readonly atMs: Float64Array;
  readonly longest: number;
}

/** Packs the answers of some cards. Gaps count as the scheduler counts them. */
export function pack(cards: readonly CardAnswers[]): PackedRecord {
  const count = cards.reduce((sum, answers) => sum + answers.length, 0);
  const starts = new Int32Array(cards.length + 1);
  const gapDays = new Float64Array(count);
  const ratings = new Uint8Array(count);
  const atMs = new Float64Array(count);
  let at = 0;
  cards.forEach((answers, card) => {
    let lastMs: number | null = null;
    let latestMs = -Infinity;
    for (const answer of answers) {
      gapDays[at] = lastMs === null ? 0 : gapDaysBetween(lastMs, answer.atMs);
      ratings[at] = answer.rating;
      atMs[at] = latestMs = Math.max(latestMs, answer.atMs);
      lastMs = lastMsAfter(lastMs, answer.atMs);
      at++;
    }
    starts[card + 1] = at;
  });
  const longest = cards.reduce((most, answers) => Math.max(most, answers.length), 0);
  return { starts, gapDays, ratings, atMs, longest };
}

/** The part before an instant: of each card its first answers. Epoch milliseconds. */
export function before(record: PackedRecord, endMs: number): PackedRecord {
  const starts = new Int32Array(record.starts.length);
  const kept: number[] = [];
  let longest = 0;
  for (let card = 0; card + 1 < record.starts.length; card++) {
    const from = record.starts[card]!;
    let at = from;
    while (at < record.starts[card + 1]! && record.atMs[at]! < endMs) kept.push(at++);
    starts[card + 1] = kept.length;
    longest = Math.max(longest, at - from);
  }
  return {
    starts,
    gapDays: Float64Array.from(kept, (at) => record.gapDays[at]!),
    ratings: Uint8Array.from(kept, (at) => record.ratings[at]!),
    atMs: Float64Array.from(kept, (at) => record.atMs[at]!),
    longest,
  };
}

/** When the answers that can be foretold were given, those after at least a day; sorted. Epoch milliseconds. */
export function foretoldAtMs(record: PackedRecord): Float64Array {
  return record.atMs.filter((_, at) => record.gapDays[at]! > 0).sort();
}
