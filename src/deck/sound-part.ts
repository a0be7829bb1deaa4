/** What is left of a broken part of a deck when the faulty pieces are taken out of it. */
import type * as z from 'zod/mini';
import type { DocumentPath } from './findings.ts';
import { isList, isMapping, valueAt, type Plain } from './plain-data.ts';

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
    const pieces = result.error.issues.flatMap((issue) => piecesToTake(issue, rest));
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

function without(value: Plain, path: DocumentPath, book: PathBook): Plain {
  const [step, ...rest] = path;
  if (isList(value)) {
    const index = Number(step);
    const copy = [...value];
    if (rest.length === 0) copy.splice(index, 1);
    else copy[index] = without(value[index]!, rest, book);
    book.copied(value, copy);
    return copy;
  }
  if (!isMapping(value) || typeof step !== 'string' || !Object.hasOwn(value, step)) return value;
  const { [step]: taken, ...others } = value;
  const copy = rest.length === 0 ? others : { ...value, [step]: without(taken!, rest, book) };
  book.copied(value, copy);
  return copy;
}
