/** Faults of numbers to be worked out. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

const chart = 'at: [0, 10, 30] }], values: [0, 5, 10] }\n';
const sound = {
  quantity: 'closure',
  draw: '{ wind: [0, 30] }',
  desired: '2',
  adequate: '5',
  more: '',
};
/** The wind makes the closure of the day, which is asked for. */
const withWorked = (faulty: Partial<typeof sound>): Fault['edit'] => {
  const { quantity, draw, desired, adequate, more } = { ...sound, ...faulty };
  const worked = `quantity: ${quantity}, draw: ${draw}, desired: ${desired}, adequate: ${adequate}${more}`;
  return [
    chart,
    `${chart}wind: { speed: wind, angle: wind, along: closure }\nworked:\n  - { id: left, label: What is left, ask: How fast?, ${worked} }\n`,
  ];
};

export const workedFaults: readonly Fault[] = [
  {
    code: 'unknown-quantity',
    edit: withWorked({ quantity: 'closur' }),
    at: 'closur,',
    where: 'worked value “What is left”, quantity',
    message: 'A quantity named here must be one of “quantities”, found “closur”; write “closure”.',
  },
  {
    code: 'not-worked-out',
    edit: withWorked({ quantity: 'sink' }),
    at: 'sink,',
    where: 'worked value “What is left”, quantity',
    message:
      'What is to be worked out is a quantity that a formula gives or the wind makes, found “sink”; add a formula for it.',
  },
  {
    code: 'unknown-gate',
    edit: withWorked({ more: ', gate: farr' }),
    at: 'farr',
    where: 'worked value “What is left”, gate',
    message: 'A gate named here must be one of “gates”, found “farr”; write “far”.',
  },
  {
    code: 'unknown-source',
    edit: withWorked({ more: ', source: bok' }),
    at: 'bok',
    where: 'worked value “What is left”, source',
    message: 'A source named here must be one of “sources”, found “bok”; write “book”.',
  },
  {
    code: 'too-few',
    edit: withWorked({ draw: '{}' }),
    at: '{}',
    where: 'worked value “What is left”, draw',
    message:
      '“draw” needs at least one setting of the day, it has none; add one with the lowest and highest value to draw.',
  },
  {
    code: 'quantity-not-of-day',
    edit: withWorked({ draw: '{ altitude: [0, 30] }' }),
    at: 'altitude: [0, 30]',
    where: 'worked value “What is left”, draw, altitude',
    message: 'What is drawn anew is a quantity that is set for the day, found “altitude”; add it to “day”.',
  },
  {
    code: 'range-upside-down',
    edit: withWorked({ draw: '{ wind: [30, 0] }' }),
    at: '[30, 0]',
    where: 'worked value “What is left”, draw, wind',
    message: 'A range goes from its lower to its higher end, found [30, 0]; write [0, 30].',
  },
  {
    code: 'value-outside-range',
    edit: withWorked({ draw: '{ wind: [0, 60] }' }),
    at: '[0, 60]',
    where: 'worked value “What is left”, draw, wind',
    message:
      'Values are drawn from inside their quantity’s range [0, 40], found [0, 60]; narrow one or widen the other.',
  },
  {
    code: 'band-not-nested',
    edit: withWorked({ desired: '8' }),
    at: '8',
    where: 'worked value “What is left”, desired',
    message: 'Desired must lie inside adequate, within 5, found 8; narrow desired or widen adequate.',
  },
  {
    code: 'not-positive',
    edit: withWorked({ desired: '0' }),
    at: '0',
    where: 'worked value “What is left”, desired',
    message: 'How far off desired reaches must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: withWorked({ more: ', windowS: -5' }),
    at: '-5',
    where: 'worked value “What is left”, window (s)',
    message: 'The time to work it out in must be more than 0, found -5; write a positive number.',
  },
];
