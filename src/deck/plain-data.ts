/** Data as JSON knows it, whatever the file said, and the path of each of its lists and mappings. */
import type { DocumentPath } from './findings.ts';

export type Plain = null | boolean | number | string | readonly Plain[] | PlainMapping;
export type PlainMapping = { readonly [key: string]: Plain };

export const isMapping = (value: unknown): value is PlainMapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isList = (value: unknown): value is readonly Plain[] => Array.isArray(value);

/** The value at a path, or undefined. Own properties only. */
export function valueAt(data: Plain | undefined, path: DocumentPath): Plain | undefined {
  let value = data;
  for (const step of path) {
    if (isList(value)) value = typeof step === 'number' ? value[step] : undefined;
    else if (isMapping(value) && Object.hasOwn(value, step)) value = value[step];
    else return undefined;
  }
  return value;
}

/** Names that every object answers to; as a key or an id they would be found where nothing was written. */
export const reservedNames: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
