/** Random changes to the data of the fixture deck. */
import fc from 'fast-check';
import { parse } from 'yaml';
import { fixtureDeckText } from './fixture.ts';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
export type Path = (string | number)[];

export const validDeck = parse(fixtureDeckText) as Json;

function pathsIn(value: Json, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const below = Object.entries(value).flatMap(([key, child]) =>
    pathsIn(child, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [path, ...below];
}

const paths = pathsIn(validDeck).filter((path) => path.length > 0);

function at(value: Json, path: Path): Json | undefined {
  return path.reduce<Json | undefined>(
    (child, step) =>
      typeof child === 'object' && child !== null ? (child as Record<string, Json>)[step] : undefined,
    value,
  );
}

/** Sets the value at a path of the copy, or takes it away. A path that an earlier mutation cut is left. */
export function put(value: Json, path: Path, piece: Json | undefined): void {
  const parent = at(value, path.slice(0, -1));
  const last = path[path.length - 1]!;
  if (Array.isArray(parent) && typeof last === 'number') {
    if (piece === undefined) parent.splice(last, 1);
    else parent[last] = piece;
  } else if (typeof parent === 'object' && parent !== null && !Array.isArray(parent)) {
    if (piece === undefined) Reflect.deleteProperty(parent, last);
    else parent[last] = piece;
  }
}

export const anyPath = fc.constantFrom(...paths);
const anyPiece = fc.oneof(
  fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Json>,
  fc.constantFrom<Json>(
    '140 ft',
    'altitude',
    'far',
    '',
    '[1..2]',
    0,
    -1,
    1e12,
    NaN,
    Infinity,
    [],
    {},
    [1, 2],
    [2, 1],
  ),
);
export const mutation = fc.oneof(
  fc.record({ kind: fc.constant('delete' as const), path: anyPath }),
  fc.record({ kind: fc.constant('replace' as const), path: anyPath, piece: anyPiece }),
  fc.record({ kind: fc.constant('swap' as const), path: anyPath, other: anyPath }),
);

export type Mutation = typeof mutation extends fc.Arbitrary<infer M> ? M : never;

/** A copy of the valid deck with the changes made one after the other. */
export function mutated(mutations: readonly Mutation[]): Json {
  const deck = structuredClone(validDeck);
  for (const change of mutations)
    switch (change.kind) {
      case 'delete':
        put(deck, change.path, undefined);
        break;
      case 'replace':
        put(deck, change.path, change.piece);
        break;
      case 'swap': {
        const [one, other] = [at(deck, change.path), at(deck, change.other)].map((piece) =>
          structuredClone(piece),
        );
        put(deck, change.path, other);
        put(deck, change.other, one);
      }
    }
  return deck;
}
