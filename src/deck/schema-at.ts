/** The part of the deck's schema that stands for a path: what is expected there, in which words. */
import * as z from 'zod/mini';
import type { DocumentPath } from './findings.ts';
import { isMapping, valueAt, type Plain } from './plain-data.ts';

type Schema = z.core.$ZodTypes;

/** The schema at a path, or null; where it depends on the data (a kind of shape), the data decide. */
export function schemaAt(root: z.core.$ZodType, data: Plain, path: DocumentPath): Schema | null {
  let schema: Schema | null = resolved(root as Schema, data);
  for (const [depth, step] of path.entries()) {
    if (!schema) return null;
    schema = child(schema, step);
    if (schema) schema = resolved(schema, valueAt(data, path.slice(0, depth + 1)));
  }
  return schema;
}

/** Keys that a mapping of this schema may have. */
export function keysOf(schema: Schema | null): readonly string[] {
  return schema?._zod.def.type === 'object' ? Object.keys(schema._zod.def.shape) : [];
}

/** Keys that a mapping of this schema must have. */
export function requiredKeysOf(schema: Schema | null): readonly string[] {
  const def = schema?._zod.def;
  if (def?.type !== 'object') return [];
  return Object.keys(def.shape).filter((key) => (def.shape[key] as Schema)._zod.def.type !== 'optional');
}

/** The words for authors, from the schema or the optional wrapper around it. */
export function descriptionAt(root: z.core.$ZodType, data: Plain, path: DocumentPath): string | null {
  const parent = schemaAt(root, data, path.slice(0, -1));
  const schema = parent && child(parent, path[path.length - 1] ?? '');
  if (!schema) return null;
  const inner = unwrapped(schema);
  return (z.globalRegistry.get(schema) ?? z.globalRegistry.get(inner))?.description ?? null;
}

function child(schema: Schema, step: string | number): Schema | null {
  const def = schema._zod.def;
  switch (def.type) {
    case 'object':
      return typeof step === 'string' && Object.hasOwn(def.shape, step) ? (def.shape[step] as Schema) : null;
    case 'array':
      return def.element as Schema;
    case 'tuple':
      return (def.items[Number(step)] as Schema | undefined) ?? null;
    case 'record':
      return def.valueType as Schema;
    default:
      return null;
  }
}

function unwrapped(schema: Schema): Schema {
  const def = schema._zod.def;
  return def.type === 'optional' ? unwrapped(def.innerType as Schema) : schema;
}

function resolved(schema: Schema, value: Plain | undefined): Schema {
  const inner = unwrapped(schema);
  const def = inner._zod.def;
  if (def.type !== 'union' || !('discriminator' in def) || !isMapping(value)) return inner;
  const key = String(def.discriminator);
  const options = def.options as readonly Schema[];
  const chosen = options.find((option) => {
    const literal = child(option, key)?._zod.def;
    return literal?.type === 'literal' && literal.values.includes(value[key] as string);
  });
  return chosen ?? inner;
}
