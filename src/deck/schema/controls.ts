/** Controls with their actions, and the phases between gates. */
import * as z from 'zod/mini';
import { limitSchema } from './gates.ts';
import { passSchema, sumSchema } from './motion.ts';
import { about, amount, id, range, words } from './terms.ts';

export const controlSchema = z.strictObject({
  id: id(),
  label: words(40),
  axis: z.optional(
    about(
      'Which arrow keys work it: vertical up and down, horizontal left and right.',
      z.enum(['vertical', 'horizontal']),
    ),
  ),
  lagS: z.optional(
    about(
      'Seconds from moving the control until the aeroplane answers, in a pass. At once when left out.',
      amount(),
    ),
  ),
  holdS: z.optional(
    about(
      'Seconds an action is held in a pass before the control goes back to neutral. Until the next decision when left out.',
      amount(),
    ),
  ),
  actions: about(
    'From the lowest (or leftmost) to the highest (or rightmost) choice.',
    z
      .array(
        z.strictObject({
          id: id(),
          label: words(40),
          spoken: z.optional(about('As an instruction in a sentence: "nose up".', words(60))),
          neutral: z.optional(about('What is meant when nothing is called for.', z.boolean())),
          opposes: z.optional(about('The action of the same control that does the opposite.', id())),
          effects: z.optional(
            about(
              'What it adds to the rate of quantities: unit of the quantity per second.',
              z.record(z.string(), amount()),
            ),
          ),
        }),
      )
      .check(z.minLength(2)),
  ),
});

export const phaseSchema = z.strictObject({
  id: id(),
  label: words(60),
  from: id(),
  to: id(),
  cue: z.optional(about('Where the pilot is, for spoken cues: "Abeam the spot".', words(80))),
  windowS: about('Seconds within which the correction must be called.', amount()),
  state: about(
    'The quantities shown, in the order they are called, each with the range that can occur here.',
    z.record(z.string(), range()),
  ),
  controls: z.array(id()),
  rates: z.optional(
    about(
      'How quantities change by themselves, per second: a constant plus factors of other quantities of this phase or of the day.',
      z.record(z.string(), sumSchema),
    ),
  ),
  limits: z.optional(z.record(z.string(), limitSchema)),
  pass: z.optional(
    about(
      'How the phase goes in a pass, flown from gate to gate. Without it the phase can’t be flown.',
      passSchema,
    ),
  ),
});
