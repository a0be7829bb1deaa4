/** A name that must be in a list of the deck and is not. */
import type { DeckCode } from '../codes.ts';
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { quoted } from '../quoting.ts';

export type Kind = keyof DeckParts['known'];

const lists: Readonly<Record<Kind, string>> = {
  source: 'sources',
  quantity: 'quantities',
  gate: 'gates',
  control: 'controls',
  phase: 'phases',
};

const codes: Readonly<Record<Kind, DeckCode>> = {
  source: 'unknown-source',
  quantity: 'unknown-quantity',
  gate: 'unknown-gate',
  control: 'unknown-control',
  phase: 'unknown-phase',
};

/** Nothing when the name is known, or when a broken list leaves it open. */
export function* ifUnknown(
  parts: DeckParts,
  kind: Kind,
  id: string,
  path: DocumentPath,
  onKey = false,
): Generator<Draft> {
  const known = parts.known[kind];
  if (known.has(id)) return;
  yield {
    code: codes[kind],
    message: `A ${kind} named here must be one of ${quoted(lists[kind])}, found ${quoted(id)}; ${mendOf(parts, id, known.ids, `add it there`)}.`,
    path,
    onKey,
  };
}

/** "write “altitude”" when something near is known, else what to do instead. */
export function mendOf(parts: DeckParts, id: string, known: ReadonlySet<string>, otherwise: string): string {
  const near = parts.suggest(id, known);
  return near === null ? otherwise : `write ${quoted(near)}`;
}

/** Entries of a list of names that stand there a second time. */
export function* repeated(ids: readonly string[], path: DocumentPath): Generator<Draft> {
  const seen = new Set<string>();
  for (const [index, id] of ids.entries()) {
    if (seen.has(id))
      yield {
        code: 'repeated-entry',
        message: `Each name may stand once in this list, ${quoted(id)} stands here again; take it out.`,
        path: [...path, index],
      };
    seen.add(id);
  }
}
