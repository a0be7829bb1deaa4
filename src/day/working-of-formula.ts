/** The line that says how a formula comes to its result: in names, in today's numbers, and the result. */
import type { Comparison, ComputedQuantity, Expression } from '../deck/computed.ts';
import { quantityOf } from '../deck/lookup.ts';
import { sayNumber, sayValue, unitSuffix } from '../deck/say.ts';
import type { Deck, Quantity } from '../deck/types.ts';
import { units, type UnitId } from '../deck/units.ts';
import { onStep } from './band-of-day.ts';
import type { ValuesOfDay } from './day-of.ts';
import { conditionHolds } from './evaluate.ts';
import { spokenName } from './spoken-name.ts';
import type { WorkingLine } from './types.ts';

export function formulaLine(deck: Deck, formula: ComputedQuantity, day: ValuesOfDay): WorkingLine {
  const quantity = quantityOf(deck, formula.quantity);
  const chosen = chosenIn(formula.expression, day);
  const names = (id: string): string => spokenName(quantityOf(deck, id));
  const values = (id: string): string => sayRounded(day.values[id] ?? 0, quantityOf(deck, id));
  return {
    says: `${quantity.label} = ${sayExpression(chosen, names, deck)}`,
    with: `= ${sayExpression(chosen, values, deck)}`,
    gives: `= ${sayRounded(day.values[formula.quantity] ?? 0, quantity)}`,
  };
}

/** As it is called: to the quantity's step. */
const sayRounded = (value: number, quantity: Quantity): string =>
  sayValue(onStep(value, quantity.step), quantity);

/** Only the side that a condition chooses today is worked out. */
function chosenIn(expression: Expression, day: ValuesOfDay): Expression {
  if (expression.kind !== 'choice') return expression;
  const holds = conditionHolds(expression.when, day.surroundings) === true;
  return chosenIn(holds ? expression.then : expression.otherwise, day);
}

type Say = (quantity: string) => string;

const signs = { sum: '+', difference: '−', product: '×', quotient: '/' } as const;

/** How tightly a sign binds: what binds less stands in parentheses inside what binds more. */
const tightness: Readonly<Record<Expression['kind'], number>> = {
  choice: 0,
  sum: 1,
  difference: 1,
  product: 2,
  quotient: 2,
  negative: 3,
  power: 4,
  scaled: 5,
  number: 5,
  quantity: 5,
  call: 5,
  chart: 5,
};

export function sayExpression(expression: Expression, say: Say, deck: Deck): string {
  const inside = (part: Expression, least: number): string => {
    const bare = unscaled(part);
    const text = sayExpression(bare, say, deck);
    return tightness[bare.kind] < least ? `(${text})` : text;
  };
  switch (expression.kind) {
    case 'number':
      return sayConstant(expression.value, expression.unit);
    case 'quantity':
      return say(expression.quantity);
    case 'scaled':
      return sayExpression(unscaled(expression), say, deck);
    case 'negative':
      return `−${inside(expression.of, 3)}`;
    case 'power':
      return `${powerBase(inside(expression.of, 5))}${raised(expression.exponent)}`;
    case 'sum':
    case 'difference':
    case 'product':
    case 'quotient': {
      const own = tightness[expression.kind];
      const isOneWay = expression.kind === 'difference' || expression.kind === 'quotient';
      return `${inside(expression.left, own)} ${signs[expression.kind]} ${inside(expression.right, isOneWay ? own + 1 : own)}`;
    }
    case 'call':
      return `${expression.name}(${expression.of.map((part) => inside(part, 0)).join(', ')})`;
    case 'chart':
      return `${chartName(deck, expression.chart)} (${expression.of.map((part) => inside(part, 0)).join(', ')})`;
    case 'choice': {
      const { when, then, otherwise } = expression;
      return `${inside(then, 1)} where ${inside(when.left, 1)} ${comparisons[when.is]} ${inside(when.right, 1)}, else ${inside(otherwise, 1)}`;
    }
  }
}

const comparisons: Readonly<Record<Comparison, string>> = {
  '<': '<',
  '<=': '≤',
  '>': '>',
  '>=': '≥',
  '==': '=',
  '!=': '≠',
};

/** A power takes a number together with its unit: (150 kt)². */
const powerBase = (text: string): string => (/^[^(].*\s/.test(text) ? `(${text})` : text);

/** A change of units is no step of the working: the units stand beside the numbers. */
const unscaled = (expression: Expression): Expression =>
  expression.kind === 'scaled' ? unscaled(expression.of) : expression;

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const raised = (exponent: number): string =>
  [...String(exponent)].map((mark) => (mark === '-' ? '⁻' : superscripts[Number(mark)]!)).join('');

function sayConstant(value: number, unit: string | undefined): string {
  const number = sayNumber(value, 1);
  if (unit === undefined) return number;
  return Object.hasOwn(units, unit)
    ? number + unitSuffix({ unit: unit as UnitId })
    : `${number}\u00a0${unit}`;
}

/** Said to be a chart: by its name alone it would read like the quantity that it often gives. */
const chartName = (deck: Deck, id: string): string =>
  `chart “${deck.charts?.find((chart) => chart.id === id)?.label ?? id}”`;
