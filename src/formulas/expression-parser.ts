/**
 * The expression library, as little of it as is needed: it parses a formula to a tree and knows its units.
 * Nothing is ever evaluated by it, so whatever else it can do is out of a formula's reach.
 */
import {
  create,
  createUnitDependencies,
  parseDependencies,
  unitDependencies,
  type FactoryFunctionMap,
  type MathNode,
} from 'mathjs';

// The types of the package take a part for one that may be missing.
const parts = { parseDependencies, unitDependencies, createUnitDependencies } as FactoryFunctionMap;
const library = create(parts);

export type { MathNode };

export type Parsed =
  | { readonly ok: true; readonly node: MathNode }
  /** `into`: how far into the text, where that is known. */
  | { readonly ok: false; readonly why: string; readonly into?: number };

/** @param text of bounded length and nesting, see `whyNotParsed`. Never throws. */
export function parseExpression(text: string): Parsed {
  try {
    return { ok: true, node: library.parse(text) };
  } catch (error) {
    const { message, char } = error as { readonly message?: unknown; readonly char?: unknown };
    const why = typeof message === 'string' ? message.replace(/ \(char \d+\)$/, '') : 'it can’t be read';
    return typeof char === 'number' ? { ok: false, why, into: char - 1 } : { ok: false, why };
  }
}

/** A unit's size in units of the international system, and the exponents of its base dimensions. */
export interface UnitMeasure {
  readonly size: number;
  readonly dimensions: readonly number[];
}

/** @param base true for a scale of its own, that no other unit is a multiple of. */
export function addUnit(name: string, size: number, of: string | null): void {
  if (of === null) library.createUnit(name);
  else library.createUnit(name, library.unit(size, of));
}

/** @param expression in the library's own names: "ft/min". */
export function measureOf(expression: string): UnitMeasure {
  const unit = library.unit(1, expression) as unknown as { value: number; dimensions: number[] };
  return { size: unit.value, dimensions: [...unit.dimensions] };
}
