/** What the tool's own formulas give for a published value. */
import { formulas } from './formulas.ts';
import { publishedValues } from './published.ts';
import type { Computation } from './types.ts';

const computations: ReadonlyMap<string, Computation> = new Map(
  publishedValues.flatMap(({ id, compute }) => (compute ? [[id, compute] as const] : [])),
);

/** In the row's unit; null for a fact without a formula, and for a row that isn't there. */
export function computedFor(id: string): number | null {
  const compute = computations.get(id);
  const formula = compute && formulas[compute.formula];
  if (!formula) return null;
  const given = formula.takes.map((name) => compute.with[name]);
  return given.every((value) => value !== undefined) ? formula.gives(...given) : null;
}

/** The formula behind it, as it would be written down: "g tan(bank) / airspeed"; null as above. */
export function formulaOf(id: string): string | null {
  const compute = computations.get(id);
  return compute ? (formulas[compute.formula]?.says ?? null) : null;
}
