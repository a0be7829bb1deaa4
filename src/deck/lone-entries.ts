/** `- wind: 10` for `- { quantity: wind, default: 10 }`: an entry written as its own key and value. */
import type { Draft } from './draft.ts';
import { isMapping, valueAt, type Plain } from './plain-data.ts';
import { quoted, sayFound } from './quoting.ts';
import { requiredKeysOf, schemaAt } from './schema-at.ts';
import { deckSchema } from './schema.ts';

/** One finding in place of one on an unknown key and two on missing ones. */
export function withoutLoneEntries<T extends Draft>(drafts: readonly T[], data: Plain): (T | Draft)[] {
  const told = new Map<string, Draft>();
  for (const { code, path } of drafts) {
    const element = path.slice(0, -1);
    const keys = requiredKeysOf(schemaAt(deckSchema, data, element));
    const entry = valueAt(data, element);
    if (code !== 'unknown-key' || keys.length !== 2 || !isMapping(entry)) continue;
    const [[key, value] = ['', null], ...others] = Object.entries(entry);
    if (others.length > 0 || typeof value === 'object') continue;
    const written = [key, String(value)].map((one) => (/^[\w. -]+$/.test(one) ? one : `"${one}"`));
    told.set(JSON.stringify(element), {
      code: 'unknown-key',
      message: `An entry here has the keys ${keys.join(' and ')}, found ${quoted(key)} with ${sayFound(value)}; write { ${keys[0]}: ${written[0]}, ${keys[1]}: ${written[1]} }.`,
      path,
      onKey: true,
    });
  }
  if (told.size === 0) return [...drafts];
  const isOfLone = ({ code, path }: Draft): boolean =>
    (code === 'unknown-key' || code === 'missing-key') && told.has(JSON.stringify(path.slice(0, -1)));
  return [...drafts.filter((draft) => !isOfLone(draft)), ...told.values()];
}
