/** Sources, quantities and the settings of the day. */
import * as z from 'zod/mini';
import { unitIds } from '../units.ts';
import { about, amount, condition, id, range, words } from './terms.ts';

export const sourceSchema = z.strictObject({
  id: id(),
  title: words(),
  kind: about(
    'published: printed in the named document; common practice: a fact of the trade without a source; invented: made up for this deck.',
    z.enum(['published', 'common practice', 'invented']),
  ),
  edition: z.optional(words()),
  place: z.optional(about('Chapter, paragraph, page.', words())),
});

export const quantitySchema = z.strictObject({
  id: id(),
  label: words(60),
  spoken: z.optional(about('How it is named in a sentence: "sink".', words(60))),
  unit: z.enum(unitIds),
  range: about('Lowest and highest value that can occur at all, in the unit.', range()),
  step: about('The precision it is called in, in the unit.', amount()),
  above: z.optional(about('The word for an error above the target: "high", "fast".', words(30))),
  below: z.optional(about('The word for an error below the target: "low", "slow".', words(30))),
  words: z.optional(
    about(
      'Words for intervals, used in spoken cues. The intervals must not overlap.',
      z.array(z.strictObject({ when: condition(), say: words(60) })),
    ),
  ),
});

export const daySettingSchema = z.strictObject({ quantity: id(), default: amount() });
