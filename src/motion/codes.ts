/** What the physics of a procedure can find in a deck. Each has a failing example in the tests. */
export const motionCodes = [
  /** A leg that passes a limit of the aeroplane, whatever adequate values are flown. */
  'leg-not-flyable',
  /** A leg that passes a limit at its targets, and doesn't with other adequate values. */
  'leg-not-at-targets',
  /** A leg that can't be worked out, so that nothing of it is checked. */
  'leg-not-worked-out',
] as const;

export type MotionCode = (typeof motionCodes)[number];
