/** Faults of what a pass is flown by. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

const limits = '      sink: { ceiling: 800, because: The engine answers late., source: trade }\n';
const power = '    label: Power\n    axis: vertical';
const withPass = (lines: string): Fault['edit'] => [limits, `${limits}    pass:\n${lines}`];
const until = '      until: { kind: falling, quantity: to-go, value: 2600 }\n';
const day = 'default: 10 }\n';

export const motionFaults: readonly Fault[] = [
  {
    code: 'negative',
    edit: [power, '    label: Power\n    lagS: -1\n    axis: vertical'],
    at: '-1',
    where: 'control “Power”, lag (s)',
    message: 'A lag can’t be less than 0, found -1; write 0 or more.',
  },
  {
    code: 'not-positive',
    edit: [power, '    label: Power\n    holdS: 0\n    axis: vertical'],
    at: '0',
    where: 'control “Power”, hold (s)',
    message: 'The time an action is held must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: withPass(`${until}      decideEveryS: 0\n`),
    at: '0',
    where: 'phase “Far to middle”, pass, decide every (s)',
    message: 'The time between decisions must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: withPass('      until: { kind: after, seconds: 0 }\n'),
    at: '0 }',
    where: 'phase “Far to middle”, pass, until, seconds',
    message: 'The time a phase takes must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'quantity-not-in-phase',
    edit: withPass('      until: { kind: falling, quantity: aoa, value: 5 }\n'),
    at: 'aoa',
    where: 'phase “Far to middle”, pass, until, quantity',
    message:
      'A phase is over by a quantity in its “state” or “entry”, found “aoa”; add it to one of the two.',
  },
  {
    code: 'value-outside-range',
    edit: withPass('      until: { kind: rising, quantity: to-go, value: 9500 }\n'),
    at: '9500',
    where: 'phase “Far to middle”, pass, until, value',
    message:
      'A value must lie inside the quantity’s range [-500, 9000], found 9500; change it or widen the range.',
  },
  {
    code: 'phase-order',
    edit: withPass(`${until}      through:\n        - { gate: near, at: { kind: after, seconds: 9 } }\n`),
    at: 'near',
    where: 'phase “Far to middle”, pass, gate on the way 1, gate',
    message:
      'A gate on the way lies between the phase’s first and last, found “near”; take it out or name another.',
  },
  {
    code: 'unknown-quantity',
    edit: withPass(`${until}      entry:\n        sink: { factors: { sinc: 1 } }\n`),
    at: 'sinc',
    where: 'phase “Far to middle”, pass, entry, sink, factors, sinc',
    message: 'A quantity named here must be one of “quantities”, found “sinc”; write “sink”.',
  },
  {
    code: 'negative',
    edit: withPass(`${until}      entry:\n        sink: { constant: 300, overS: -2 }\n`),
    at: '-2',
    where: 'phase “Far to middle”, pass, entry, sink, over (s)',
    message: 'The time an entry takes can’t be less than 0, found -2; write 0 or more.',
  },
  {
    code: 'negative',
    edit: withPass(`${until}      gusts: { sink: -5 }\n`),
    at: '-5',
    where: 'phase “Far to middle”, pass, gusts, sink',
    message: 'Restless air can’t be less than 0, found -5; write 0 or more.',
  },
  {
    code: 'quantity-not-in-phase',
    edit: withPass(`${until}      start: { aoa: 1 }\n`),
    at: 'aoa',
    where: 'phase “Far to middle”, pass, start, angle of attack',
    message:
      'Rates are worked out from the quantities in the phase’s “state”, found “aoa”; add it to “state” or take it away.',
  },
  {
    code: 'unknown-action',
    edit: withPass(`${until}      effects:\n        more-powr: { sink: -35 }\n`),
    at: 'more-powr',
    where: 'phase “Far to middle”, pass, effects, more-powr',
    message: 'Effects belong to an action of the phase’s controls, found “more-powr”; write “more-power”.',
  },
  {
    code: 'quantity-not-of-day',
    edit: [day, `${day}wind: { speed: wind, angle: aoa, along: closure }\n`],
    at: 'aoa',
    where: 'wind, angle',
    message: 'Wind is made from quantities that are set for the day, found “aoa”; add it to “day”.',
  },
  {
    code: 'second-origin',
    edit: [day, `${day}wind: { speed: wind, angle: wind, along: wind }\n`],
    at: 'wind }',
    where: 'wind, along',
    message:
      'A quantity has one origin, “wind” is set for the day and worked out from the wind; take it out of one of the two.',
  },
];
