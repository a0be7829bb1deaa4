/** Bands, limits, gates and how a recorded flight shows them, checklists. */
import * as z from 'zod/mini';
import { amountOrFormula, rangeOrFormulas } from './formulas.ts';
import { about, amount, id, words } from './terms.ts';

export const bandSchema = z.strictObject({
  target: amountOrFormula(),
  desired: rangeOrFormulas(),
  adequate: rangeOrFormulas(),
  floor: z.optional(about('Never below this. Critical.', amountOrFormula())),
  ceiling: z.optional(about('Never above this. Critical.', amountOrFormula())),
  critical: z.optional(z.boolean()),
  because: z.optional(words()),
  source: z.optional(id()),
});

export const limitSchema = z.strictObject({
  floor: z.optional(amount()),
  ceiling: z.optional(amount()),
  because: z.optional(words()),
  source: z.optional(id()),
});

/** How a gate is recognised in a recorded flight. */
export const detectSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('falling'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('rising'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('distance'), ft: amount() }),
  z.strictObject({
    kind: z.literal('bearing'),
    relativeDeg: about('Bearing of the reference point relative to the nose; 90 or 270 is abeam.', amount()),
  }),
  z.strictObject({
    kind: z.literal('turned'),
    deg: about('Heading change since the gate before.', amount()),
  }),
]);

export const gateSchema = z.strictObject({
  id: id(),
  label: words(60),
  cue: about('What the pilot sees there.', words(200)),
  position: about(
    'Relative to the reference point, in feet along and to the right of the reference course (or formulas of the day that come to a length), with the course flown there relative to it.',
    z.strictObject({ aheadFt: amountOrFormula(), rightFt: amountOrFormula(), courseDeg: amount() }),
  ),
  detect: z.optional(detectSchema),
  values: about('Band per quantity.', z.record(z.string(), bandSchema)),
});

export const checklistSchema = z.strictObject({
  id: id(),
  label: words(60),
  completeBy: about('The gate by which it must be complete.', id()),
  source: z.optional(id()),
  because: z.optional(words()),
  items: z
    .array(
      z.strictObject({
        id: id(),
        challenge: words(80),
        response: about('States the value, not "set" or "checked".', words(80)),
        critical: z.optional(z.boolean()),
        because: z.optional(words()),
      }),
    )
    .check(z.minLength(1)),
});
