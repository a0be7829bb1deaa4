import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backupFileName, mostBackupText, writeBackup } from '../../../src/record/backup.ts';
import { inOrder } from '../../../src/record/merge.ts';
import { readBackup } from '../../../src/record/read-backup.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import { answer, anyRecord, dayMs, evening, eveningMs, testIds } from './examples.ts';

const nowMs = eveningMs + 1000 * dayMs;
const deck = { id: 'our-circuit', version: '1.2.0', text: 'format: gatecall-deck/1\n# ours\n' };
const codes = (read: ReturnType<typeof readBackup>): string[] => read.problems.map(({ code }) => code);
/** A backup with what a test puts into it. */
const file = (fields: object): string =>
  JSON.stringify({ format: 'gatecall-record/1', events: [], ...fields });

describe('a backup', () => {
  it('gives back the record it was written from', () => {
    fc.assert(
      fc.property(anyRecord, (record) => {
        const read = readBackup(writeBackup({ events: record }, nowMs), nowMs);
        expect(read).toEqual({ ok: true, events: inOrder(record), decks: [], settings: null, problems: [] });
      }),
    );
  });

  it('takes deck files and settings along', () => {
    const settings = { theme: 'night', minutes: 15 };
    const read = readBackup(writeBackup({ events: evening(3), decks: [deck], settings }, nowMs), nowMs);
    expect(read).toEqual({ ok: true, events: evening(3), decks: [deck], settings, problems: [] });
  });

  it('carries what a newer version wrote', () => {
    const id = testIds().next(eveningMs);
    const raw = { kind: 'wind-log', id, atMs: eveningMs, legs: [1] };
    const stranger: KeptEvent = { kind: 'stranger', id, atMs: eveningMs, raw };
    const text = writeBackup({ events: [stranger] }, nowMs);
    expect((JSON.parse(text) as { events: unknown[] }).events).toEqual([raw]);
    expect(readBackup(text, nowMs).events).toEqual([stranger]);
  });

  it('is JSON that says what it is and when it was written, one event a line', () => {
    const text = writeBackup({ events: evening(3) }, eveningMs);
    expect(JSON.parse(text)).toMatchObject({
      format: 'gatecall-record/1',
      exportedAt: '2026-09-01T18:00:00.000Z',
    });
    expect(text.split('\n').filter((line) => line.startsWith('{"kind"'))).toHaveLength(3);
    expect(backupFileName(eveningMs)).toBe('gatecall-record-2026-09-01.json');
  });

  it('may start with a byte order mark', () => {
    expect(readBackup(`\ufeff${file({})}`, nowMs)).toMatchObject({ ok: true, problems: [] });
  });
});

