/**
 * The authored form of a deck: one zod definition from which the TypeScript types, the loader's
 * checks and the published JSON Schema are all made. Structure only; what can't be said as a shape
 * (ids that must exist, bands that must nest, units that must be known) is checked in `check/`.
 *
 * `zod/mini` because this module reaches the browser bundle.
 */
import * as z from 'zod/mini';
import { mostCharts, mostFormulas } from './limits.ts';
import { controlSchema, phaseSchema } from './schema/controls.ts';
import { formulaSchema } from './schema/formulas.ts';
import { chartSchema } from './schema/charts.ts';
import { flyingSchema } from './schema/flying.ts';
import { checklistSchema, gateSchema } from './schema/gates.ts';
import { windSchema } from './schema/motion.ts';
import { noteSchema, plateSchema } from './schema/plates.ts';
import { daySettingSchema, quantitySchema, sourceSchema } from './schema/quantities.ts';
import { tableSchema } from './schema/tables.ts';
import { about, id, words } from './schema/terms.ts';
import { workedSchema } from './schema/worked.ts';

export * from './schema/controls.ts';
export { formulaSchema } from './schema/formulas.ts';
export * from './schema/charts.ts';
export * from './schema/flying.ts';
export * from './schema/gates.ts';
export * from './schema/motion.ts';
export * from './schema/plates.ts';
export * from './schema/quantities.ts';
export * from './schema/tables.ts';
export { idPattern } from './schema/terms.ts';
export { workedSchema } from './schema/worked.ts';

export const deckFormat = 'gatecall-deck/1';

export const deckSchema = z.strictObject({
  format: z.literal(deckFormat),
  id: id(),
  title: words(100),
  version: about(
    'Semantic version.',
    z.string().check(z.regex(/^(0|[1-9]\d*)\.(0|[1-9]\d*)\.(0|[1-9]\d*)$/)),
  ),
  language: about('BCP 47 language tag.', z.string().check(z.regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/))),
  summary: z.optional(words()),
  cautions: z.array(words(600)).check(z.minLength(1)),
  reference: about(
    'The point all positions are relative to, and the quantity that is the height over it.',
    z.strictObject({
      label: words(60),
      course: z.optional(
        about('What the reference course is: "ship\'s course", "runway heading".', words(60)),
      ),
      height: id(),
    }),
  ),
  defaultSource: id(),
  sources: z.array(sourceSchema).check(z.minLength(1)),
  quantities: z.array(quantitySchema).check(z.minLength(1)),
  day: z.optional(z.array(daySettingSchema)),
  wind: z.optional(
    about('What makes the wind over the reference point, worked out anew when the day changes.', windSchema),
  ),
  formulas: z.optional(
    about(
      'Quantities of the day that are worked out from the others, in any order.',
      z.array(formulaSchema).check(z.maxLength(mostFormulas)),
    ),
  ),
  charts: z.optional(
    about(
      'Values read off against one or two inputs; formulas call them by their ids.',
      z.array(chartSchema).check(z.maxLength(mostCharts)),
    ),
  ),
  worked: z.optional(
    about('Numbers that the pilot works out for days that are drawn anew.', z.array(workedSchema)),
  ),
  gates: z.array(gateSchema).check(z.minLength(1)),
  flying: z.optional(
    about('What the aeroplane can do between two gates; each leg is checked against it.', flyingSchema),
  ),
  checklists: z.optional(z.array(checklistSchema)),
  controls: z.optional(z.array(controlSchema)),
  phases: z.optional(z.array(phaseSchema)),
  tables: z.optional(z.array(tableSchema)),
  plates: z.optional(z.array(plateSchema)),
  notes: z.optional(z.array(noteSchema)),
});
