/**
 * A formula's text -> an expression in plain numbers, or why there is none. Only what is listed here may
 * stand in a formula; its units are looked at once, here.
 */
import type { Expression } from '../deck/computed.ts';
import { quoted } from '../deck/quoting.ts';
import { whyNotParsed } from './before-parsing.ts';
import { compileCall } from './calls.ts';
import { compileChoice } from './choices.ts';
import { parseExpression, type MathNode } from './expression-parser.ts';
import { multiplied, noUnit, toPower, type Unit } from './formula-units.ts';
import { compileName, type Names } from './names.ts';
import { constantWithUnit, unitWritten } from './number-with-unit.ts';
import { FormulaFault, partOf, type Faulty } from './fault.ts';
import { brought, sameKind } from './same-kind.ts';

/** An expression with the unit its plain number is in. */
export interface Typed {
  readonly expression: Expression;
  readonly unit: Unit;
}

export type Compiled = ({ readonly ok: true } & Typed) | Faulty;

/** What the parts of a formula are compiled with. */
export interface Context {
  readonly names: Names;
  readonly compile: (node: MathNode) => Typed;
}

/** The largest power of a formula: more is no law of flight. */
export const mostPower = 6;
const mostAmount = 1e12;

/** Never throws; bounded in time by the length of a formula. */
export function compileFormula(text: string, names: Names): Compiled {
  const refusal = whyNotParsed(text);
  if (refusal) return { ok: false, code: 'formula-not-allowed', ...refusal };
  // A line break would begin a second statement; in the file it is a blank.
  const parsed = parseExpression(text.replace(/\s/g, ' '));
  if (!parsed.ok)
    return {
      ok: false,
      code: 'formula-syntax',
      why: `A formula is a sum, product or call such as “2 * sink + 15 kt”, this one can’t be read: ${parsed.why.replace(/\.$/, '')}`,
      mend: 'look at its marks and parentheses',
      ...(parsed.into === undefined ? {} : { into: parsed.into }),
    };
  try {
    const context: Context = { names, compile: (node) => compileNode(node, context) };
    return { ok: true, ...context.compile(parsed.node) };
  } catch (error) {
    if (error instanceof FormulaFault) return placedIn(text, error.faulty);
    throw error;
  }
}

/** The place of the name that a fault is about. */
function placedIn(text: string, { name, ...faulty }: Faulty): Faulty {
  const into = name === undefined ? -1 : text.search(new RegExp(`(?<![A-Za-z0-9_])${name}(?![A-Za-z0-9_])`));
  return into < 0 ? faulty : { ...faulty, into };
}

function compileNode(node: MathNode, context: Context): Typed {
  switch (node.type) {
    case 'ParenthesisNode':
      return context.compile(partOf(node, 'content'));
    case 'ConstantNode':
      return { expression: { kind: 'number', value: amountIn(node) }, unit: noUnit };
    case 'SymbolNode':
      return compileName(partOf(node, 'name'), context.names);
    case 'OperatorNode':
      return compileOperator(node, context);
    case 'ConditionalNode':
      return compileChoice(node, context);
    case 'FunctionNode':
      return compileCall(node, context);
    default:
      throw notAllowed(node, things[node.type] ?? 'This');
  }
}

const things: Readonly<Record<string, string>> = {
  AssignmentNode: 'An assignment',
  FunctionAssignmentNode: 'A function of one’s own',
  AccessorNode: 'Asking for a property',
  IndexNode: 'An index',
  ArrayNode: 'A matrix',
  ObjectNode: 'An object',
  BlockNode: 'A second statement',
  RangeNode: 'A range',
  RelationalNode: 'A chain of comparisons',
};

export const notAllowed = (node: MathNode, what: string): FormulaFault =>
  new FormulaFault({
    code: 'formula-not-allowed',
    why: `${what} can’t stand in a formula, found ${quoted(String(node))}`,
    mend: 'use numbers, quantities of the day, charts, + - * / ^, “? :” and the listed functions',
  });

