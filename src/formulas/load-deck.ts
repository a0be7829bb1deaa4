/** Reads a deck with its formulas; the parser of formulas is loaded only where there are any. */
import { finishDeck, openDeck, type LoadedDeck } from '../deck/load.ts';

/** As `loadDeck`, for a deck that may have formulas. Never throws, whatever the text. */
export async function loadWholeDeck(text: string): Promise<LoadedDeck> {
  const opened = openDeck(text);
  if (!opened.hasFormulas) return finishDeck(opened);
  const { readFormulas } = await import('./read-formulas.ts');
  return finishDeck(opened, readFormulas);
}
