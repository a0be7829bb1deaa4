/** A deck file as it is kept and handed on. Whether it is a sound deck is for the loader to say. */
import * as z from 'zod/mini';
import { harmIn } from './plain-data.ts';
import { deckIdPattern } from './schema.ts';
import type { DeckFile } from './types.ts';

/** Longest text of a deck, in characters: as much as the loader takes. */
export const mostDeckText = 2 * 1024 * 1024;

const deckFileSchema = z.object({
  id: z.string().check(z.regex(deckIdPattern), z.maxLength(60)),
  version: z.string().check(z.minLength(1), z.maxLength(60)),
  text: z.string().check(z.maxLength(mostDeckText)),
});

/** The deck file in data from outside; null when it is none. */
export function parseDeckFile(raw: unknown): DeckFile | null {
  if (harmIn(raw) !== null) return null;
  const result = z.safeParse(deckFileSchema, raw);
  return result.success ? result.data : null;
}
