/** Wherever a sound part of the deck names a source. */
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';

export interface SourceMention {
  readonly id: string;
  readonly path: DocumentPath;
}

export function* mentionsOfSources(parts: DeckParts): Generator<SourceMention> {
  if (parts.defaultSource !== null) yield { id: parts.defaultSource, path: ['defaultSource'] };
  const bands = parts.gates.flatMap((gate) => Object.values(gate.values));
  const limits = parts.phases.flatMap((phase) => Object.values(phase.limits ?? {}));
  const bearers = [
    ...bands,
    ...limits,
    ...parts.charts,
    ...parts.formulas,
    ...(parts.flying ? [parts.flying] : []),
    ...parts.checklists,
    ...parts.tables,
    ...parts.plates,
    ...parts.notes,
    ...parts.worked,
  ];
  for (const bearer of bearers)
    if (bearer.source !== undefined) yield { id: bearer.source, path: parts.pathOf(bearer, 'source') };
}
