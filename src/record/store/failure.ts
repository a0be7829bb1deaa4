/** What a browser says when it can't write, in the pilot's words. */
import type { RecordProblem } from '../problem.ts';
import type { WriteFailure } from './store.ts';

const messages: Record<WriteFailure['reason'], string> = {
  full:
    'This device has no room left for the training record. Your last answers are held in memory only: ' +
    'save the record as a file now, then free some space; they are written as soon as there is room.',
  blocked:
    'The browser does not let this page keep data, as in a private window or with site data blocked. ' +
    'Answers are held in memory only: save the record as a file before you close the page.',
  'lost-connection':
    'The browser dropped its connection to the training record, and a new one could not be had. Your last ' +
    'answers are held in memory: save the record as a file, then reload the page.',
  unknown:
    'The training record could not be written. Your last answers are held in memory: save the record as a file, ' +
    'then reload the page.',
};

export const failure = (reason: WriteFailure['reason']): WriteFailure => ({
  ok: false,
  reason,
  message: messages[reason],
});

/** Sorts out an error of IndexedDB by its name; names as in the specification, and what browsers do beside it. */
export function failureOf(error: unknown): WriteFailure {
  return failure(reasonOf(error));
}

/** Why the record could not be read. */
export function unreadable(error: unknown): RecordProblem {
  const { reason } = failureOf(error);
  const message =
    reason === 'blocked'
      ? messages.blocked
      : 'The training record could not be read. Nothing in it is changed: reload the page to have it read. ' +
        'Answers that you give until then join it.';
  return { code: 'cannot-read', message };
}

/** True when opening the database again may help. */
export const isLostConnection = (error: unknown): boolean => reasonOf(error) === 'lost-connection';

function reasonOf(error: unknown): WriteFailure['reason'] {
  // A transaction that was aborted without a reason of its own, as when the connection breaks.
  if (error === null || error === undefined) return 'lost-connection';
  const { name, message } = error as { readonly name?: unknown; readonly message?: unknown };
  switch (name) {
    case 'QuotaExceededError':
      return 'full';
    case 'SecurityError':
    case 'NotAllowedError':
    case 'ReferenceError': // No `indexedDB` at all.
      return 'blocked';
    case 'InvalidStateError':
    case 'AbortError':
    case 'TransactionInactiveError':
      return 'lost-connection';
    case 'UnknownError':
      // Safari: "Connection to Indexed Database server lost. Refresh the page to try again".
      return /connection|lost|closed/i.test(String(message)) ? 'lost-connection' : 'unknown';
    default:
      return 'unknown';
  }
}
