/** Simpson's composite rule, 24 double steps. */
const doubleSteps = 24;

/** Mean of a smooth function of the share 0 to 1 of a leg. */
export function meanOver(of: (share: number) => number): number {
  let sum = of(0) + of(1);
  for (let i = 1; i < 2 * doubleSteps; i++) sum += of(i / (2 * doubleSteps)) * (i % 2 === 1 ? 4 : 2);
  return sum / (6 * doubleSteps);
}