describe('a file that is no backup', () => {
  it.each([
    ['', 'not-json', 'The file is empty.'],
    ['{"format": "gatecall-record/1", "events": [', 'not-json', 'cut off: it ends at line 1, column 44'],
    ['{"format": "gatecall-record/1",\n "events": [}', 'not-json', 'at line 2, column 13'],
    ['<!doctype html>', 'not-json', 'at line 1, column 1'],
    ['[]', 'not-a-backup', '“format” is not “gatecall-record/1”'],
    ['null', 'not-a-backup', '“format” is not “gatecall-record/1”'],
    ['"gatecall-record/1"', 'not-a-backup', '“format” is not “gatecall-record/1”'],
    ['{"format": "gatecall-deck/1"}', 'not-a-backup', '“format” is not “gatecall-record/1”'],
    ['{"format": ["gatecall-record/1"], "events": []}', 'not-a-backup', '“format” is not'],
    ['{"__proto__": {"format": "gatecall-record/1", "events": []}}', 'not-a-backup', '“format” is not'],
    ['{"format": "gatecall-record/1"}', 'not-a-backup', 'has no list named “events”'],
    ['{"format": "gatecall-record/1", "events": {"0": {}}}', 'not-a-backup', 'has no list named “events”'],
    [
      '{"format": "gatecall-record/2", "events": []}',
      'newer-backup',
      'written by a newer version of Gatecall',
    ],
  ])('is refused with its reason: %j', (text, code, words) => {
    const read = readBackup(text, nowMs);
    expect(read).toMatchObject({ ok: false, events: [], decks: [], settings: null });
    expect(codes(read)).toEqual([code]);
    expect(read.problems[0]!.message).toContain(words);
    expect(read.problems[0]!.message).toContain('Nothing was changed.');
  });

  it('is refused unread when it is too long', () => {
    expect(codes(readBackup(' '.repeat(mostBackupText + 1), nowMs))).toEqual(['too-large']);
  });

  it('never makes reading fail, whatever it holds', () => {
    const anything = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.json(),
      fc.anything({ withNullPrototype: true }).map((events) => file({ events })),
      fc.array(fc.jsonValue()).map((events) => file({ events, decks: events, settings: events })),
    );
    fc.assert(
      fc.property(anything, (text) => {
        expect(readBackup(text, nowMs).events).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  it('may be nested as deep as it likes', () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    expect(readBackup(`{"format": "gatecall-record/1", "events": [${deep}]}`, nowMs).events).toEqual([]);
  });
});

describe('entries of a backup that can’t be believed', () => {
  const good = answer(testIds(3).next(eveningMs));
  const bad = (change: object): object => ({ ...good, ...change });
  const pollution = JSON.parse('{"__proto__": {"admin": true}}') as object;

  it.each<[string, unknown, string]>([
    ['no object', 'an answer', 'it is not an object'],
    ['no event', [], 'it is not an object'],
    ['without an id', bad({ id: undefined }), '“id” must be a version 7 UUID in lower case'],
    [
      'with a random id',
      bad({ id: '9b2d1e04-8a3c-4f0e-9d57-2b8f1c6a7e30' }),
      '“id” must be a version 7 UUID',
    ],
    ['with a rating out of range', bad({ rating: 5 }), '“rating” must be a rating as the program gives it'],
    ['with text for a number', bad({ elapsedMs: '2100' }), '“elapsedMs” must be a number of milliseconds'],
    [
      'with a negative time',
      bad({ elapsedMs: -1 }),
      '“elapsedMs” must be a number of milliseconds, 0 or more',
    ],
    ['with an unknown result', bad({ performance: 'perfect' }), '“performance” must be “desired”'],
    ['with a deck that is no id', bad({ deck: '../x' }), '“deck” must be the id of a deck'],
    [
      'with endless words',
      bad({ headline: 'x'.repeat(1001) }),
      '“headline” must be text, at most 1000 characters',
    ],
    ['with a fraction of a millisecond', bad({ atMs: 1.5 }), '“atMs” must be a time in whole milliseconds'],
    [
      'with several faults',
      bad({ seed: null, mode: 1 }),
      '“mode” must be “recall” or “drill”; “seed” must be',
    ],
    ['with a trap', { ...good, extra: pollution }, 'it has a field named “__proto__”'],
    ['with a trap at its top', JSON.parse('{"constructor": 1}'), 'it has a field named “constructor”'],
    ['an undo of nothing', { kind: 'undo', id: good.id, atMs: eveningMs }, '“of” must be the version 7 UUID'],
    ['of a newer kind without a time', { kind: 'wind-log', id: good.id }, '“atMs” must be a time'],
    [
      'of a newer kind, endless',
      { ...bad({ kind: 'wind-log' }), log: 'x'.repeat(30_000) },
      'it is longer than 20,000',
    ],
  ])('%s: it stays out and is named, the others come in', (_, entry, words) => {
    const other = evening(2, { seed: 9 });
    const read = readBackup(file({ events: [other[0], entry, other[1]] }), nowMs);
    expect(read.ok).toBe(true);
    expect(read.events).toEqual(other);
    expect(codes(read)).toEqual(['bad-event']);
    expect(read.problems[0]!.message).toContain('1 of 3 entries can’t be read and stayed out: number 2 (');
    expect(read.problems[0]!.message).toContain(words);
  });

  it('name the first five and count the rest', () => {
    const read = readBackup(file({ events: [...Array.from({ length: 1200 }, () => 7), good] }), nowMs);
    expect(read.events).toEqual([good]);
    expect(read.problems[0]!.message).toMatch(
      /^1,200 of 1,201 entries .*number 5 \([^)]*\), and 1,195 more\.$/,
    );
  });

  it('are those with a number past all numbers', () => {
    const text = file({ events: [bad({ value: 12345.5 })] }).replace('12345.5', '1e999');
    expect(readBackup(text, nowMs).problems[0]?.message).toContain('“value” must be a number');
  });

  it('leave no trace on other objects', () => {
    readBackup(
      `{"format":"gatecall-record/1","__proto__":{"admin":true},"events":[{"__proto__":{"admin":true}}]}`,
      nowMs,
    );
    expect(({} as { admin?: unknown }).admin).toBeUndefined();
  });

  it.each([
    ['1970-01-01', 0],
    ['2019-12-31', Date.UTC(2019, 11, 31, 23, 59)],
    ['2029-05-31', nowMs + 3 * dayMs],
  ])('are those from an impossible day, %s', (day, atMs) => {
    const read = readBackup(file({ events: [bad({ atMs }), evening(1)[0]] }), nowMs);
    expect(read.events).toEqual(evening(1));
    expect(codes(read)).toEqual(['odd-time']);
    expect(read.problems[0]!.message).toContain(`number 1 (${day})`);
  });

  it('are not those from a clock a day ahead', () => {
    expect(readBackup(file({ events: [bad({ atMs: nowMs + dayMs })] }), nowMs)).toMatchObject({
      problems: [],
    });
  });

  it('that share an id: one counts, and it is said', () => {
    const read = readBackup(file({ events: [good, bad({ value: 1 })] }), nowMs);
    expect(read.events).toHaveLength(1);
    expect(codes(read)).toEqual(['same-id']);
  });
});

describe('deck files and settings of a backup', () => {
  it('come in where they are sound', () => {
    const decks = [
      deck,
      { ...deck, text: 5 },
      { ...deck, id: 'Our Circuit' },
      deck,
      null,
      { ...deck, id: 'other' },
    ];
    const read = readBackup(file({ decks }), nowMs);
    expect(read.decks).toEqual([deck, { ...deck, id: 'other' }]);
    expect(read.problems).toEqual([
      {
        code: 'bad-deck',
        message:
          '4 deck files can’t be read and stayed out: number 2, number 3, number 4 (a second “our-circuit”), number 5.',
      },
    ]);
  });

  it.each([
    [{ decks: { '0': deck } }, 'bad-deck'],
    [{ settings: ['night'] }, 'bad-settings'],
    [{ settings: { words: 'x'.repeat(30_000) } }, 'bad-settings'],
    [{ settings: JSON.parse('{"__proto__": {}}') as object }, 'bad-settings'],
    [{ decks: Array.from({ length: 201 }, (_, i) => ({ ...deck, id: `d${i}` })) }, 'bad-deck'],
  ])('stay out where they aren’t, and the answers come in all the same', (fields, code) => {
    const read = readBackup(file({ ...fields, events: evening(2) }), nowMs);
    expect(read.events).toHaveLength(2);
    expect(codes(read)).toEqual([code]);
  });
});
