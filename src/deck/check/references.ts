/** Names that lead from one part to another: sources, gates, and the quantity of height. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { mentionsOfSources } from './source-mentions.ts';
import { ifUnknown } from './unknown-name.ts';

export function* checkReferences(parts: DeckParts): Generator<Draft> {
  if (parts.reference) yield* ifUnknown(parts, 'quantity', parts.reference.height, ['reference', 'height']);
  for (const { id, path } of mentionsOfSources(parts)) yield* ifUnknown(parts, 'source', id, path);
  for (const checklist of parts.checklists)
    yield* ifUnknown(parts, 'gate', checklist.completeBy, parts.pathOf(checklist, 'completeBy'));
  for (const note of parts.notes)
    if (note.gate !== undefined) yield* ifUnknown(parts, 'gate', note.gate, parts.pathOf(note, 'gate'));
}
