/** How a phase is flown in a pass: how it begins and ends, what disturbs it, when it is decided in. */
import * as z from 'zod/mini';
import { about, amount, id } from './terms.ts';

/** A constant plus factors of quantities; both may be left out. */
export const sumSchema = z.strictObject({
  constant: z.optional(amount()),
  factors: z.optional(z.record(z.string(), amount())),
});

/** A moment that can be recognised while a phase is flown. */
export const momentSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('falling'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('rising'), quantity: id(), value: amount() }),
  z.strictObject({ kind: z.literal('after'), seconds: amount() }),
]);

export const passSchema = z.strictObject({
  until: about(
    'When the phase is over and its last gate is crossed: a quantity falls or rises to a value, or so many seconds have gone.',
    momentSchema,
  ),
  longestS: z.optional(
    about(
      'Seconds after which it is over whatever the quantities say. A pass without it can get stuck.',
      amount(),
    ),
  ),
  through: z.optional(
    about(
      'Gates crossed on the way, between the first and the last.',
      z.array(z.strictObject({ gate: id(), at: momentSchema })),
    ),
  ),
  entry: z.optional(
    about(
      'Quantities that begin or jump here: a constant plus factors of what the phase before ended with, of the entries above, and of the day. Those left out go on as they are; at the start of a pass they have the target of the gate, or of the last gate before it that names one. A quantity that is not in “state” is flown unseen.',
      z.record(
        z.string(),
        z.strictObject({
          ...sumSchema.shape,
          spread: z.optional(
            about('A random error that comes in here: at most so much either way.', amount()),
          ),
          overS: z.optional(
            about(
              'Seconds over which it comes in, in place of a jump, where the phase before had a value of it. The gate between the two grades what it comes to.',
              amount(),
            ),
          ),
        }),
      ),
    ),
  ),
  start: z.optional(
    about(
      'Errors to begin with when a pass starts here: at most so much either way.',
      z.record(z.string(), amount()),
    ),
  ),
  effects: z.optional(
    about(
      'Action -> its effects in this phase, in place of its usual ones: unit of the quantity per second.',
      z.record(z.string(), z.record(z.string(), amount())),
    ),
  ),
  gusts: z.optional(
    about(
      'Restless air: quantity -> the most it is moved per second, now one way and now the other.',
      z.record(z.string(), amount()),
    ),
  ),
  decideEveryS: z.optional(about('Seconds between two decisions. Two when left out.', amount())),
});

export const windSchema = z.strictObject({
  speed: about('The quantity of the day that is the true wind speed, in knots.', id()),
  angle: about(
    'The quantity of the day that says where the true wind comes from: degrees to the right of the reference course.',
    id(),
  ),
  ship: z.optional(
    about('The quantity of the day that is the speed of the ship along the reference course.', id()),
  ),
  along: about(
    'The quantity that gets the wind felt there along the reference course, positive from ahead.',
    id(),
  ),
  across: z.optional(about('The quantity that gets the wind across it, positive from the right.', id())),
});
