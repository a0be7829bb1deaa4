/** Charts: a value read off against one or two inputs. */
import * as z from 'zod/mini';
import { mostBreakPoints } from '../limits.ts';
import { unitIds } from '../units.ts';
import { about, amount, id, words } from './terms.ts';

/** Numbers of one input or one row; a line of a chart is no use without a second end. */
const numbers = () => z.array(amount()).check(z.minLength(2), z.maxLength(mostBreakPoints));

export const chartInputSchema = z.strictObject({
  label: about('What the chart is read by: "Pressure altitude".', words(60)),
  unit: z.enum(unitIds),
  at: about(
    'The values of the input that the chart is drawn up for, from the lowest to the highest, with straight lines between and nothing outside.',
    numbers(),
  ),
  trend: z.optional(
    about(
      'What the chart’s value must do as this input rises: never fall (“rising”), or never rise (“falling”).',
      z.enum(['rising', 'falling']),
    ),
  ),
});

export const chartSchema = z.strictObject({
  id: id(),
  label: words(60),
  unit: z.enum(unitIds),
  inputs: z.array(chartInputSchema).check(z.minLength(1), z.maxLength(2)),
  values: z.optional(
    about('Of a chart with one input: a value for each value of the input, in the chart’s unit.', numbers()),
  ),
  rows: z.optional(
    about(
      'Of a chart with two inputs: a row for each value of the first, with a number for each value of the second, in the chart’s unit.',
      z.array(numbers()).check(z.minLength(2), z.maxLength(mostBreakPoints)),
    ),
  ),
  because: z.optional(words()),
  source: z.optional(id()),
});
