/** A number and the unit behind it: `15 kt`, `3 ft^2`. */
import type { Typed } from './compile.ts';
import { amountIn, notAllowed, wholeNumber } from './compile.ts';
import type { MathNode } from './expression-parser.ts';
import { FormulaFault, partOf } from './fault.ts';
import { isUnitSymbol, noUnit, toPower, unitSymbols, type Unit } from './formula-units.ts';
import type { Names } from './names.ts';
import { nearestOf } from '../deck/nearest.ts';
import { quoted } from '../deck/quoting.ts';
import { sayList } from '../deck/say.ts';
import { units } from '../deck/units.ts';

export interface WrittenUnit {
  readonly unit: Unit;
  readonly text: string;
}

/** Two things side by side are a number and its unit, or nothing that can be read in one way only. */
export function constantWithUnit(node: MathNode, names: Names): Typed {
  const [number, beside] = partOf<MathNode[]>(node, 'args') as [MathNode, MathNode];
  const amount = numberOf(number);
  if (amount === null) throw sideBySide(node);
  const base = beside.type === 'OperatorNode' ? partOf<MathNode[]>(beside, 'args')[0]! : beside;
  if (base.type !== 'SymbolNode') throw sideBySide(node);
  const name = partOf<string>(base, 'name');
  const written = unitNamed(beside);
  if (written)
    return { expression: { kind: 'number', value: amount, ...textOf(written) }, unit: written.unit };
  if (names.has(name)) throw sideBySide(node);
  const near = unitMeantBy(name) ?? nearestOf(name.slice(0, 60), [...unitSymbols, 'count']);
  throw new FormulaFault({
    code: 'formula-name',
    why: `Behind a number stands a unit, one of ${sayList([...unitSymbols, 'count'], 'or')}, found ${quoted(name)}`,
    mend: near ? `write ${quoted(near)}` : 'write one of them, or “*” between number and name',
    name,
  });
}

/** "knots" -> kt, by the words under which a unit is typed elsewhere. */
const unitMeantBy = (name: string): string | null =>
  Object.entries(units).find(([, { typed }]) =>
    (typed as readonly string[]).includes(name.toLowerCase()),
  )?.[0] ?? null;

/** `ft`, `s^2` where no quantity has that name: the unit that a number is divided by. */
export function unitWritten(node: MathNode, names: Names): WrittenUnit | null {
  const base = node.type === 'OperatorNode' ? partOf<MathNode[]>(node, 'args')[0]! : node;
  if (base.type !== 'SymbolNode' || names.has(partOf<string>(base, 'name'))) return null;
  return unitNamed(node);
}

function unitNamed(node: MathNode): WrittenUnit | null {
  if (node.type === 'SymbolNode') {
    const name = partOf<string>(node, 'name');
    if (name === 'count') return { unit: noUnit, text: '' };
    return isUnitSymbol(name) ? { unit: { [name]: 1 }, text: name } : null;
  }
  if (node.type !== 'OperatorNode' || partOf(node, 'fn') !== 'pow') return null;
  const [base, power] = partOf<MathNode[]>(node, 'args') as [MathNode, MathNode];
  const exponent = wholeNumber(power);
  const written = base.type === 'SymbolNode' ? unitNamed(base) : null;
  if (!written || exponent === null || exponent < 1 || exponent > 4) return null;
  return { unit: toPower(written.unit, exponent), text: written.text + (superscripts[exponent] ?? '') };
}

const superscripts: Readonly<Record<number, string>> = { 2: '²', 3: '³', 4: '⁴' };

const textOf = ({ text }: WrittenUnit): { unit?: string } => (text === '' ? {} : { unit: text });

function numberOf(node: MathNode): number | null {
  if (node.type === 'ConstantNode') return amountIn(node);
  if (node.type !== 'OperatorNode' || partOf(node, 'fn') !== 'unaryMinus') return null;
  const below = numberOf(partOf<MathNode[]>(node, 'args')[0]!);
  return below === null ? null : -below;
}

const sideBySide = (node: MathNode): FormulaFault => notAllowed(node, 'A product without “*”');
