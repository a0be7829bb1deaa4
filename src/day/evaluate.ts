/** Works out a compiled formula with plain numbers. */
import type { Comparison, Condition, Expression, FormulaFunction } from '../deck/computed.ts';

/** A result, or why there is none. */
export type Worked =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly why: string };

/** What a formula can ask for. */
export interface Surroundings {
  /** In the quantity's unit. */
  readonly quantity: (id: string) => Worked;
  /** Inputs in the units of the chart's inputs, the result in the chart's unit. */
  readonly chart: (id: string, inputs: readonly number[]) => Worked;
}

const refused = (why: string): Worked => ({ ok: false, why });

/** Never throws; what is no finite number is no value. Only the chosen side of a choice is looked at. */
export function evaluate(expression: Expression, surroundings: Surroundings): Worked {
  const worked = evaluated(expression, surroundings);
  return worked.ok && !Number.isFinite(worked.value) ? refused('it comes to no finite number') : worked;
}

function evaluated(expression: Expression, surroundings: Surroundings): Worked {
  switch (expression.kind) {
    case 'number':
      return { ok: true, value: expression.value };
    case 'quantity':
      return surroundings.quantity(expression.quantity);
    case 'scaled':
      return after([expression.of], surroundings, ([value]) => value! * expression.by);
    case 'negative':
      return after([expression.of], surroundings, ([value]) => -value!);
    case 'sum':
    case 'difference':
    case 'product':
    case 'quotient':
      return after([expression.left, expression.right], surroundings, ([left, right]) =>
        operators[expression.kind](left!, right!),
      );
    case 'power':
      return after([expression.of], surroundings, ([value]) =>
        value === 0 && expression.exponent < 0 ? 'it divides by zero' : value! ** expression.exponent,
      );
    case 'call':
      return after(expression.of, surroundings, functions[expression.name]);
    case 'chart':
      return after(expression.of, surroundings, (values) => surroundings.chart(expression.chart, values));
    case 'choice': {
      const holds = conditionHolds(expression.when, surroundings);
      if (typeof holds !== 'boolean') return holds;
      return evaluate(holds ? expression.then : expression.otherwise, surroundings);
    }
  }
}

/** Works out the parts from left to right; the first without a value decides. */
function after(
  parts: readonly Expression[],
  surroundings: Surroundings,
  work: (values: number[]) => number | string | Worked,
): Worked {
  const values: number[] = [];
  for (const part of parts) {
    const worked = evaluate(part, surroundings);
    if (!worked.ok) return worked;
    values.push(worked.value);
  }
  const result = work(values);
  if (typeof result === 'number') return { ok: true, value: result };
  return typeof result === 'string' ? refused(result) : result;
}

/** True or false, or why it can't be told. */
export function conditionHolds(when: Condition, surroundings: Surroundings): boolean | Worked {
  const left = evaluate(when.left, surroundings);
  if (!left.ok) return left;
  const right = evaluate(when.right, surroundings);
  return right.ok ? comparisons[when.is](left.value, right.value) : right;
}

const operators = {
  sum: (left: number, right: number) => left + right,
  difference: (left: number, right: number) => left - right,
  product: (left: number, right: number) => left * right,
  quotient: (left: number, right: number) => (right === 0 ? 'it divides by zero' : left / right),
};

/**
 * Two numbers that a change of units alone could have made different. In proportion only: in a mixed unit
 * (nm³/ft²) an ordinary length can be as small as any number.
 */
const alike = (one: number, other: number): boolean =>
  one === other || Math.abs(one - other) <= 1e-12 * Math.max(Math.abs(one), Math.abs(other));

const comparisons: Readonly<Record<Comparison, (left: number, right: number) => boolean>> = {
  '<': (left, right) => left < right && !alike(left, right),
  '<=': (left, right) => left < right || alike(left, right),
  '>': (left, right) => left > right && !alike(left, right),
  '>=': (left, right) => left > right || alike(left, right),
  '==': alike,
  '!=': (left, right) => !alike(left, right),
};

const functions: Readonly<Record<FormulaFunction, (values: readonly number[]) => number | string>> = {
  sqrt: ([value]) => (value! < 0 ? 'it takes the square root of a negative number' : Math.sqrt(value!)),
  abs: ([value]) => Math.abs(value!),
  min: (values) => Math.min(...values),
  max: (values) => Math.max(...values),
  // Halves go away from zero, below it too.
  round: ([value]) => Math.sign(value!) * Math.round(Math.abs(value!)),
  floor: ([value]) => (isWhole(value!) ? Math.round(value!) : Math.floor(value!)),
  ceil: ([value]) => (isWhole(value!) ? Math.round(value!) : Math.ceil(value!)),
  sin: ([value]) => Math.sin(value!),
  cos: ([value]) => Math.cos(value!),
  tan: ([value]) => Math.tan(value!),
  asin: ([value]) => (Math.abs(value!) > 1 ? noSuchAngle : Math.asin(value!)),
  acos: ([value]) => (Math.abs(value!) > 1 ? noSuchAngle : Math.acos(value!)),
  atan: ([value]) => Math.atan(value!),
  atan2: ([y, x]) => Math.atan2(y!, x!),
};

/** 3 that a change of units made 2.9999999999999996 is still 3. */
const isWhole = (value: number): boolean =>
  Math.abs(value - Math.round(value)) <= Math.max(1e-12 * Math.abs(value), 1e-15);

const noSuchAngle = 'no angle has such a sine or cosine';

/** The quantities an expression names, each once, in the order in which they stand. */
export function quantitiesIn(expression: Expression): string[] {
  const found = new Set<string>();
  const look = (part: Expression): void => {
    if (part.kind === 'quantity') found.add(part.quantity);
    for (const below of partsOf(part)) look(below);
  };
  look(expression);
  return [...found];
}

/** What an expression is made of, one level down. */
export function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case 'number':
    case 'quantity':
      return [];
    case 'scaled':
    case 'negative':
    case 'power':
      return [expression.of];
    case 'call':
    case 'chart':
      return expression.of;
    case 'choice':
      return [expression.when.left, expression.when.right, expression.then, expression.otherwise];
    default:
      return [expression.left, expression.right];
  }
}
