/** Numbers that are added, compared or chosen from must be of one kind. */
import type { Expression } from '../deck/computed.ts';
import { quoted } from '../deck/quoting.ts';
import type { Typed } from './compile.ts';
import type { MathNode } from './expression-parser.ts';
import { FormulaFault } from './fault.ts';
import { areAlike, ratioOf, sayUnit, type Unit } from './formula-units.ts';

/** The expression in another unit of its kind. */
export function brought({ expression, unit }: Typed, wanted: Unit): Expression {
  const by = ratioOf(unit, wanted);
  return by === 1 ? expression : { kind: 'scaled', of: expression, by };
}

/** Throws a fault when the two can't be `what`: “added”, “compared”. */
export function sameKind(
  one: Typed,
  other: Typed,
  [first, second]: readonly [MathNode, MathNode],
  what: string,
): void {
  const fits = areAlike(one.unit, other.unit) && !isBareBeside(one, other) && !isBareBeside(other, one);
  if (fits) return;
  const [unitOfOne, unitOfOther] = [sayUnit(one.unit), sayUnit(other.unit)];
  throw new FormulaFault({
    code: 'formula-units',
    why: `What is ${what} must be of one kind: ${sayNode(first)} is in ${unitOfOne}, ${sayNode(second)} in ${unitOfOther}`,
    mend: mendOf(one, other),
  });
}

/** 5 beside a per cent: it may be meant as 5 %, and would be taken for 500 %. */
const isBareBeside = (one: Typed, other: Typed): boolean =>
  one.expression.kind === 'number' &&
  one.expression.value !== 0 &&
  Object.keys(one.unit).length === 0 &&
  sayUnit(other.unit) === 'percent';

function mendOf(one: Typed, other: Typed): string {
  for (const [bare, beside] of [
    [one, other],
    [other, one],
  ] as const)
    if (bare.expression.kind === 'number' && bare.expression.unit === undefined)
      return `write the number with its unit: “${bare.expression.value} ${sayUnit(beside.unit)}”`;
  return 'take a quantity of the same kind, or multiply or divide by one that makes it so';
}

/** A name or number as it stands; anything longer in quotes. */
export const sayNode = (node: MathNode): string =>
  node.type === 'SymbolNode' || node.type === 'ConstantNode' ? String(node) : quoted(String(node));
