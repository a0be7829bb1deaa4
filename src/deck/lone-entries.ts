/** `- wind: 10` for `- { quantity: wind, default: 10 }`: an entry written as its own key and value. */
import type { Draft } from './draft.ts';
import { isList, isMapping, valueAt, type Plain } from './plain-data.ts';
import { quoted } from './quoting.ts';
import { sayList } from './say.ts';
import { requiredKeysOf, schemaAt } from './schema-at.ts';
import { deckSchema } from './schema.ts';
import { idLike } from './words-for-id.ts';

/** One finding in place of one on an unknown key and two on missing ones. */
export function withoutLoneEntries<T extends Draft>(drafts: readonly T[], data: Plain): (T | Draft)[] {
  const told = new Map<string, Draft>();
  for (const { code, path } of drafts) {
    const element = path.slice(0, -1);
    const keys = requiredKeysOf(schemaAt(deckSchema, data, element));
    const entry = valueAt(data, element);
    const known = schemaAt(deckSchema, data, element);
    if (code !== 'unknown-key' || keys.length < 2 || !isMapping(entry) || known?._zod.def.type !== 'object')
      continue;
    const [[key, value] = ['', null], ...others] = Object.entries(entry);
    if (others.length > 0 || typeof element[element.length - 1] !== 'number') continue;
    const meant = entryMeant(keys, key, value);
    if (meant === null) continue;
    told.set(JSON.stringify(element), {
      code: 'unknown-key',
      message: `An entry here has the keys ${sayList(keys)}, found ${quoted(key)} alone; write ${meant}.`,
      path,
      onKey: true,
    });
  }
  if (told.size === 0) return [...drafts];
  const isOfLone = ({ code, path }: Draft): boolean =>
    (code === 'unknown-key' || code === 'missing-key') && told.has(JSON.stringify(path.slice(0, -1)));
  return [...drafts.filter((draft) => !isOfLone(draft)), ...told.values()];
}

function entryMeant(keys: readonly string[], key: string, value: Plain): string | null {
  const [first, second, third] = keys;
  const written = (one: string): string => (/^[\p{L}\d. -]+$/u.test(one) ? one : `"${one}"`);
  if (isMapping(value))
    return first === 'id' ? `{ id: ${idLike(key) ?? '…'}, … } with its other keys beside the id` : null;
  if (isList(value) || value === null) return null;
  if (keys.length === 2) return `{ ${first}: ${written(key)}, ${second}: ${written(String(value))} }`;
  return keys.length === 3 && first === 'id'
    ? `{ id: ${idLike(key) ?? '…'}, ${second}: ${written(key)}, ${third}: ${written(String(value))} }`
    : null;
}
