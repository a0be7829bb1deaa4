/** Decision tables. */
import * as z from 'zod/mini';
import { about, condition, id, words } from './terms.ts';

export const ruleSchema = z.strictObject({
  id: id(),
  when: about(
    'Input -> FEEL numeric unary test; an input left out may have any value.',
    z.record(z.string(), condition()),
  ),
  then: about("An action of the table's control.", id()),
  because: words(),
  critical: z.optional(z.boolean()),
});

export const tableSchema = z.strictObject({
  id: id(),
  label: words(60),
  phases: z.array(id()).check(z.minLength(1)),
  control: id(),
  hit: about(
    'DMN hit policy. unique: rules never overlap; any: overlapping rules agree; first: the first that fits; priority: the one whose action comes first in `priority`.',
    z.enum(['unique', 'any', 'first', 'priority']),
  ),
  priority: z.optional(z.array(id())),
  overriding: z.optional(
    about(
      'Beats all other tables where one of its rules fits (go-around). Need not be complete.',
      z.boolean(),
    ),
  ),
  // The analysis looks at every combination of the inputs' edges.
  inputs: z.array(id()).check(z.minLength(1), z.maxLength(12)),
  source: z.optional(id()),
  rules: z.array(ruleSchema).check(z.minLength(1)),
});
