/** The deck's schema as JSON Schema, draft 2020-12: completion and first checks in text editors. */
import * as z from 'zod/mini';
import { mostElements, mostKeys } from './limits.ts';
import { reservedNames } from './plain-data.ts';
import { deckSchema } from './schema.ts';

export type JsonSchema = { readonly [key: string]: unknown };

/**
 * Made from the same definitions as the loader's checks; it accepts every deck that the loader accepts,
 * and refuses what has the wrong shape. What needs a look at several parts is left to the loader.
 */
export function deckJsonSchema(): JsonSchema {
  const made = z.toJSONSchema(deckSchema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      const { type } = zodSchema._zod.def;
      // Limits that the loader holds every list and mapping to.
      if (type === 'array') jsonSchema.maxItems ??= mostElements;
      if (type === 'record') {
        jsonSchema.maxProperties = mostKeys;
        jsonSchema.propertyNames = { minLength: 1, not: { enum: [...reservedNames] } };
      }
    },
  });
  const { $schema, ...rest } = made;
  return {
    $schema,
    title: 'Gatecall deck',
    description:
      'A procedure flown by hand: gates with their values, checklists, decision rules, pictures. Numbers are in the unit of their quantity.',
    ...rest,
  };
}

/** As it is written to `shared/deck.schema.json`. */
export const deckJsonSchemaText = (): string => `${JSON.stringify(deckJsonSchema(), null, 2)}\n`;
