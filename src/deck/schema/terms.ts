/** What all parts of a deck's schema are made of: ids, words, numbers, ranges, and words for authors. */
import * as z from 'zod/mini';

// The page's policy forbids code generation.
z.config({ jitless: true });

/** Documents a schema so that text editors show the words while the author types. */
export function about<T extends z.core.$ZodType>(description: string, schema: T): T {
  z.globalRegistry.add(schema, { description });
  return schema;
}

export const idPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
export const id = () => z.string().check(z.regex(idPattern), z.maxLength(60));
export const words = (max = 400) => z.string().check(z.minLength(1), z.maxLength(max));
/**
 * YAML can spell NaN and infinities (`.nan`, `.inf`), which no number of the schema may be; the bounds
 * keep sums and differences of such numbers exact enough.
 */
export const amount = () => z.number().check(z.minimum(-1e9), z.maximum(1e9));
export const range = () => z.tuple([amount(), amount()]);
export const condition = () => z.string().check(z.minLength(1), z.maxLength(200));
