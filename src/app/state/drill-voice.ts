/** What a screen reader says during a drill: the state, the time at sensible points, the result. */
import type { Prompt } from '../../cards/types.ts';
import type { Assessment } from '../../grading/types.ts';

const performanceWords = { desired: 'Desired', adequate: 'Adequate', outside: 'Outside' } as const;

const sayDuration = (ms: number): string => {
  const seconds = Math.max(1, Math.round(ms / 1000));
  return seconds === 1 ? '1 second' : `${seconds} seconds`;
};

/** @param windowMs Infinity when untimed. */
export function sayAsked(number: number, of: number, prompt: Prompt, windowMs: number): string {
  const time = windowMs === Infinity ? 'Untimed' : sayDuration(windowMs);
  return `Scenario ${number} of ${of}. ${prompt.title}. ${time}.`;
}

/** A window shorter than this is over before a word about its half is said. */
const leastForHalf = 6_000;

/**
 * Said once when half of the window is gone; null before. Empty once it has closed: that is said by the
 * page's own alert.
 */
export function sayTimeLeft(windowMs: number, elapsedMs: number): string | null {
  if (windowMs === Infinity || windowMs < leastForHalf || elapsedMs < windowMs / 2) return null;
  return elapsedMs < windowMs ? `Half the time left: ${sayDuration(windowMs / 2)}.` : '';
}

export function sayGraded({ performance, timeliness, headline, expected }: Assessment): string {
  const late = timeliness === 'late' ? ', late' : '';
  const called = performance === 'desired' ? '' : ` Called for: ${expected}.`;
  return `${performanceWords[performance]}${late}. ${headline.charAt(0).toUpperCase()}${headline.slice(1)}.${called}`;
}
