/** The names of a formula: quantities and charts by their ids, with “_” for “-”, and two constants. */
import { quoted } from '../deck/quoting.ts';
import { mostSuggestions } from '../deck/limits.ts';
import { suggester } from '../deck/nearest.ts';
import type { Typed } from './compile.ts';
import { FormulaFault, type Faulty } from './fault.ts';
import { isUnitSymbol, noUnit, type Unit } from './formula-units.ts';

export interface NamedChart {
  readonly id: string;
  readonly unit: Unit;
  readonly inputs: readonly { readonly label: string; readonly unit: Unit }[];
}

export interface Names {
  /** True for everything that the name of a quantity can mean here, whether or not it may be used. */
  readonly has: (name: string) => boolean;
  /** What a quantity's name stands for here; null for a name that no quantity has. */
  readonly quantity: (name: string) => Typed | Omit<Faulty, 'ok'> | null;
  readonly chart: (name: string) => NamedChart | null;
  /** Names that could have been meant. */
  readonly known: ReadonlySet<string>;
  /** The formula's text, to recognise an id with its “-” in it. */
  readonly text: string;
}

export const nameOf = (id: string): string => id.replaceAll('-', '_');

const constants: ReadonlyMap<string, Typed> = new Map<string, Typed>([
  ['pi', { expression: { kind: 'number', value: Math.PI }, unit: noUnit }],
  // Standard acceleration of free fall, NIST Special Publication 811, appendix B.8.
  ['gravity', { expression: { kind: 'number', value: 9.80665, unit: 'm/s²' }, unit: { m: 1, s: -2 } }],
]);

export const constantNames: readonly string[] = [...constants.keys()];

/** Throws a fault for a name that stands for nothing here. */
export function compileName(name: string, names: Names): Typed {
  const meant = names.quantity(name);
  if (meant && 'expression' in meant) return meant;
  if (meant) throw new FormulaFault({ name, ...meant });
  const constant = constants.get(name);
  if (constant) return constant;
  if (isUnitSymbol(name))
    return { expression: { kind: 'number', value: 1, unit: name }, unit: { [name]: 1 } };
  if (names.chart(name))
    throw new FormulaFault({
      code: 'formula-name',
      why: `A chart is read with its inputs, found ${quoted(name)} without them`,
      mend: `write “${name}(…)”`,
      name,
    });
  throw unknownName(name, names, 'A name in a formula is a quantity of the day, a chart, “pi” or “gravity”');
}

export function unknownName(name: string, names: Names, rule: string): FormulaFault {
  const cut = idWithHyphen(name, names);
  const suggest = suggester(mostSuggestions);
  const near = cut ?? suggest(name, names.known);
  return new FormulaFault({
    code: 'formula-name',
    why: cut ? `In a formula “-” is a minus sign, found an id with it` : `${rule}, found ${quoted(name)}`,
    mend: near === null ? 'write the id of one, with “_” for “-”' : `write ${quoted(near)}`,
    name,
  });
}

/** `wind-over-deck`, read as a difference: the name that was meant. */
function idWithHyphen(name: string, names: Names): string | null {
  for (const known of names.known)
    if (
      known.includes('_') &&
      known.split('_').includes(name) &&
      names.text.includes(known.replaceAll('_', '-'))
    )
      return known;
  return null;
}
