/**
 * The units of formulas: those of quantities, and a few that numbers may carry. Sizes and dimensions come
 * from the expression library; where it knows a unit by another name, or not, it is defined here.
 *
 * An angle is a dimension of its own, so that only an angle goes into a sine. A degree Celsius is a plain
 * scale with a dimension of its own: it is never turned into kelvin. Units of angle of attack too. A load
 * factor (g), a count and a per cent are plain numbers, a per cent a hundredth of one.
 */
import type { UnitId } from '../deck/units.ts';
import { addUnit, measureOf, type UnitMeasure } from './expression-parser.ts';

/** Symbols a number of a formula may carry, and which make up the unit of a quantity. */
export type UnitSymbol = Exclude<UnitId, 'ft/min' | 'count'> | 'rad' | 'min' | 'h';

/** Exponent of each symbol: { ft: 1, min: -1 }. A symbol without one is not there. */
export type Unit = Readonly<Partial<Record<UnitSymbol, number>>>;

export const noUnit: Unit = {};

// Their own names in the library: it has a nanometre “nm” and a gram “g”.
addUnit('gatecallKt', 1852 / 3600, 'm/s');
addUnit('gatecallNm', 1852, 'm');
// NIST Special Publication 811, appendix B.8: conventional inch of mercury.
addUnit('gatecallInHg', 3386.389, 'Pa');
addUnit('gatecallRpm', 360 / 60, 'deg/s');
addUnit('gatecallAoa', 1, null);
addUnit('gatecallDegC', 1, null);

const namesInLibrary: Readonly<Record<Exclude<UnitSymbol, 'g' | 'percent'>, string>> = {
  kt: 'gatecallKt',
  ft: 'ft',
  m: 'm',
  nm: 'gatecallNm',
  deg: 'deg',
  aoa: 'gatecallAoa',
  lb: 'lbm',
  kg: 'kg',
  l: 'l',
  hPa: 'hPa',
  inHg: 'gatecallInHg',
  degC: 'gatecallDegC',
  s: 's',
  rpm: 'gatecallRpm',
  rad: 'rad',
  min: 'minute',
  h: 'hour',
};

const measures: ReadonlyMap<string, UnitMeasure> = new Map<string, UnitMeasure>([
  ...Object.entries(namesInLibrary).map(([symbol, name]) => [symbol, measureOf(name)] as const),
  ['g', { size: 1, dimensions: [] }],
  ['percent', { size: 0.01, dimensions: [] }],
]);

export const unitSymbols: readonly UnitSymbol[] = [...measures.keys()] as UnitSymbol[];
export const isUnitSymbol = (name: string): name is UnitSymbol => measures.has(name);

/** The unit of a quantity. */
export function unitOf(id: UnitId): Unit {
  if (id === 'count') return noUnit;
  return id === 'ft/min' ? { ft: 1, min: -1 } : { [id]: 1 };
}

const entries = (unit: Unit): [UnitSymbol, number][] => Object.entries(unit) as [UnitSymbol, number][];

/** @param power of the second: 1 multiplies, -1 divides. */
export function multiplied(one: Unit, other: Unit, power = 1): Unit {
  const made = new Map(entries(one));
  for (const [symbol, exponent] of entries(other))
    made.set(symbol, (made.get(symbol) ?? 0) + power * exponent);
  return Object.fromEntries([...made].filter(([, exponent]) => exponent !== 0));
}

export const toPower = (unit: Unit, power: number): Unit => multiplied(noUnit, unit, power);

/** How many of the other one of this unit is: 6076.1 for nm and ft. Exactly 1 for the same unit. */
export function ratioOf(unit: Unit, other: Unit): number {
  let ratio = 1;
  for (const [symbol, exponent] of entries(multiplied(unit, other, -1)))
    ratio *= measures.get(symbol)!.size ** exponent;
  return ratio;
}

/** True when one can be turned into the other. */
export function areAlike(one: Unit, other: Unit): boolean {
  const dimensions: number[] = [];
  for (const [symbol, exponent] of entries(multiplied(one, other, -1)))
    for (const [at, dimension] of measures.get(symbol)!.dimensions.entries())
      dimensions[at] = (dimensions[at] ?? 0) + exponent * dimension;
  return dimensions.every((dimension) => Math.abs(dimension ?? 0) < 1e-9);
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** "kt", "ft/min", "kt²/ft"; "no unit" for a plain number. */
export function sayUnit(unit: Unit): string {
  const side = (sign: 1 | -1): string =>
    entries(unit)
      .filter(([, exponent]) => exponent * sign > 0)
      .map(([symbol, exponent]) => symbol + raised(Math.abs(exponent)))
      .join('·');
  const [over, under] = [side(1), side(-1)];
  if (over === '' && under === '') return 'no unit';
  return under === '' ? over : `${over || '1'}/${under}`;
}

function raised(exponent: number): string {
  if (exponent === 1) return '';
  if (!Number.isInteger(exponent)) return `^${exponent}`;
  return [...String(exponent)].map((digit) => superscripts[Number(digit)]!).join('');
}
