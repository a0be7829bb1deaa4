/** The id that was meant by a text that can't be one. */
import type { DocumentPath } from './findings.ts';
import { isList, isMapping, valueAt, type Plain } from './plain-data.ts';

/** An id that resembles the text, or null when it has no letters to make one from. */
export function idLike(text: string): string | null {
  const id = text
    .slice(0, 100)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z0-9])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '');
  return id === '' ? null : id.slice(0, 60).replace(/-+$/, '');
}

/** The id of the part whose label or title was written where its id belongs; null for an id of its own. */
export function idWithLabel(text: string, path: DocumentPath, data: Plain): string | null {
  if (path[path.length - 1] === 'id' || !isMapping(data)) return null;
  const wanted = text.trim().toLowerCase();
  for (const part of Object.values(data))
    for (const element of isList(part) ? part : [])
      for (const name of ['label', 'title']) {
        const [label, id] = [valueAt(element, [name]), valueAt(element, ['id'])];
        if (typeof label === 'string' && typeof id === 'string' && label.trim().toLowerCase() === wanted)
          return id;
      }
  return null;
}
