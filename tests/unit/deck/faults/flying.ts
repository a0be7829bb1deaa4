/** Faults of what the aeroplane can do. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

const speeds = 'flying:\n  airspeed: closure\n  closure: closure\n';
const legs = '    - { from: far, seconds: 35, because: The water is flat. }\n';

export const flyingFaults: readonly Fault[] = [
  {
    code: 'unknown-quantity',
    edit: [speeds, 'flying:\n  airspeed: closur\n  closure: closure\n'],
    at: 'closur',
    where: 'flying, airspeed',
    message: 'A quantity named here must be one of “quantities”, found “closur”; write “closure”.',
  },
  {
    code: 'not-a-speed',
    edit: [speeds, 'flying:\n  airspeed: altitude\n  closure: closure\n'],
    at: 'altitude',
    where: 'flying, airspeed',
    message:
      'The speed of a leg must be a quantity in kt, found “altitude” in ft; name the one that is a speed.',
  },
  {
    code: 'not-a-speed',
    edit: [speeds, 'flying:\n'],
    at: 'flying',
    where: 'flying',
    message:
      'Legs are worked out from a speed, found neither “airspeed” nor “closure” here; name the quantity that is one.',
  },
  {
    code: 'senseless-limit',
    edit: ['bankDeg: 40,', 'bankDeg: 95,'],
    at: '95',
    where: 'flying, most, bank (deg)',
    message: 'A level turn has less than 90° of bank, found 95; write what the aeroplane can hold.',
  },
  {
    code: 'senseless-limit',
    edit: ['loadFactor: 1.4,', 'loadFactor: 0.4,'],
    at: '0.4',
    where: 'flying, most, load factor (g)',
    message: 'A load factor in level flight is 1 or more, found 0.4; write what the aeroplane can hold.',
  },
  {
    code: 'not-positive',
    edit: ['most: { sinkFtMin: 900 }', 'most: { sinkFtMin: -900 }'],
    at: '-900',
    where: 'flying, leg “middle”, most, sink (ft/min)',
    message: 'The most sink must be more than 0, found -900; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: ['from: far, seconds: 35', 'from: far, seconds: 0'],
    at: '0',
    where: 'flying, leg “far”, seconds',
    message: 'The time a leg takes must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'unknown-gate',
    edit: ['from: far, seconds: 35', 'from: fare, seconds: 35'],
    at: 'fare',
    where: 'flying, leg “fare”, from',
    message: 'A gate named here must be one of “gates”, found “fare”; write “far”.',
  },
  {
    code: 'leg-from-last-gate',
    edit: ['from: far, seconds: 35', 'from: turned, seconds: 35'],
    at: 'turned',
    where: 'flying, leg “turned”, from',
    message:
      'A leg leads to the next gate, “turned” is the last; name the gate before it or take the leg out.',
  },
  {
    code: 'repeated-entry',
    edit: [legs, `${legs}    - { from: far, seconds: 36 }\n`],
    at: 'far',
    where: 'flying, leg “far”, from',
    message: 'Each name may stand once in this list, “far” stands here again; take it out.',
  },
];
