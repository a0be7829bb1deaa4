/**
 * The independent path: the whole expression library, evaluating a formula's own text with quantities that
 * carry their units. It refuses by itself what doesn't fit together.
 */
import { all, create, type Unit as LibraryUnit } from 'mathjs';

const math = create(all!);

// The sizes are those of NIST Special Publication 811, appendix B; the library has the others.
math.createUnit('kt', math.unit(1852 / 3600, 'm/s'));
math.createUnit('nm', math.unit(1852, 'm'));
math.createUnit('inHg', math.unit(3386.389, 'Pa'), { override: true });
math.createUnit('rpm', math.unit(6, 'deg/s'));
math.createUnit('lb', math.unit(0.45359237, 'kg'), { override: true });
math.createUnit('aoa');
/** Of two numbers, or two of one kind. */
function angleOf(y: Result, x: Result): LibraryUnit {
  const unit = typeof y === 'number' ? null : y.toSI().formatUnits();
  const plain = (value: Result): number =>
    unit === null ? Number(math.add(value as number, 0)) : (value as LibraryUnit).toNumber(unit);
  return math.unit(Math.atan2(plain(y), plain(x)), 'rad');
}

// Inverse functions give a plain number there, and take only such.
math.import(
  Object.fromEntries(
    (['asin', 'acos', 'atan'] as const).map((name) => [
      name,
      (value: number) => math.unit(Math[name](value), 'rad'),
    ]),
  ),
  { override: true },
);
math.import({ atan2: angleOf }, { override: true });

export type Result = number | LibraryUnit;

/** Throws where units don't fit. @param scope name -> number, or number with unit as a text. */
export function evaluated(text: string, scope: Readonly<Record<string, number | string>>): Result {
  const values = Object.entries(scope).map(([name, value]) => [
    name,
    typeof value === 'number' ? value : math.unit(value),
  ]);
  // “min” alone is a function there.
  const minutes = text.replace(/\bmin\b(?!\()/g, 'minute');
  return math.evaluate(minutes, Object.fromEntries(values)) as Result;
}

/** How many of the other one of this unit is; throws where it is of another kind. */
export const ratio = (unit: string, other: string): number =>
  math.unit(1, named(unit)).toNumber(named(other));

/** True when a result is of the unit's kind; a plain number has none. */
export function isOfKind(result: Result, unit: string): boolean {
  const [found, wanted] = [result, unit === '' ? 1 : math.unit(1, named(unit))].map((one) =>
    typeof one === 'number' ? [] : (one as unknown as { dimensions: number[] }).dimensions,
  ) as [number[], number[]];
  const count = Math.max(found.length, wanted.length);
  return Array.from({ length: count }, (_, at) => (found[at] ?? 0) - (wanted[at] ?? 0)).every(
    (difference) => Math.abs(difference) < 1e-9,
  );
}

const named = (unit: string): string => unit.replace(/\bmin\b/g, 'minute');

/** In units of the international system. */
export const inSi = (result: Result): number =>
  typeof result === 'number' ? result : (result as unknown as { value: number }).value;

export const sizeOf = (unit: string): number => (unit === '' ? 1 : inSi(math.unit(1, named(unit))));
