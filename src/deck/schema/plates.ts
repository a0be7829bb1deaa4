/** Pictures made of primitives, and the few free questions. */
import * as z from 'zod/mini';
import { about, amount, id, words } from './terms.ts';

const point = () => z.tuple([amount(), amount()]);
export const plateSchema = z.strictObject({
  id: id(),
  label: words(60),
  size: about('Width and height of the drawing, in the unit.', point()),
  unit: z.enum(['ft', 'm', 'nm']),
  source: z.optional(id()),
  reference: z.optional(
    about(
      "Where the deck's reference point lies on the drawing, and which way the reference course points there, in degrees clockwise from up. With it the plate's outlines are drawn on the circuit picture.",
      z.strictObject({ at: point(), courseDeg: amount() }),
    ),
  ),
  shapes: z.array(
    z.discriminatedUnion('shape', [
      z.strictObject({ shape: z.literal('outline'), points: z.array(point()).check(z.minLength(3)) }),
      z.strictObject({
        shape: z.literal('line'),
        points: z.array(point()).check(z.minLength(2)),
        dashed: z.optional(z.boolean()),
      }),
      z.strictObject({ shape: z.literal('circle'), at: point(), radius: amount() }),
      z.strictObject({ shape: z.literal('label'), at: point(), text: words(30) }),
    ]),
  ),
  spots: z.array(
    z.strictObject({
      id: id(),
      label: words(60),
      at: point(),
      desiredWithin: amount(),
      adequateWithin: amount(),
      critical: z.optional(z.boolean()),
      because: z.optional(words()),
    }),
  ),
});

export const noteSchema = z.strictObject({
  id: id(),
  ask: words(),
  answer: words(200),
  accept: z.optional(about('Other ways of typing the same answer.', z.array(words(200)))),
  choices: z.optional(about('Wrong answers; with them the note is asked as a choice.', z.array(words(200)))),
  gate: z.optional(id()),
  critical: z.optional(z.boolean()),
  because: z.optional(words()),
  source: z.optional(id()),
});
