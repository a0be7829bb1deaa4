/** What the aeroplane can do between two gates, and how its speed is called. */
import * as z from 'zod/mini';
import { about, amount, id, words } from './terms.ts';

export const flyingLimitsSchema = z.strictObject({
  bankDeg: z.optional(about('Most bank, degrees.', amount())),
  loadFactor: z.optional(about('Most load factor, g.', amount())),
  sinkFtMin: z.optional(about('Most mean sink between two gates, ft/min.', amount())),
  climbFtMin: z.optional(about('Most mean climb between two gates, ft/min.', amount())),
  decelerationKtS: z.optional(about('Most mean deceleration between two gates, kt a second.', amount())),
  accelerationKtS: z.optional(about('Most mean acceleration between two gates, kt a second.', amount())),
});

export const flyingLegSchema = z.strictObject({
  from: about('The gate at which the leg begins; it ends at the next one.', id()),
  seconds: z.optional(
    about(
      'How long it takes, where positions and speeds don’t tell: across or down in the hover, a landing.',
      amount(),
    ),
  ),
  most: z.optional(about('Limits of this leg in place of the aeroplane’s.', flyingLimitsSchema)),
  because: z.optional(words()),
});

export const flyingSchema = z.strictObject({
  airspeed: z.optional(about('The quantity that is the airspeed, in knots.', id())),
  closure: z.optional(
    about(
      'The quantity that is the speed over the reference point along the course, in knots: closure to a ship, ground speed to a runway. Used at gates without an airspeed.',
      id(),
    ),
  ),
  most: about(
    'The aeroplane’s limits between any two gates; what is left out is not limited.',
    flyingLimitsSchema,
  ),
  source: z.optional(id()),
  legs: z.optional(about('Legs that are flown otherwise than the rest.', z.array(flyingLegSchema))),
});
