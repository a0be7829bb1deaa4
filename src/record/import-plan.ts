/** What a backup adds to a record. Always a union: nothing that is there gives way. */
import { mergeEvents, sameEvent } from './merge.ts';
import { sayCount, type RecordProblem } from './problem.ts';
import type { ReadBackup } from './read-backup.ts';
import type { DeckFile, KeptEvent } from './types.ts';

export interface ImportPlan {
  /** Events that are not here yet. */
  readonly fresh: readonly KeptEvent[];
  /** Events that are here with another content. They are kept beside those that are here. */
  readonly contested: readonly KeptEvent[];
  readonly newDecks: readonly DeckFile[];
  /** Decks that are here with another text: those here stay; the pilot may open these instead. */
  readonly otherDecks: readonly DeckFile[];
  /** "312 answers, 12 new; 1 deck file, 1 new." */
  readonly said: string;
  readonly problems: readonly RecordProblem[];
}

export interface Here {
  readonly events: readonly KeptEvent[];
  readonly decks: readonly DeckFile[];
}

export function planImport(backup: ReadBackup, here: Here): ImportPlan {
  const byId = new Map(here.events.map((event) => [event.id, event]));
  const fresh = backup.events.filter(({ id }) => !byId.has(id));
  const contested = backup.events.filter((event) => {
    const there = byId.get(event.id);
    return there !== undefined && !sameEvent(there, event);
  });
  const deckHere = new Map(here.decks.map((deck) => [deck.id, deck]));
  const newDecks = backup.decks.filter(({ id }) => !deckHere.has(id));
  const otherDecks = backup.decks.filter(
    ({ id, text }) => deckHere.has(id) && deckHere.get(id)!.text !== text,
  );
  const problems = [...backup.problems];
  if (contested.length > 0) problems.push(sayContested(contested, here.events));
  for (const { id, version } of otherDecks)
    problems.push({
      code: 'deck-kept',
      message:
        `The deck “${id}” is on this device already, in version ${deckHere.get(id)!.version}; it stays. ` +
        `The saved record’s version ${version} differs: open its file to use that one.`,
    });
  return { fresh, contested, newDecks, otherDecks, said: sayImport(backup, fresh, newDecks), problems };
}

function sayImport(backup: ReadBackup, fresh: readonly KeptEvent[], newDecks: readonly DeckFile[]): string {
  const parts: string[] = [];
  const count = (events: readonly KeptEvent[], kind: KeptEvent['kind']): number =>
    events.filter((event) => event.kind === kind).length;
  const say = (all: number, added: number, one: string, many?: string): void => {
    parts.push(`${sayCount(all, one, many)}, ${added.toLocaleString('en-US')} new`);
  };
  say(count(backup.events, 'answer'), count(fresh, 'answer'), 'answer');
  const passes = count(backup.events, 'pass');
  if (passes > 0) say(passes, count(fresh, 'pass'), 'pass', 'passes');
  const undos = count(backup.events, 'undo');
  if (undos > 0) say(undos, count(fresh, 'undo'), 'answer taken back', 'answers taken back');
  const strangers = count(backup.events, 'stranger');
  if (strangers > 0) say(strangers, count(fresh, 'stranger'), 'entry of a newer version');
  if (backup.decks.length > 0) say(backup.decks.length, newDecks.length, 'deck file');
  return `${parts.join('; ')}.`;
}

function sayContested(contested: readonly KeptEvent[], here: readonly KeptEvent[]): RecordProblem {
  const ids = new Set(contested.map(({ id }) => id));
  const { events } = mergeEvents(
    here.filter(({ id }) => ids.has(id)),
    contested,
  );
  const taken = events.filter((event) => contested.includes(event)).length;
  return {
    code: 'same-id',
    message:
      `${sayCount(contested.length, 'entry', 'entries')} of the saved record ${contested.length === 1 ? 'has' : 'have'} the id of an ` +
      `entry here, but another content. Both are kept; of ${taken} the saved one counts. Was the file edited?`,
  };
}
