/** Calls of functions and charts. */
import { formulaFunctions, type Expression, type FormulaFunction } from '../deck/computed.ts';
import { quoted } from '../deck/quoting.ts';
import { sayList } from '../deck/say.ts';
import { notAllowed, type Context, type Typed } from './compile.ts';
import type { MathNode } from './expression-parser.ts';
import { FormulaFault, partOf } from './fault.ts';
import { areAlike, noUnit, ratioOf, sayUnit, toPower, type Unit } from './formula-units.ts';
import { unknownName, type NamedChart } from './names.ts';
import { brought, sameKind, sayNode } from './same-kind.ts';

const radians: Unit = { rad: 1 };

export function compileCall(node: MathNode, context: Context): Typed {
  const called = partOf<MathNode>(node, 'fn');
  if (called.type !== 'SymbolNode') throw notAllowed(node, 'A call of anything but a name');
  const name = partOf<string>(called, 'name');
  const args = partOf<MathNode[]>(node, 'args');
  const chart = context.names.chart(name);
  if (chart) return readChart(chart, args, context);
  if (!isFunction(name))
    throw unknownName(name, context.names, `A formula may call a chart or ${sayList(names, 'or')}`);
  const [least, most] = formulaFunctions[name];
  if (args.length < least || args.length > most) throw wrongCount(name, least, most, args.length);
  return compileFunction(name, args, context);
}

const names = Object.keys(formulaFunctions);
const isFunction = (name: string): name is FormulaFunction => Object.hasOwn(formulaFunctions, name);

function wrongCount(name: string, least: number, most: number, found: number): FormulaFault {
  const wanted = least === most ? String(least) : `${least} to ${most}`;
  return new FormulaFault({
    code: 'formula-not-allowed',
    why: `${quoted(name)} takes ${wanted} value${wanted === '1' ? '' : 's'} in its parentheses, found ${found}`,
    mend: found < least ? 'add what is missing' : 'take out what is too much',
    name,
  });
}

function compileFunction(name: FormulaFunction, args: readonly MathNode[], context: Context): Typed {
  const values = args.map(context.compile);
  const [first] = values as [Typed];
  const call = (of: readonly Expression[], unit: Unit): Typed => ({
    expression: { kind: 'call', name, of },
    unit,
  });
  switch (name) {
    case 'sqrt':
      return call([first.expression], toPower(first.unit, 0.5));
    case 'abs':
      return call([first.expression], first.unit);
    case 'min':
    case 'max':
    case 'atan2': {
      for (const [at, value] of values.entries()) sameKind(first, value, [args[0]!, args[at]!], 'compared');
      const alike = values.map((value) => brought(value, first.unit));
      return call(alike, name === 'atan2' ? radians : first.unit);
    }
    case 'round':
    case 'floor':
    case 'ceil':
      return call([plainNumber(first, args[0]!, name)], noUnit);
    case 'sin':
    case 'cos':
    case 'tan':
      if (!areAlike(first.unit, radians))
        throw wrongKind(name, 'an angle, in deg or rad', first.unit, args[0]!, 'write the number with “deg”');
      return call([brought(first, radians)], noUnit);
    case 'asin':
    case 'acos':
    case 'atan':
      return call([plainNumber(first, args[0]!, name)], radians);
  }
}

/** A whole number of what? Of something without a unit. */
function plainNumber(value: Typed, node: MathNode, name: string): Expression {
  if (!areAlike(value.unit, noUnit))
    throw wrongKind(name, 'a plain number', value.unit, node, 'divide by one unit of it: “/ 10 ft”');
  return brought(value, noUnit);
}

const wrongKind = (name: string, wanted: string, unit: Unit, node: MathNode, mend: string): FormulaFault =>
  new FormulaFault({
    code: 'formula-units',
    why: `${quoted(name)} takes ${wanted}, ${sayNode(node)} is in ${sayUnit(unit)}`,
    mend,
    name,
  });

function readChart(chart: NamedChart, args: readonly MathNode[], context: Context): Typed {
  const wanted = chart.inputs.length;
  if (args.length !== wanted) throw wrongCount(chart.id.replaceAll('-', '_'), wanted, wanted, args.length);
  const of = args.map((arg, at) => {
    const value = context.compile(arg);
    const input = chart.inputs[at]!;
    if (!areAlike(value.unit, input.unit))
      throw new FormulaFault({
        code: 'formula-units',
        why: `${quoted(input.label)} of the chart is in ${sayUnit(input.unit)}, ${sayNode(arg)} in ${sayUnit(value.unit)}`,
        mend: `give the chart’s inputs in its order: ${sayList(chart.inputs.map(({ label }) => label))}`,
      });
    const by = ratioOf(value.unit, input.unit);
    return by === 1 ? value.expression : ({ kind: 'scaled', of: value.expression, by } as const);
  });
  return { expression: { kind: 'chart', chart: chart.id, of }, unit: chart.unit };
}
