/** What is left of a broken part of a deck when the faulty pieces are taken out of it. */
import type * as z from 'zod/mini';
import type { DocumentPath } from './findings.ts';
import { isList, isMapping, valueAt, type Plain } from './plain-data.ts';

/**
 * What no check of sense looks at, so that a part may be judged without it: a gate without its cue still
 * has bands. A stand-in is never seen by anyone.
 */
const standIns: ReadonlyMap<string, Plain> = new Map<string, Plain>([
  ...['label', 'title', 'cue', 'because', 'ask', 'challenge', 'response', 'say'].map(
    (key) => [key, '…'] as const,
  ),
  ['id', 'unnamed'],
  ['unit', 'count'],
  ['step', 1],
  ['windowS', 1],
  ['position', { aheadFt: 0, rightFt: 0, courseDeg: 0 }],
]);

/** A piece is taken out, or the piece around it, or the one around that: never more often than parts nest. */
const mostRounds = 10;

export interface PathBook {
  readonly pathOf: (part: object) => DocumentPath;
  /** A changed copy stands for what it was copied from. */
  readonly copied: (from: object, to: object) => void;
}

/** Remembers where in the document each list and mapping stands. */
export function bookPaths(data: Plain | undefined): PathBook {
  const paths = new WeakMap<object, DocumentPath>();
  const enter = (value: Plain | undefined, path: DocumentPath): void => {
    if (isList(value)) value.forEach((item, index) => enter(item, [...path, index]));
    else if (isMapping(value)) for (const key of Object.keys(value)) enter(value[key], [...path, key]);
    else return;
    paths.set(value, path);
  };
  enter(data, []);
  return {
    pathOf: (part) => paths.get(part) ?? [],
    copied: (from, to) => void paths.set(to, paths.get(from) ?? []),
  };
}

/**
 * The part without the pieces its schema refuses: a table without its one broken rule, a gate without a
 * broken band. Null when a piece is refused that the part can't be without.
 */
export function soundPart<S extends z.core.$ZodType>(
  schema: S & { safeParse: (value: unknown) => z.core.util.SafeParseResult<z.core.output<S>> },
  part: Plain,
  book: PathBook,
): z.core.output<S> | null {
  let rest = part;
  for (let round = 0; round < mostRounds; round++) {
    const result = schema.safeParse(rest);
    // The schema changes nothing, so the part itself is of its type, and its paths are known.
    if (result.success) return rest as z.core.output<S>;
    const pieces: DocumentPath[] = [];
    for (const issue of result.error.issues) {
      const path = issue.path as (string | number)[];
      const standIn = standIns.get(String(path[path.length - 1]));
      const isNew = standIn !== undefined && valueAt(rest, path) !== standIn;
      if (isNew) rest = replaced(rest, path, standIn, book);
      else pieces.push(...piecesToTake(issue, rest));
    }
    if (pieces.some((path) => path.length === 0)) return null;
    for (const path of deepestAndLastFirst(pieces)) rest = without(rest, path, book);
  }
  return null;
}

/** Paths of what to take out for an issue; the empty path when it is the whole part. */
function piecesToTake(issue: z.core.$ZodIssue, part: Plain): DocumentPath[] {
  const path = issue.path as (string | number)[];
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => [...path, key]);
  const parent = path.slice(0, -1);
  // What isn't there can't be taken out, and without one of its ids or numbers a list means something else.
  const inList = isList(valueAt(part, parent)) && !isMapping(valueAt(part, path));
  return [valueAt(part, path) === undefined || inList ? parent : path];
}

/** Each once, none inside another, later elements of a list before earlier ones. */
function deepestAndLastFirst(paths: readonly DocumentPath[]): DocumentPath[] {
  const byKey = new Map(paths.map((path) => [JSON.stringify(path), path]));
  const outer = [...byKey.values()].filter(
    (path) => !path.some((_, length) => length > 0 && byKey.has(JSON.stringify(path.slice(0, length)))),
  );
  return outer.sort((a, b) => {
    const at = a.findIndex((step, depth) => step !== b[depth]);
    const [one, other] = [a[at], b[at]];
    return typeof one === 'number' && typeof other === 'number' ? other - one : 0;
  });
}

/** Copies along the path only: the other pieces stay what they are, with their places. */
function replaced(value: Plain, path: DocumentPath, piece: Plain, book: PathBook): Plain {
  const [step, ...rest] = path;
  if (step === undefined) return piece;
  if (isList(value)) {
    const copy = [...value];
    copy[Number(step)] = replaced(value[Number(step)] ?? null, rest, piece, book);
    book.copied(value, copy);
    return copy;
  }
  if (!isMapping(value)) return value;
  const below = Object.hasOwn(value, step) ? value[step]! : null;
  const copy = { ...value, [step]: replaced(below, rest, piece, book) };
  book.copied(value, copy);
  return copy;
}

function without(value: Plain, path: DocumentPath, book: PathBook): Plain {
  const parentPath = path.slice(0, -1);
  const parent = valueAt(value, parentPath);
  const last = path[path.length - 1]!;
  if (isList(parent)) {
    const copy = parent.filter((_, index) => index !== last);
    book.copied(parent, copy);
    return replaced(value, parentPath, copy, book);
  }
  if (!isMapping(parent)) return value;
  const { [last]: _, ...copy } = parent;
  book.copied(parent, copy);
  return replaced(value, parentPath, copy, book);
}
