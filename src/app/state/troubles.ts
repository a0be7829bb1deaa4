/** What is wrong with the record, said once however often it occurs, with what to do about it. */
import { sayCount, type RecordProblem } from '../../record/problem.ts';

export interface Trouble {
  /** The same for the same matter: a closed one stays closed until it changes. */
  readonly key: string;
  readonly kind: 'warning' | 'error';
  readonly what: string;
  readonly mend: string | null;
  /** Trying to write once more may help. */
  readonly retry: boolean;
}

/** Entries that can't be read are counted together; all else stands for itself, once. */
export function troublesOf(problems: readonly RecordProblem[]): readonly Trouble[] {
  const unreadable = problems.filter(({ code }) => code === 'unreadable-event').length;
  const others = problems.filter(({ code }) => code !== 'unreadable-event');
  const troubles = others.map(({ code, message }): Trouble => {
    const retry = code === 'not-saved';
    const kind = retry || code === 'cannot-read' ? 'error' : 'warning';
    return { key: `${code} ${message}`, kind, what: message, mend: null, retry };
  });
  if (unreadable > 0) troubles.push(damaged(unreadable));
  return troubles.filter(({ key }, i) => troubles.findIndex((other) => other.key === key) === i);
}

function damaged(count: number): Trouble {
  const [verb, they, them] = count === 1 ? ['doesn’t', 'It is', 'it'] : ['don’t', 'They are', 'them'];
  return {
    key: `unreadable-event ${count}`,
    kind: 'warning',
    what: `${sayCount(count, 'entry', 'entries')} of the training record can’t be read and ${verb} count. All other answers do.`,
    mend: `${they} left as ${count === 1 ? 'it is' : 'they are'}. If a saved record holds ${them}, bring it in on the Record page; otherwise nothing has to be done.`,
    retry: false,
  };
}
