/** Reading a backup. The file is hostile until shown otherwise: what is sound in it comes in, the rest is named. */
import { backupFormat, backupVersion, mostBackupText, mostDecks, mostSettingsText } from './backup.ts';
import { parseDeckFile } from './deck-file.ts';
import { jsonFault } from './json-fault.ts';
import { mergeEvents } from './merge.ts';
import { harmIn } from './plain-data.ts';
import { sayCount, type RecordProblem, type RecordProblemCode } from './problem.ts';
import { parseEvent } from './schema.ts';
import type { DeckFile, KeptEvent } from './types.ts';

export interface ReadBackup {
  /** False when the file as a whole is no backup; the problem says why, and nothing is in it. */
  readonly ok: boolean;
  /** The sound ones, each id once, in order of id. */
  readonly events: readonly KeptEvent[];
  readonly decks: readonly DeckFile[];
  readonly settings: Readonly<Record<string, unknown>> | null;
  readonly problems: readonly RecordProblem[];
}

const dayMs = 86_400_000;
/** Gatecall is younger than this; an answer from before is from a clock that wasn't set. */
const earliestMs = Date.UTC(2020, 0, 1);
/** Time zones and a clock somewhat off; what is later is from a clock that was set wrongly. */
const latestAheadMs = 2 * dayMs;

/** What a backup's text holds. Never throws, whatever it is given. */
export function readBackup(text: string, nowMs: number): ReadBackup {
  if (text.length > mostBackupText)
    return refused(
      'too-large',
      `The file is longer than ${sayMillions(mostBackupText)} characters, too long for a saved record.`,
    );
  let data: unknown;
  try {
    // A byte order mark, as some editors put it.
    data = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return refused('not-json', sayFault(text));
  }
  const { format, events, decks, settings } = fieldsOf(data);
  const wrong = formatProblem(format);
  if (wrong !== null) return refused(...wrong);
  if (!Array.isArray(events))
    return refused(
      'not-a-backup',
      'The file says that it is a saved record, but has no list named “events”.',
    );
  const read = readEvents(events, nowMs);
  const readDecks = decks === undefined ? { decks: [], problems: [] } : readDeckFiles(decks);
  const readSettings = settings === undefined ? { settings: null, problems: [] } : settingsIn(settings);
  return {
    ok: true,
    events: read.events,
    decks: readDecks.decks,
    settings: readSettings.settings,
    problems: [...read.problems, ...readDecks.problems, ...readSettings.problems],
  };
}

function refused(code: RecordProblemCode, message: string): ReadBackup {
  const mend = 'Nothing was changed.';
  return {
    ok: false,
    events: [],
    decks: [],
    settings: null,
    problems: [{ code, message: `${message} ${mend}` }],
  };
}

/** Only the file's own fields; a list, a number or null has none. */
function fieldsOf(data: unknown): Readonly<Record<string, unknown>> {
  const isObject = typeof data === 'object' && data !== null && !Array.isArray(data);
  return isObject ? (Object.assign(Object.create(null), data) as Record<string, unknown>) : {};
}

function sayFault(text: string): string {
  if (text.trim() === '') return 'The file is empty.';
  const fault = jsonFault(text.replace(/^\ufeff/, ''));
  if (fault === null) return 'The file is nested too deeply to be a saved record.';
  const { line, column, atEnd } = fault;
  if (atEnd)
    return `The file is cut off: it ends at line ${line}, column ${column}, before it is complete. Save the record anew.`;
  return `The file is not JSON: it can’t be read on at line ${line}, column ${column}.`;
}

function formatProblem(format: unknown): [RecordProblemCode, string] | null {
  const [, version] = new RegExp(`^${backupFormat}/(\\d{1,9})$`).exec(String(format)) ?? [];
  if (typeof format !== 'string' || version === undefined)
    return [
      'not-a-backup',
      `The file is JSON, but no saved record: its “format” is not “${backupFormat}/${backupVersion}”.`,
    ];
  if (Number(version) <= backupVersion && Number(version) > 0) return null;
  return [
    'newer-backup',
    `The saved record was written by a newer version of Gatecall (its format is ${version}, this one reads ${backupVersion}). Reload the page for the newest version, then bring it in.`,
  ];
}