export function amountIn(node: MathNode): number {
  const value = partOf<unknown>(node, 'value');
  if (typeof value !== 'number' || !Number.isFinite(value) || Math.abs(value) > mostAmount)
    throw notAllowed(node, 'What is no number between -1e12 and 1e12');
  return value;
}

function compileOperator(node: MathNode, context: Context): Typed {
  const operator = partOf<string>(node, 'fn');
  const args = partOf<MathNode[]>(node, 'args');
  const [first, second] = args as [MathNode, MathNode];
  switch (operator) {
    case 'unaryMinus': {
      const { expression, unit } = context.compile(first);
      return { expression: { kind: 'negative', of: expression }, unit };
    }
    case 'unaryPlus':
      return context.compile(first);
    case 'add':
    case 'subtract': {
      const [left, right] = [context.compile(first), context.compile(second)];
      sameKind(left, right, [first, second], operator === 'add' ? 'added' : 'subtracted');
      const kind = operator === 'add' ? 'sum' : 'difference';
      return {
        expression: { kind, left: left.expression, right: brought(right, left.unit) },
        unit: left.unit,
      };
    }
    case 'multiply': {
      if (partOf<boolean>(node, 'implicit')) return constantWithUnit(node, context.names);
      const [left, right] = [context.compile(first), context.compile(second)];
      return {
        expression: { kind: 'product', left: left.expression, right: right.expression },
        unit: multiplied(left.unit, right.unit),
      };
    }
    case 'divide':
      return compileQuotient(first, second, context);
    case 'pow':
      return compilePower(node, first, second, context);
    default:
      throw notAllowed(
        node,
        operatorNames[operator] ?? `The mark ${quoted(partOf<string>(node, 'op'))} here`,
      );
  }
}

const operatorNames: Readonly<Record<string, string>> = {
  factorial: 'A factorial',
  mod: 'A remainder',
  to: 'A change of units',
  and: 'The word “and”',
  or: 'The word “or”',
  not: 'The word “not”',
  xor: 'The word “xor”',
  larger: 'A comparison outside of “? :”',
  smaller: 'A comparison outside of “? :”',
  largerEq: 'A comparison outside of “? :”',
  smallerEq: 'A comparison outside of “? :”',
  equal: 'A comparison outside of “? :”',
  unequal: 'A comparison outside of “? :”',
};

/** `15 ft/min` is one number with its unit, for whoever reads the working. */
function compileQuotient(first: MathNode, second: MathNode, context: Context): Typed {
  const left = context.compile(first);
  const written = unitWritten(second, context.names);
  const { expression } = left;
  if (written && expression.kind === 'number' && expression.unit !== undefined) {
    const unit = multiplied(left.unit, written.unit, -1);
    return { expression: { ...expression, unit: `${expression.unit}/${written.text}` }, unit };
  }
  const right = context.compile(second);
  return {
    expression: { kind: 'quotient', left: left.expression, right: right.expression },
    unit: multiplied(left.unit, right.unit, -1),
  };
}

function compilePower(node: MathNode, base: MathNode, power: MathNode, context: Context): Typed {
  const exponent = wholeNumber(power);
  if (exponent === null || Math.abs(exponent) > mostPower)
    throw notAllowed(node, `A power other than a whole number from -${mostPower} to ${mostPower}`);
  const { expression, unit } = context.compile(base);
  return { expression: { kind: 'power', of: expression, exponent }, unit: toPower(unit, exponent) };
}

/** A number written as such, with or without a sign; null for anything else. */
export function wholeNumber(node: MathNode): number | null {
  if (node.type === 'ParenthesisNode') return wholeNumber(partOf(node, 'content'));
  if (node.type === 'OperatorNode' && partOf(node, 'fn') === 'unaryMinus') {
    const below = wholeNumber(partOf<MathNode[]>(node, 'args')[0]!);
    return below === null ? null : -below;
  }
  const value = node.type === 'ConstantNode' ? partOf<unknown>(node, 'value') : null;
  return typeof value === 'number' && Number.isInteger(value) ? value : null;
}
