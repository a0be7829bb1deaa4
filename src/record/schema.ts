/**
 * What an event must look like before it is believed: whatever comes from a disk, a file or another
 * tab goes through `parseEvent`. `zod/mini`, because this is part of the first page.
 */
import * as z from 'zod/mini';
import type { CardKind } from '../cards/types.ts';
import { harmIn } from './plain-data.ts';
import type { KeptEvent, RecordEvent } from './types.ts';

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
  worked: true,
};
export const knownCardKinds = Object.keys(cardKinds) as CardKind[];

/** Longest strings, in characters, and longest answer, in milliseconds (11 days, for a prompt left open). */
export const most = { headline: 1_000, expected: 4_000, elapsedMs: 1_000_000_000, strangerJson: 20_000 };
/** Quantities of a day. */
export const mostInDay = 40;
/** Of a pass; all of it together stays under `strangerJson`, so that older versions carry it. */
export const mostInPass = { gates: 60, quantities: 30, rules: 200, expected: 200, asked: 10_000 };

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

/** Older versions carry it as a field they don't know. */
const daySet = z.record(name(60), z.number()).check(z.refine((day) => Object.keys(day).length <= mostInDay));

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
  day: z.optional(daySet),
  headline: text(most.headline),
  expected: text(most.expected),
  called: z.optional(text(most.headline)),
  due: z.optional(text(most.headline)),
};
const performance = z.enum(['desired', 'adequate', 'outside']);
const count = z.int().check(z.minimum(0), z.maximum(mostInPass.asked));
const list = <T extends z.core.SomeType>(item: T, longest: number) =>
  z.array(item).check(z.maxLength(longest));

const passFields = {
  kind: z.literal('pass'),
  id,
  atMs,
  deck: answerFields.deck,
  deckVersion: name(60),
  fromGate: name(60),
  seed: z.int(),
  roughness: z.number().check(z.minimum(0), z.maximum(10)),
  pace: z.enum(['compressed', 'real', 'steps']),
  day: z.optional(daySet),
  end: z.enum(['complete', 'go-around', 'needless-go-around', 'missed-go-around', 'out-of-bounds', 'stuck']),
  performance,
  gates: list(z.looseObject({ gate: name(60), performance }), mostInPass.gates),
  rules: list(
    z.looseObject({
      card: name(250),
      asked: count,
      missed: count,
      critical: z.boolean(),
      expected: text(mostInPass.expected),
    }),
    mostInPass.rules,
  ),
  gatesMissed: list(
    z.looseObject({ gate: name(60), quantities: list(name(60), mostInPass.quantities) }),
    mostInPass.gates,
  ),
  headline: text(most.headline),
};
const undoFields = { kind: z.literal('undo'), id, atMs, of: id };

export const answerKeys: ReadonlySet<string> = new Set(Object.keys(answerFields));
export const undoKeys: ReadonlySet<string> = new Set(Object.keys(undoFields));

/** Each kind that is known. Loose: fields that a newer version added are kept. */
const kinds: Record<RecordEvent['kind'], { schema: z.core.$ZodType; keys: ReadonlySet<string> }> = {
  answer: { schema: z.looseObject(answerFields), keys: answerKeys },
  undo: { schema: z.looseObject(undoFields), keys: undoKeys },
  // Long by itself: its length is looked at always.
  pass: { schema: z.looseObject(passFields), keys: new Set() },
};
const noKeys: ReadonlySet<string> = new Set();
const strangerSchema = z.looseObject({ kind: name(60), id, atMs });

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
  day: `at most ${mostInDay} quantities of the day, each with its number`,
  headline: `text, at most ${most.headline} characters`,
  expected: `text, at most ${most.expected} characters`,
  called: `text, at most ${most.headline} characters`,
  due: `text, at most ${most.headline} characters`,
  fromGate: 'the id of a gate',
  roughness: 'a number from 0 to 10',
  pace: '“compressed”, “real” or “steps”',
  end: 'how a pass can end',
  gates: `at most ${mostInPass.gates} gates, each with a performance`,
  rules: `at most ${mostInPass.rules} rules, each with its card and how often it was asked and missed`,
  gatesMissed: `at most ${mostInPass.gates} gates, each with the quantities that were outside`,
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
  const { kind, cardKind } = data;
  const known = typeof kind === 'string' && Object.hasOwn(kinds, kind) ? (kind as RecordEvent['kind']) : null;
  const strangerCard =
    known === 'answer' && typeof cardKind === 'string' && !Object.hasOwn(cardKinds, cardKind);
  const stranger = known === null || strangerCard;
  const { schema, keys } = stranger ? { schema: strangerSchema, keys: noKeys } : kinds[known];
  const result = z.safeParse(schema, data);
  if (!result.success) return { ok: false, why: sayIssues(result.error.issues) };
  const carriesMore = Object.keys(data).length > keys.size;
  if (carriesMore && JSON.stringify(data).length > most.strangerJson)
    return { ok: false, why: `it is longer than ${most.strangerJson.toLocaleString('en-US')} characters` };
  if (!stranger) return { ok: true, event: result.data as RecordEvent };
  const { id: strangerId, atMs: strangerAtMs } = result.data as { id: string; atMs: number };
  return { ok: true, event: { kind: 'stranger', id: strangerId, atMs: strangerAtMs, raw: data } };
}

/** An event as it is written to a disk or a file: what `parseEvent` reads. */
export function rawEvent(event: KeptEvent): Readonly<Record<string, unknown>> {
  return event.kind === 'stranger' ? event.raw : (event as unknown as Readonly<Record<string, unknown>>);
}

function sayIssues(issues: readonly z.core.$ZodIssue[]): string {
  const fields = [...new Set(issues.map((issue) => String(issue.path[0] ?? '')))];
  return fields.map((field) => `“${field}” must be ${must[field] ?? 'something else'}`).join('; ');
}
