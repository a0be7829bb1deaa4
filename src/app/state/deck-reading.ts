/** Between the page and the worker that reads deck files: parsing and proving are heavy, and the page stays quick. */
import type { Finding } from '../../deck/findings.ts';
import type { Deck } from '../../deck/types.ts';

export interface DeckReading {
  /** null when the deck has errors. */
  readonly deck: Deck | null;
  readonly findings: readonly Finding[];
}

/** Reads and proves a deck's text off the main thread. Never rejects for a fault of the deck. */
export function readDeckText(text: string): Promise<DeckReading> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./deck-reader.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<DeckReading>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message || 'The deck reader could not start.'));
    };
    worker.postMessage(text);
  });
}
