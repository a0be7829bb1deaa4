/** Notes: a right answer that is not offered as a wrong one. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted } from '../quoting.ts';

const plain = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();

export function* checkNotes(parts: DeckParts): Generator<Draft> {
  for (const note of parts.notes) {
    const right = new Set([note.answer, ...(note.accept ?? [])].map(plain));
    for (const [index, choice] of (note.choices ?? []).entries())
      if (right.has(plain(choice)))
        yield {
          code: 'answer-among-choices',
          message: `“choices” holds the wrong answers, ${quoted(choice)} is a right one; take it out, the program adds the answer itself.`,
          path: parts.pathOf(note, 'choices', index),
        };
  }
}
