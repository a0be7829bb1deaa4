/** A backup: the whole record as one JSON file, for keeping, for another device, for other programs to read. */
import { backupFormat } from './backup-format.ts';
import { mergeEvents } from './merge.ts';
import { rawEvent } from './schema.ts';
import type { DeckFile, KeptEvent } from './types.ts';

export { backupFormat } from './backup-format.ts';

/** The number counts up when an older version could no longer read the file. */
export const backupVersion = 1;

/** Longest file that is read, in characters: over a hundred thousand answers. */
export const mostBackupText = 64 * 1024 * 1024;
/** Most deck files in one backup. */
export const mostDecks = 200;
/** Longest settings, in characters of JSON. */
export const mostSettingsText = 20_000;

export interface BackupContents {
  readonly events: readonly KeptEvent[];
  /** Decks that the pilot opened from files, so that a new device has all that the answers belong to. */
  readonly decks?: readonly DeckFile[];
  /** What the app wants to take along; plain data. */
  readonly settings?: Readonly<Record<string, unknown>>;
}

/** The file's text: JSON with one event a line, in order of time, so that it can be read and compared. */
export function writeBackup({ events, decks = [], settings }: BackupContents, exportedAtMs: number): string {
  const fields: [string, string][] = [
    ['format', JSON.stringify(`${backupFormat}/${backupVersion}`)],
    ['exportedAt', JSON.stringify(new Date(exportedAtMs).toISOString())],
    ['events', listOf(mergeEvents(events).events.map(rawEvent))],
  ];
  if (decks.length > 0) fields.push(['decks', listOf(decks)]);
  if (settings !== undefined) fields.push(['settings', JSON.stringify(settings)]);
  return `{\n${fields.map(([name, json]) => `"${name}": ${json}`).join(',\n')}\n}\n`;
}

function listOf(items: readonly unknown[]): string {
  if (items.length === 0) return '[]';
  return `[\n${items.map((item) => JSON.stringify(item)).join(',\n')}\n]`;
}

/** "gatecall-record-2026-09-01.json": the day of the export, by UTC. */
export function backupFileName(exportedAtMs: number): string {
  return `${backupFormat}-${new Date(exportedAtMs).toISOString().slice(0, 10)}.json`;
}
