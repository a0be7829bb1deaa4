/** What there is to do next, in the same words wherever it is said: before a session and after it. */
import type { SessionPlan } from '../../memory/types.ts';
import { sayWhen } from './say-when.ts';

export interface NextUp {
  readonly due: number;
  readonly fresh: number;
  /** "12 to rehearse, 5 new"; "Nothing due today". */
  readonly headline: string;
  /** How long it takes and what waits, or when there is something again. */
  readonly lead: string;
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

/** Says what a plan holds. Cards missed so often that the last session gave them up are due again in the next. */
export function nextUp({ items, seconds, leftOver, nextDueMs }: SessionPlan): NextUp {
  const due = items.filter(({ why }) => why === 'due').length;
  const fresh = items.length - due;
  if (items.length === 0) {
    const lead =
      nextDueMs === null ? 'This deck has nothing to learn.' : `The next rehearsal is ${sayWhen(nextDueMs)}.`;
    return { due, fresh, headline: 'Nothing due today', lead };
  }
  const headline = [due > 0 ? `${due} to rehearse` : '', fresh > 0 ? `${fresh} new` : ''];
  const lead = [`About ${count(Math.max(1, Math.round(seconds / 60)), 'minute', 'minutes')}.`];
  if (leftOver.due > 0)
    lead.push(`${count(leftOver.due, 'more is', 'more are')} due and will wait for the session after that.`);
  return { due, fresh, headline: headline.filter(Boolean).join(', '), lead: lead.join(' ') };
}
