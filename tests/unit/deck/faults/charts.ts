/** Faults of charts. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const chartFaults: readonly Fault[] = [
  {
    code: 'chart-not-ascending',
    edit: ['at: [0, 150, 400]', 'at: [0, 400, 150]'],
    at: '150]',
    where: 'chart “Least closure”, input “Load”, at, number 3',
    message:
      'The values of a chart’s input go up, each above the one before, found 150 after 400; put them in order, with their numbers.',
  },
  {
    code: 'chart-not-ascending',
    edit: ['at: [0, 10, 30]', 'at: [0, 10, 10]'],
    at: '10] }',
    where: 'chart “Share of the gust”, input “Gust”, at, number 3',
    message:
      'The values of a chart’s input go up, each above the one before, found 10 after 10; take one of the two out, with its numbers.',
  },
  {
    code: 'chart-incomplete',
    edit: ['      - [20, 18, 15]\n', ''],
    at: '- [24',
    where: 'chart “Least closure”, rows',
    message: '“rows” holds a row for each of the 3 values of “Load”, found 2; add the 1 missing.',
  },
  {
    code: 'chart-incomplete',
    edit: ['[24, 21, 15]', '[24, 21]'],
    at: '[24, 21]',
    where: 'chart “Least closure”, row 2',
    message: 'Each row holds a number for each of the 3 values of “Wave height”, found 2; add the 1 missing.',
  },
  {
    code: 'chart-incomplete',
    edit: ['values: [0, 5, 10]', 'values: [0, 5, 10, 12]'],
    at: '[0, 5, 10, 12]',
    where: 'chart “Share of the gust”, values',
    message: '“values” holds a number for each of the 3 values of “Gust”, found 4; take 1 out.',
  },
  {
    code: 'chart-incomplete',
    edit: ['values: [0, 5, 10]', 'rows: [[0, 5, 10], [0, 5, 10]]'],
    at: '[[0',
    where: 'chart “Share of the gust”, rows',
    message:
      'A chart with one input has its numbers in “values”, found “rows”; write one list of numbers under “values” instead.',
  },
  {
    code: 'chart-incomplete',
    edit: [
      'inputs: [{ label: Gust, unit: kt, at: [0, 10, 30] }], values: [0, 5, 10] }',
      'inputs: [{ label: Gust, unit: kt, at: [0, 10, 30] }] }',
    ],
    at: '{ id: gust-share',
    where: 'chart “Share of the gust”',
    message: 'A chart with one input needs its numbers in “values”, it has none; add one list of numbers.',
  },
  {
    code: 'chart-against-trend',
    edit: ['[24, 21, 15]', '[24, 21, 22]'],
    at: '22]',
    where: 'chart “Least closure”, row 2, number 3',
    message:
      'A chart said to be falling with “Wave height” must not rise as it rises, found 21 at 0.5 and 22 at 1, with “Load” at 150; correct one of the two or take “trend” away.',
  },
  {
    code: 'chart-against-trend',
    edit: ['at: [0, 150, 400], trend: rising', 'at: [0, 150, 400], trend: falling'],
    at: '24, 21',
    where: 'chart “Least closure”, row 2, number 1',
    message:
      'A chart said to be falling with “Load” must not rise as it rises, found 20 at 0 and 24 at 150, with “Wave height” at 0, and 4 more like it; correct one of the two or take “trend” away.',
  },
  {
    code: 'unknown-unit',
    edit: ['label: Gust, unit: kt', 'label: Gust, unit: knots'],
    at: 'knots',
    where: 'chart “Share of the gust”, input “Gust”, unit',
    message:
      'A unit is one of kt, ft, m, nm, ft/min, deg, aoa, lb, kg, l, hPa, inHg, degC, s, g, percent, rpm or count, found “knots”; write “kt”.',
  },
  {
    code: 'not-a-number',
    edit: ['[30, 28.5, 22]', '[30, .nan, 22]'],
    at: '.nan',
    where: 'chart “Least closure”, row 3, number 2',
    message: 'A value must be a number that can be flown, found no number (.nan); write a plain number.',
  },
  {
    code: 'too-few',
    edit: ['at: [0, 0.5, 1]', 'at: [0]'],
    at: '[0]',
    where: 'chart “Least closure”, input “Wave height”, at',
    message: 'A list needs at least 2 elements here, found 1; add 1 or take the key away.',
  },
  {
    code: 'too-many',
    edit: ['values: [0, 5, 10]', `values: [${Array.from({ length: 201 }, (_, i) => i).join(', ')}]`],
    at: '[0, 1, 2',
    where: 'chart “Share of the gust”, values',
    message: 'A list may have 200 elements here, found 201; take 1 away.',
  },
];
