import { publishedValues } from '../../src/reference/published.ts';
import type { PublishedValue } from '../../src/reference/types.ts';

export { publishedValues, type PublishedValue };

export function publishedValue(id: string): PublishedValue {
  const row = publishedValues.find((candidate) => candidate.id === id);
  if (!row) throw new Error(`No published value “${id}”.`);
  return row;
}
