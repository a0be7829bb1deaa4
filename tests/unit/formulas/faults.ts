/** Faults of formulas. Each is one edit of the deck with formulas and the one finding it makes. */
import type { Fault } from '../deck/faults/fault.ts';

const felt = 'expression: wind + gust_share(gust)';
const feltWhere = 'formula “felt-wind”, expression';

export const formulaFaults: readonly Fault[] = [
  {
    code: 'formula-syntax',
    edit: [felt, 'expression: wind + (gust'],
    at: ', because',
    where: feltWhere,
    message:
      'A formula is a sum, product or call such as “2 * sink + 15 kt”, this one can’t be read: Parenthesis ) expected; look at its marks and parentheses.',
  },
  {
    code: 'formula-not-allowed',
    edit: [felt, 'expression: "felt_wind = 3 kt"'],
    at: '"felt_wind = 3',
    where: feltWhere,
    message:
      'An assignment can’t stand in a formula, found “felt_wind = 3 kt”; use numbers, quantities of the day, charts, + - * / ^, “? :” and the listed functions.',
  },
  {
    code: 'formula-not-allowed',
    edit: [felt, 'expression: wind + 10 % * gust'],
    at: '% * gust',
    where: feltWhere,
    message:
      'A formula is written in plain letters, digits and marks, found “%”; write “percent” behind a number.',
  },
  {
    code: 'formula-not-allowed',
    edit: [felt, 'expression: wind + 0 kt * gust ^ 20'],
    at: 'wind + 0',
    where: feltWhere,
    message:
      'A power other than a whole number from -6 to 6 can’t stand in a formula, found “gust ^ 20”; use numbers, quantities of the day, charts, + - * / ^, “? :” and the listed functions.',
  },
  {
    code: 'formula-not-allowed',
    edit: [felt, 'expression: "max(wind, atan2(gust))"'],
    at: 'atan2',
    where: feltWhere,
    message: '“atan2” takes 2 values in its parentheses, found 1; add what is missing.',
  },
  {
    code: 'formula-name',
    edit: [felt, 'expression: wind + gust_shore(gust)'],
    at: 'gust_shore',
    where: feltWhere,
    message:
      'A formula may call a chart or sqrt, abs, min, max, round, floor, ceil, sin, cos, tan, asin, acos, atan or atan2, found “gust_shore”; write “gust_share”.',
  },
  {
    code: 'formula-name',
    edit: [felt, 'expression: wind + guts'],
    at: 'guts',
    where: feltWhere,
    message:
      'A name in a formula is a quantity of the day, a chart, “pi” or “gravity”, found “guts”; write “gust”.',
  },
  {
    code: 'formula-name',
    edit: ['(70 kt - felt_wind / 2)', '(70 kt - felt-wind / 2)'],
    at: 'felt-wind',
    where: 'formula “run-in”, expression',
    message: 'In a formula “-” is a minus sign, found an id with it; write “felt_wind”.',
  },
  {
    code: 'formula-name',
    edit: [felt, 'expression: wind + 5 knots'],
    at: 'knots',
    where: feltWhere,
    message:
      'Behind a number stands a unit, one of kt, ft, m, nm, deg, aoa, lb, kg, l, hPa, inHg, degC, s, rpm, rad, min, h, g, percent or count, found “knots”; write “kt”.',
  },
  {
    code: 'formula-name',
    edit: [felt, 'expression: wind + gust_share'],
    at: 'gust_share',
    where: feltWhere,
    message: 'A chart is read with its inputs, found “gust_share” without them; write “gust_share(…)”.',
  },
  {
    code: 'formula-units',
    edit: [felt, 'expression: wind + waves'],
    at: 'wind + waves',
    where: feltWhere,
    message:
      'What is added must be of one kind: wind is in kt, waves in m; take a quantity of the same kind, or multiply or divide by one that makes it so.',
  },
  {
    code: 'formula-units',
    edit: [felt, 'expression: wind + 5'],
    at: 'wind + 5',
    where: feltWhere,
    message:
      'What is added must be of one kind: wind is in kt, 5 in no unit; write the number with its unit: “5 kt”.',
  },
  {
    code: 'formula-units',
    edit: [felt, 'expression: wind * gust'],
    at: 'wind * gust',
    where: feltWhere,
    message:
      'Wind to fly for is in kt, its formula comes to kt²; multiply or divide by a quantity that makes it kt.',
  },
  {
    code: 'formula-units',
    edit: ['expression: "least_closure(load, waves)"', 'expression: "least_closure(waves, load)"'],
    at: '"least',
    where: 'formula “digging-in”, expression',
    message:
      '“Load” of the chart is in kg, waves in m; give the chart’s inputs in its order: Load and Wave height.',
  },
  {
    code: 'formula-units',
    edit: [felt, 'expression: wind * sin(gust)'],
    at: 'sin(gust)',
    where: feltWhere,
    message: '“sin” takes an angle, in deg or rad, gust is in kt; write the number with “deg”.',
  },
  {
    code: 'formula-circle',
    edit: [felt, 'expression: wind + 1 ft / run_in'],
    at: '6000 ft',
    where: 'formula “run-in”, expression',
    message:
      'A formula must not need its own result, “run-in” needs “felt-wind”, which needs “run-in”; take one of them out of a formula.',
  },
  {
    code: 'formula-circle',
    edit: ['{ target: 75 kt - felt_wind,', '{ target: closure - felt_wind,'],
    at: 'closure - felt_wind',
    where: 'gate “Far gate”, closure, target',
    message:
      'A formula must not need its own result, the target of “closure” needs itself here; take one of the names out of a formula.',
  },
  {
    code: 'formula-no-value',
    edit: [felt, 'expression: wind * 10 kt / (gust - 10 kt)'],
    at: 'wind * 10',
    where: feltWhere,
    message:
      'A formula must have a result on the deck’s own day, this one has none: it divides by zero; change it, or the day’s defaults.',
  },
  {
    code: 'formula-no-value',
    edit: ['least_closure(load, waves)', 'least_closure(load, 2 * waves + 1 m)'],
    at: '"least',
    where: 'formula “digging-in”, expression',
    message:
      'A formula must have a result on the deck’s own day, this one has none: wave height 2 m; the chart ends at 1 m; change it, or the day’s defaults.',
  },
  {
    code: 'formula-no-value',
    edit: ['{ target: 75 kt - felt_wind,', '{ target: 75 kt / (gust / 10 kt - 1),'],
    at: '75 kt / (gust',
    where: 'gate “Far gate”, closure, target',
    message:
      'A number of a band must have a result on the deck’s own day, this formula has none: it divides by zero; change it, or the day’s defaults.',
  },
  {
    code: 'formula-units',
    edit: ['aheadFt: -6000,', 'aheadFt: -60 s * felt_wind * 1 kt,'],
    at: '-60 s',
    where: 'gate “Far gate”, position, ahead (ft)',
    message:
      'The distance ahead is in ft, its formula comes to s·kt²; multiply or divide by a quantity that makes it ft.',
  },
  {
    code: 'formula-no-value',
    edit: ['aheadFt: -6000,', 'aheadFt: -6000 ft / (gust / 10 kt - 1),'],
    at: '-6000 ft /',
    where: 'gate “Far gate”, position, ahead (ft)',
    message:
      'A place must have a result on the deck’s own day, this formula has none: it divides by zero; change it, or the day’s defaults.',
  },
  {
    code: 'day-without-value',
    severity: 'warning',
    edit: ['aheadFt: -6000,', 'aheadFt: -6000 ft * (1 - 1 / (gust / 30 kt - 1)) / 1.5,'],
    at: '-6000 ft *',
    where: 'gate “Far gate”, position, ahead (ft)',
    message:
      'A gate should have a place on every day that can be set, this one has none with gust 30\u00a0kt: it divides by zero; change its formula, or narrow the range of what is set.',
  },
  {
    code: 'formula-outside-range',
    edit: [felt, 'expression: wind + 15 * gust_share(gust)'],
    at: 'wind + 15',
    where: feltWhere,
    message:
      'A result must lie inside its quantity’s range on the deck’s own day, it comes to 85 kt, outside of 0 to 60 kt; change the formula or widen the range.',
  },
  {
    code: 'quantity-not-of-day',
    edit: [felt, 'expression: wind + closure'],
    at: 'closure,',
    where: feltWhere,
    message:
      'A formula is made from quantities that have one value for the day, found “closure”; add it to “day”, give it a formula of its own, or write the number.',
  },
  {
    code: 'second-origin',
    edit: [
      '  - { quantity: load, default: 150 }',
      '  - { quantity: load, default: 150 }\n  - { quantity: felt-wind, default: 15 }',
    ],
    at: 'felt-wind, expression',
    where: 'formula “felt-wind”, quantity',
    message:
      'A quantity has one origin, “felt-wind” is set for the day and worked out by a formula; take it out of one of the two.',
  },
  {
    code: 'repeated-entry',
    edit: [
      'expression: "least_closure(load, waves)"',
      'expression: "least_closure(load, waves)" }\n  - { quantity: digging-in, expression: 20 kt',
    ],
    at: 'digging-in, expression: 20',
    where: 'formula “digging-in”, quantity',
    message: 'A quantity has one formula, “digging-in” has another one above; take one of the two out.',
  },
  {
    code: 'band-not-nested',
    edit: ['desired: [closure - 3 kt,', 'desired: [closure + 1 kt,'],
    at: '75 kt',
    where: 'gate “Far gate”, closure, target',
    message: 'The target must lie inside desired [61, 63], found 60; move the target or widen desired.',
  },
  {
    code: 'day-without-value',
    severity: 'warning',
    edit: ['adequate: [closure - 10 kt,', 'adequate: [felt_wind + 30 kt,'],
    at: '{ target',
    where: 'gate “Far gate”, closure',
    message:
      'A band should hold on every day that can be set, this one has no value with wind 30 kt: an upper end lies below its lower end; change its formulas, or narrow the range of what is set.',
  },
  {
    code: 'number-as-text',
    edit: ['{ target: 75 kt - felt_wind,', '{ target: 60 kt,'],
    at: '60 kt',
    where: 'gate “Far gate”, closure, target',
    message: 'A number must stand alone, found “60 kt”; write 60 without the unit.',
  },
];
