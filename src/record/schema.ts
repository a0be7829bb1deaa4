/**
 * What an event must look like before it is believed: whatever comes from a disk, a file or another
 * tab goes through `parseEvent`. `zod/mini`, because this is part of the first page.
 */
import * as z from 'zod/mini';
import type { CardKind } from '../cards/types.ts';
import { harmIn } from './plain-data.ts';
import type { AnswerEvent, KeptEvent, UndoEvent } from './types.ts';

// The page's policy forbids code generation.
z.config({ jitless: true });

/** A `Record`, so that the compiler names this place when a kind is added. */
const cardKinds: Record<CardKind, true> = {
  value: true,
  limit: true,
  order: true,
  checklist: true,
  response: true,
  'complete-by': true,
  rule: true,
  spot: true,
  note: true,
};
export const knownCardKinds = Object.keys(cardKinds) as CardKind[];

/** Longest strings, in characters, and longest answer, in milliseconds (11 days, for a prompt left open). */
export const most = { headline: 1_000, expected: 4_000, elapsedMs: 1_000_000_000, strangerJson: 20_000 };

const text = (longest: number) => z.string().check(z.maxLength(longest));
const name = (longest: number) => text(longest).check(z.minLength(1));

export const eventIdPattern = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const id = z.string().check(z.regex(eventIdPattern));
const atMs = z.int().check(z.minimum(0), z.maximum(8.64e15));

/** As in decks, so that deck and card join to one key without doubt. */
export const deckIdPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

const drillMark = z.looseObject({
  phase: name(60),
  closeness: z.enum(['wide', 'near', 'edge']),
  edge: z.optional(name(60)),
  side: z.optional(z.enum(['below', 'above'])),
  twin: z.optional(z.boolean()),
});

const answerFields = {
  kind: z.literal('answer'),
  id,
  atMs,
  deck: z.string().check(z.regex(deckIdPattern), z.maxLength(60)),
  deckVersion: name(60),
  card: name(250),
  cardKind: z.enum(knownCardKinds),
  critical: z.boolean(),
  mode: z.enum(['recall', 'drill']),
  seed: z.int(),
  performance: z.enum(['desired', 'adequate', 'outside']),
  timeliness: z.enum(['prompt', 'late', 'timed-out']),
  rating: z.literal([1, 2, 3, 4]),
  elapsedMs: z.number().check(z.minimum(0), z.maximum(most.elapsedMs)),
  value: z.optional(z.number()),
  signedError: z.optional(z.number()),
  drill: z.optional(drillMark),
  headline: text(most.headline),
  expected: text(most.expected),
};
const undoFields = { kind: z.literal('undo'), id, atMs, of: id };

// Loose: fields that a newer version added are kept.
const answerSchema = z.looseObject(answerFields);
const undoSchema = z.looseObject(undoFields);
const strangerSchema = z.looseObject({ kind: name(60), id, atMs });

export const answerKeys: ReadonlySet<string> = new Set(Object.keys(answerFields));
export const undoKeys: ReadonlySet<string> = new Set(Object.keys(undoFields));

/** What each field must be, in words. */
const must: Record<string, string> = {
  kind: 'the kind of event, in a word',
  id: 'a version 7 UUID in lower case',
  of: 'the version 7 UUID of another event',
  atMs: 'a time in whole milliseconds since 1970',
  deck: 'the id of a deck',
  deckVersion: 'a version, at most 60 characters',
  card: 'the id of a card, at most 250 characters',
  cardKind: 'a kind of card',
  critical: 'true or false',
  mode: '“recall” or “drill”',
  seed: 'a whole number',
  performance: '“desired”, “adequate” or “outside”',
  timeliness: '“prompt”, “late” or “timed-out”',
  rating: 'a rating as the program gives it',
  elapsedMs: 'a number of milliseconds, 0 or more',
  value: 'a number',
  signedError: 'a number',
  drill: 'a phase, a closeness and, if any, the edge drilled',
  headline: `text, at most ${most.headline} characters`,
  expected: `text, at most ${most.expected} characters`,
};

export type ParsedEvent =
  | { readonly ok: true; readonly event: KeptEvent }
  /** `why` continues "this answer can't be read: ". */
  | { readonly ok: false; readonly why: string };

/** An event out of plain data, or why it is none. Never throws, whatever it is given. */
export function parseEvent(raw: unknown): ParsedEvent {
  const harm = harmIn(raw);
  if (harm !== null) return { ok: false, why: harm };
  const data = raw as Record<string, unknown>;
  const known = data['kind'] === 'answer' || data['kind'] === 'undo';
  const strangerCard =
    data['kind'] === 'answer' &&
    typeof data['cardKind'] === 'string' &&
    !Object.hasOwn(cardKinds, data['cardKind']);
  const stranger = !known || strangerCard;
  const schema = stranger ? strangerSchema : data['kind'] === 'undo' ? undoSchema : answerSchema;
  const result = z.safeParse(schema, data);
  if (!result.success) return { ok: false, why: sayIssues(result.error.issues) };
  const carriesMore = Object.keys(data).length > (data['kind'] === 'undo' ? undoKeys : answerKeys).size;
  if ((stranger || carriesMore) && JSON.stringify(data).length > most.strangerJson)
    return { ok: false, why: `it is longer than ${most.strangerJson.toLocaleString('en-US')} characters` };
  if (!stranger) return { ok: true, event: result.data as unknown as AnswerEvent | UndoEvent };
  const { id: strangerId, atMs: strangerAtMs } = result.data as { id: string; atMs: number };
  return { ok: true, event: { kind: 'stranger', id: strangerId, atMs: strangerAtMs, raw: result.data } };
}

/** An event as it is written to a disk or a file: what `parseEvent` reads. */
export function rawEvent(event: KeptEvent): Readonly<Record<string, unknown>> {
  return event.kind === 'stranger' ? event.raw : (event as unknown as Readonly<Record<string, unknown>>);
}

function sayIssues(issues: readonly z.core.$ZodIssue[]): string {
  const fields = [...new Set(issues.map((issue) => String(issue.path[0] ?? '')))];
  return fields.map((field) => `“${field}” must be ${must[field] ?? 'something else'}`).join('; ');
}
