/** What can be wrong with a record or a backup, for the pilot to read. */

export type RecordProblemCode =
  | 'damaged-chunk'
  | 'newer-chunk'
  | 'unreadable-event'
  | 'same-id'
  | 'cannot-read'
  | 'not-saved'
  | 'too-large'
  | 'not-json'
  | 'not-a-backup'
  | 'newer-backup'
  | 'bad-event'
  | 'odd-time'
  | 'bad-deck'
  | 'deck-kept'
  | 'bad-settings';

export interface RecordProblem {
  readonly code: RecordProblemCode;
  /** What is wrong, what became of it, and what to do, in plain sentences. */
  readonly message: string;
}

/** "1 answer", "12 answers", "1,204 answers". */
export function sayCount(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}
