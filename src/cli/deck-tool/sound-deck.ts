import { renderFindings } from '../../deck/render-findings.ts';
import type { Procedure } from '../../rules/types.ts';
import type { Io } from './io.ts';
import { openDeck } from './open-deck.ts';

/** A deck to work with; null when it can't be read or has errors, which are said on the standard error. */
export async function soundDeck(path: string, io: Io): Promise<Procedure | null> {
  const opened = await openDeck(path, io);
  if (opened === null) return null;
  const { procedure, findings, text } = opened;
  if (procedure === null) {
    const errors = findings.filter(({ severity }) => severity === 'error');
    io.err(renderFindings(errors, text, path));
  }
  return procedure;
}
