/**
 * What the formulas of a deck became when it was loaded: plain data, worked out with plain numbers. It is
 * not part of the authored document; the loader attaches it.
 */

export type Comparison = '<' | '<=' | '>' | '>=' | '==' | '!=';

/** What a formula may call, charts aside, with the least and the most arguments. */
export const formulaFunctions = {
  sqrt: [1, 1],
  abs: [1, 1],
  min: [1, 12],
  max: [1, 12],
  round: [1, 1],
  floor: [1, 1],
  ceil: [1, 1],
  sin: [1, 1],
  cos: [1, 1],
  tan: [1, 1],
  asin: [1, 1],
  acos: [1, 1],
  atan: [1, 1],
  atan2: [2, 2],
} as const satisfies Record<string, readonly [number, number]>;

export type FormulaFunction = keyof typeof formulaFunctions;

/**
 * An expression in plain numbers. Units were looked at once; where two of them differed, `scaled` brings
 * one to the other. Angles go into functions in radians.
 */
export type Expression =
  /** As written, in the unit written beside it. */
  | { readonly kind: 'number'; readonly value: number; readonly unit?: string }
  /** A quantity of the day, in its own unit. */
  | { readonly kind: 'quantity'; readonly quantity: string }
  | { readonly kind: 'scaled'; readonly of: Expression; readonly by: number }
  | {
      readonly kind: 'sum' | 'difference' | 'product' | 'quotient';
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'negative'; readonly of: Expression }
  | { readonly kind: 'power'; readonly of: Expression; readonly exponent: number }
  | { readonly kind: 'call'; readonly name: FormulaFunction; readonly of: readonly Expression[] }
  /** Arguments in the units of the chart's inputs, the result in the chart's unit. */
  | { readonly kind: 'chart'; readonly chart: string; readonly of: readonly Expression[] }
  | {
      readonly kind: 'choice';
      readonly when: Condition;
      readonly then: Expression;
      readonly otherwise: Expression;
    };

export interface Condition {
  readonly is: Comparison;
  readonly left: Expression;
  readonly right: Expression;
}

export interface ComputedQuantity {
  /** The derived quantity of the day. */
  readonly quantity: string;
  /** As the author wrote it. */
  readonly text: string;
  /** The result in the quantity's unit. */
  readonly expression: Expression;
}

/** Which number of a band: its target, a limit, or an end of desired or adequate. */
export type BandNumber = readonly ['target' | 'floor' | 'ceiling'] | readonly ['desired' | 'adequate', 0 | 1];

export interface ComputedNumber {
  readonly gate: string;
  readonly quantity: string;
  readonly number: BandNumber;
  readonly text: string;
  /** In the quantity's unit, before it is rounded to the quantity's step. */
  readonly expression: Expression;
}

/** A place of a gate that moves with the day. */
export interface ComputedPosition {
  readonly gate: string;
  readonly side: 'aheadFt' | 'rightFt';
  readonly text: string;
  /** In feet. */
  readonly expression: Expression;
}

export interface Computed {
  /** In an order in which each needs only those before it. */
  readonly quantities: readonly ComputedQuantity[];
  /** By gate and quantity, in the order of the deck. */
  readonly numbers: readonly ComputedNumber[];
  readonly positions: readonly ComputedPosition[];
}
