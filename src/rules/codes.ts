/** Everything this folder can find in a deck. Each has a failing example in the tests. */
export const ruleCodes = [
  /** A condition is no FEEL numeric unary test. */
  'bad-condition',
  /** A condition reads well but holds nothing of its quantity's range. */
  'condition-outside-range',
  /** A comma between two digits, read as two tests. */
  'doubtful-comma',
  /** Two words of a quantity fit the same value. */
  'overlapping-words',
  /** A state that no rule of a table answers. */
  'gap',
  /** A state in which rules of a table contradict each other or break its hit policy. */
  'conflict',
  /** A rule that fits no state, or only states that other rules take. */
  'never-fires',
  /** A rule that fits only where an overriding table decides. */
  'always-overridden',
  /** A rule that decides only values between two steps, which no question can show. */
  'between-steps',
  /** A rule without which every decision would be the same. */
  'pointless-rule',
  /** A setting drawn for a worked value that has no say in it. */
  'draw-without-effect',
  /** Draws for a worked value that come to none. */
  'draw-without-value',
  /** Draws for a worked value to which one answer is desired throughout. */
  'draw-too-narrow',
  /** The analysis stopped early, or found more than it shows. */
  'analysis-incomplete',
] as const;

export type RuleCode = (typeof ruleCodes)[number];
