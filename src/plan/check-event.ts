/** Whether a plan can be made for an event, and for which cards and sessions. */
import type { Deck } from '../deck/types.ts';
import type { OffsetAt } from '../memory/local-day.ts';
import type { SessionCard } from '../memory/types.ts';
import type { EventProblem, EventProblemCode } from './event-problem.ts';
import { sessionsLeft } from './practice-sessions.ts';
import { MOST_SESSIONS, type PracticeSession, type TrainingEvent } from './types.ts';

/** A deck that is there, with its cards. */
export interface EventSource {
  readonly deck: Pick<Deck, 'id' | 'gates'>;
  readonly cards: readonly SessionCard[];
}

export interface CheckedEvent {
  /** Cards that count; their order over several decks is that of the event's list. */
  readonly cards: readonly { readonly deck: string; readonly card: SessionCard }[];
  readonly sessions: readonly PracticeSession[];
  /** Empty when a plan can be made. */
  readonly problems: readonly EventProblem[];
}

export function checkEvent(
  event: TrainingEvent,
  sources: readonly EventSource[],
  nowMs: number,
  offsetAt: OffsetAt,
): CheckedEvent {
  const problems: EventProblem[] = [];
  const add = (code: EventProblemCode, at: string, message: string): void => {
    problems.push({ code, at, message });
  };
  const datesFit = checkDate(event, nowMs, add);
  const minutesFit = checkMinutes(event, add);
  for (const part of ['critical', 'other'] as const)
    if (!(event.weights[part] > 0 && Number.isFinite(event.weights[part])))
      add(
        'bad-weight',
        `weights/${part}`,
        'A weight is a number above 0. Give 1 for a card that counts once.',
      );

  const cards = countingCards(event, sources, add);
  const sessions = datesFit && minutesFit ? sessionsLeft(event, nowMs, offsetAt) : [];
  if (datesFit && minutesFit && sessions.length === 0)
    add('no-session-left', 'time', 'No session begins between now and the event. Add one before it.');
  if (sessions.length > MOST_SESSIONS)
    add(
      'too-many-sessions',
      'time',
      `There are ${sessions.length} sessions until the event. At most ${MOST_SESSIONS} can be planned: ` +
        'plan for a nearer date first, or leave days out.',
    );
  return { cards, sessions, problems };
}

type Add = (code: EventProblemCode, at: string, message: string) => void;

function checkDate({ atMs }: TrainingEvent, nowMs: number, add: Add): boolean {
  if (!Number.isFinite(atMs)) {
    add('bad-date', 'atMs', 'The event has no date and time. Enter both.');
    return false;
  }
  if (atMs > nowMs) return true;
  add('event-past', 'atMs', 'The event is over. Enter a date and time to come, or remove it.');
  return false;
}

function checkMinutes({ time }: TrainingEvent, add: Add): boolean {
  const minutes = time.form === 'sessions' ? time.sessions.map((session) => session.minutes) : time.minutes;
  const begins = time.form === 'sessions' ? time.sessions.map(({ atMs }) => atMs) : [time.startMinute];
  const readable = minutes.every((some) => some >= 0 && some <= 24 * 60) && begins.every(Number.isFinite);
  if (!readable) add('bad-minutes', 'time', 'Each session needs a beginning, and from 0 to 1,440 minutes.');
  else if (!minutes.some((some) => some > 0))
    add('no-minutes', 'time', 'No minutes are set aside. Give at least one session some.');
  return readable && minutes.some((some) => some > 0);
}

function countingCards(
  event: TrainingEvent,
  sources: readonly EventSource[],
  add: Add,
): { readonly deck: string; readonly card: SessionCard }[] {
  if (event.decks.length === 0)
    add('no-decks', 'decks', 'No deck counts for the event. Choose at least one.');
  const before = event.decks.length;
  const found = event.decks.flatMap(({ deck: id, gates }, i) => {
    const source = sources.find(({ deck }) => deck.id === id);
    if (!source) {
      add(
        'unknown-deck',
        `decks/${i}`,
        `The deck “${id}” isn’t here any more. Add it again, or take it off the event.`,
      );
      return [];
    }
    const known = new Set(source.deck.gates.map((gate) => gate.id));
    for (const gate of gates ?? [])
      if (!known.has(gate))
        add(
          'unknown-gate',
          `decks/${i}`,
          `The deck “${id}” has no gate “${gate}” any more. Choose its gates anew.`,
        );
    return source.cards
      .filter(({ gate }) => gates === null || (gate != null && gates.includes(gate)))
      .map((card) => ({ deck: id, card }));
  });
  if (before > 0 && found.length === 0)
    add('no-cards', 'decks', 'No card counts for the event. Choose more gates, or a deck with cards.');
  return found;
}
