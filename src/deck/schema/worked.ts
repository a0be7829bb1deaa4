/** Numbers that a pilot works out for the day: asked with fresh conditions each time. */
import * as z from 'zod/mini';
import { about, amount, id, range, words } from './terms.ts';

export const workedSchema = z.strictObject({
  id: id(),
  label: about('Short name for lists: "Closure at the start".', words(60)),
  ask: about('The question: "What closure does the day leave you?"', words(120)),
  quantity: about(
    'The quantity of the day that is asked for, one that a formula gives or the wind makes.',
    id(),
  ),
  gate: z.optional(id()),
  draw: about(
    'Settings of the day that are drawn anew each time, from the lowest to the highest; those left out are as the day has them.',
    z.record(z.string(), range()),
  ),
  desired: about('So far from the result, either way, an answer is desired.', amount()),
  adequate: about('So far from the result, either way, an answer is adequate.', amount()),
  windowS: z.optional(about('Seconds to work it out in; 30 when left out.', amount())),
  critical: z.optional(z.boolean()),
  because: z.optional(words()),
  source: z.optional(id()),
});
