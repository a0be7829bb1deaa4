/** What a screen reader says during a pass: the state at each decision point, the time, the last call. */
import type { Deck } from '../../deck/types.ts';
import type { DecisionMark, Verdict } from '../../motion/types.ts';
import { aloud, sayTimeLeft } from './drill-voice.ts';
import type { PassFlight } from './pass-flight.svelte.ts';
import { sayFaults } from './pass-summary.ts';

const verdicts: Readonly<Record<Verdict, string>> = {
  right: 'Right',
  partly: 'Partly right',
  wrong: 'Wrong',
  'missed-go-around': 'Missed',
  'needless-go-around': 'No need',
};

/** The last call in a word, and what it should have been: "Wrong", "Power more, not less". */
export function sayCall(deck: Deck, mark: DecisionMark): { readonly word: string; readonly rest: string } {
  const faults = sayFaults(deck, mark);
  return {
    word: verdicts[mark.verdict],
    rest: faults && `Called for: ${faults}.`,
  };
}

/** Nothing while it moves: the next point says where it has come to. */
export function sayFlight(flight: PassFlight): string {
  const { asked, told, windowMs, elapsedMs, cue } = flight;
  if (flight.paused || !asked) return '';
  const left = sayTimeLeft(windowMs, elapsedMs);
  if (left !== null) return left;
  const last = told ? sayCall(flight.setup.training.deck, told) : null;
  const time = windowMs === Infinity ? '' : ` ${Math.round(windowMs / 1000)} seconds.`;
  return [last && `${last.word}. ${last.rest}`.trim(), `${aloud(cue)}.${time}`].filter(Boolean).join(' ');
}
