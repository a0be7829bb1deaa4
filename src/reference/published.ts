/** The published values, as they stand in shared/reference/published-values.json. */
import table from '../../shared/reference/published-values.json' with { type: 'json' };
import type { PublishedValue } from './types.ts';

/** In the table's order. A test holds the file to the type: TypeScript widens what it reads from JSON. */
export const publishedValues = table.values as readonly unknown[] as readonly PublishedValue[];
