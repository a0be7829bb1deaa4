/** A key that the schema doesn't have: which one was meant. */
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { nearestOf } from './nearest.ts';
import { isMapping, valueAt, type Plain } from './plain-data.ts';
import { quoted } from './quoting.ts';
import { sayList } from './say.ts';
import { keysOf, schemaAt } from './schema-at.ts';
import { deckSchema } from './schema.ts';

/** A draft on an unknown key says which one was meant. */
export interface ShapeDraft extends Draft {
  readonly meant?: DocumentPath;
}

/** Other words for keys, as authors write them. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  min: ['floor', 'from'],
  minimum: ['floor'],
  max: ['ceiling', 'to'],
  maximum: ['ceiling'],
  if: ['when'],
  condition: ['when'],
  action: ['then'],
  do: ['then'],
  question: ['ask'],
  reply: ['response', 'answer'],
  item: ['challenge'],
  why: ['because'],
  reason: ['because'],
  note: ['because'],
  name: ['label', 'title'],
  title: ['label'],
  label: ['title'],
  override: ['overriding'],
  overrides: ['overriding'],
  opposite: ['opposes'],
  default: ['neutral'],
  r: ['radius'],
  by: ['completeBy'],
  policy: ['hit'],
  timeout: ['windowS'],
  seconds: ['windowS'],
  limits: ['floor', 'ceiling'],
  value: ['target', 'default'],
};

export function unknownKey(key: string, path: DocumentPath, data: Plain): ShapeDraft {
  const known = keysOf(schemaAt(deckSchema, data, path));
  const present = valueAt(data, path);
  const free = known.filter((name) => !isMapping(present) || !Object.hasOwn(present, name));
  const near = nearestOf(key.slice(0, 100), free) ?? onlyOneThatHolds(key, free) ?? synonymOf(key, free);
  const mend = near ? `write ${quoted(near)}` : 'take it away';
  return {
    code: 'unknown-key',
    message: `The keys here are ${sayList(known)}, found ${quoted(key)}; ${mend}.`,
    path: [...path, key],
    onKey: true,
    ...(near ? { meant: [...path, near] } : {}),
  };
}

/** "ahead" -> "aheadFt", when no other key holds it. */
function onlyOneThatHolds(key: string, free: readonly string[]): string | null {
  const held = key.length >= 3 ? free.filter((name) => name.toLowerCase().includes(key.toLowerCase())) : [];
  return held.length === 1 ? held[0]! : null;
}

const synonymOf = (key: string, free: readonly string[]): string | null =>
  (Object.hasOwn(synonyms, key.toLowerCase()) ? synonyms[key.toLowerCase()]! : []).find((name) =>
    free.includes(name),
  ) ?? null;
