import table from '../../shared/reference/published-values.json' with { type: 'json' };

export interface PublishedValue {
  readonly id: string;
  readonly topic: string;
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly tolerance: number;
  readonly source: string;
  readonly status: string;
}

export const publishedValues: readonly PublishedValue[] = table.values;

export function publishedValue(id: string): PublishedValue {
  const row = publishedValues.find((candidate) => candidate.id === id);
  if (!row) throw new Error(`No published value “${id}”.`);
  return row;
}
