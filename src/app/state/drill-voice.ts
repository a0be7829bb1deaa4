/** What a screen reader says during a drill: the state, the time at sensible points, the result. */
import type { Prompt } from '../../cards/types.ts';
import { units } from '../../deck/units.ts';
import type { Assessment } from '../../grading/types.ts';

const performanceWords = { desired: 'Desired', adequate: 'Adequate', outside: 'Outside' } as const;

const sayDuration = (ms: number): string => {
  const seconds = Math.max(1, Math.round(ms / 1000));
  return seconds === 1 ? '1 second' : `${seconds} seconds`;
};

/** "units" is a word already. */
const isWord = (symbol: string): boolean => /^[a-z]{4,}$/.test(symbol);

/** Of each symbol the word for it, the longest first: "ft/min" before "ft". */
const spokenUnits = Object.values(units)
  .flatMap(({ symbol, spoken }) => (symbol && spoken && !isWord(symbol) ? [{ symbol, spoken }] : []))
  .sort((one, other) => other.symbol.length - one.symbol.length);

const escaped = (symbol: string): string => symbol.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

/** A text with its units and signs in words, for a voice that would spell them: "sink minus 40 feet per minute". */
export function aloud(text: string): string {
  const inWords = spokenUnits.reduce(
    (said, { symbol, spoken }) =>
      said.replaceAll(new RegExp(`(\\d)\\s?${escaped(symbol)}(?![\\p{L}/])`, 'gu'), `$1 ${spoken}`),
    text,
  );
  return inWords.replaceAll(/−(?=\d)/g, 'minus ');
}

/** @param windowMs Infinity when untimed. */
export function sayAsked(number: number, of: number, prompt: Prompt, windowMs: number): string {
  const time = windowMs === Infinity ? 'Untimed' : sayDuration(windowMs);
  return `Scenario ${number} of ${of}. ${aloud(prompt.title)}. ${time}.`;
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
  const isSaid = performance === 'desired' || headline.endsWith(expected);
  const called = isSaid ? '' : ` Called for: ${expected}.`;
  return `${performanceWords[performance]}${late}. ${headline.charAt(0).toUpperCase()}${headline.slice(1)}.${called}`;
}
