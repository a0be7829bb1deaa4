import { readWholeProcedure, type ReadProcedure } from '../../rules/read.ts';
import type { Io } from './io.ts';

export interface OpenedDeck extends ReadProcedure {
  readonly text: string;
}

/** Reads a deck file as far as it goes; null, and said, when the file itself can't be read. */
export async function openDeck(path: string, io: Io): Promise<OpenedDeck | null> {
  const file = await io.readFile(path);
  if (!file.ok) {
    io.err(`${path} can't be read: ${file.message}.`);
    return null;
  }
  return { text: file.text, ...(await readWholeProcedure(file.text)) };
}