function readEvents(raws: readonly unknown[], nowMs: number) {
  const events: KeptEvent[] = [];
  const bad: string[] = [];
  const odd: string[] = [];
  raws.forEach((raw, i) => {
    const parsed = parseEvent(raw);
    if (!parsed.ok) bad.push(`number ${i + 1} (${parsed.why})`);
    else if (parsed.event.atMs < earliestMs || parsed.event.atMs > nowMs + latestAheadMs)
      odd.push(`number ${i + 1} (${sayDay(parsed.event.atMs)})`);
    else events.push(parsed.event);
  });
  const merged = mergeEvents(events);
  const problems: RecordProblem[] = [];
  if (bad.length > 0)
    problems.push({
      code: 'bad-event',
      message: `${sayOf(bad.length, raws.length)} can’t be read and stayed out: ${sayFirst(bad)}.`,
    });
  if (odd.length > 0)
    problems.push({
      code: 'odd-time',
      message:
        `${sayOf(odd.length, raws.length)} ${odd.length === 1 ? 'is' : 'are'} dated before 2020 or in the future, and ` +
        `stayed out: ${sayFirst(odd)}. If they are right, this device’s date is wrong: set it, then bring the file in once more.`,
    });
  if (merged.conflicts.length > 0)
    problems.push({
      code: 'same-id',
      message: `${sayCount(merged.conflicts.length, 'entry', 'entries')} came in two versions under one id; one was taken.`,
    });
  return { events: merged.events, problems };
}

function readDeckFiles(raws: unknown): { decks: DeckFile[]; problems: RecordProblem[] } {
  const problem = (message: string): RecordProblem => ({ code: 'bad-deck', message });
  if (!Array.isArray(raws))
    return { decks: [], problems: [problem('The saved record’s “decks” is not a list; no deck came in.')] };
  const decks = new Map<string, DeckFile>();
  const bad: string[] = [];
  raws.slice(0, mostDecks).forEach((raw, i) => {
    const deck = parseDeckFile(raw);
    if (deck === null) bad.push(`number ${i + 1}`);
    else if (decks.has(deck.id)) bad.push(`number ${i + 1} (a second “${deck.id}”)`);
    else decks.set(deck.id, deck);
  });
  const problems: RecordProblem[] = [];
  if (bad.length > 0)
    problems.push(
      problem(`${sayCount(bad.length, 'deck file')} can’t be read and stayed out: ${sayFirst(bad)}.`),
    );
  if (raws.length > mostDecks)
    problems.push(
      problem(
        `The saved record holds ${sayCount(raws.length, 'deck file')}; the first ${mostDecks} were read.`,
      ),
    );
  return { decks: [...decks.values()], problems };
}

function settingsIn(raw: unknown) {
  const sound = harmIn(raw) === null && JSON.stringify(raw).length <= mostSettingsText;
  if (sound) return { settings: raw as Readonly<Record<string, unknown>>, problems: [] };
  const message = 'The saved record’s settings can’t be read; those of this device stay.';
  return { settings: null, problems: [{ code: 'bad-settings', message }] satisfies RecordProblem[] };
}

const sayOf = (count: number, all: number): string =>
  `${count.toLocaleString('en-US')} of ${sayCount(all, 'entry', 'entries')}`;

const sayMillions = (count: number): string => `${Math.round(count / 1e6)} million`;

const sayDay = (atMs: number): string => new Date(atMs).toISOString().split('T')[0]!;

/** The first few, and how many more. */
function sayFirst(items: readonly string[], most = 5): string {
  const more = items.length - most;
  return items.slice(0, most).join(', ') + (more > 0 ? `, and ${more.toLocaleString('en-US')} more` : '');
}
