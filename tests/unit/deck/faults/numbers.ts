/** Faults of numbers: ranges, bands, limits, sizes. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const numbersFaults: readonly Fault[] = [
  {
    code: 'range-upside-down',
    edit: ['range: [0, 1000]', 'range: [1000, 0]'],
    at: '[1000, 0]',
    where: 'quantity “Altitude”, range',
    message: 'A range goes from its lower to its higher end, found [1000, 0]; write [0, 1000].',
  },
  {
    code: 'range-upside-down',
    edit: ['sink: [0, 1000] }', 'sink: [0, 0] }'],
    at: '[0, 0]',
    where: 'phase “Far to middle”, state, sink',
    message:
      'A range goes from its lower to its higher end, found [0, 0]; lower the first or raise the second number.',
  },
  {
    code: 'not-positive',
    edit: ['step: 5,', 'step: 0,'],
    at: '0',
    where: 'quantity “Altitude”, step',
    message: 'The step in which a quantity is called must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: ['windowS: 6', 'windowS: -6'],
    at: '-6',
    where: 'phase “Far to middle”, window (s)',
    message: 'The time to call a correction in must be more than 0, found -6; write a positive number.',
  },
  {
    code: 'not-positive',
    edit: ['radius: 8', 'radius: 0'],
    at: '0',
    where: 'plate “The raft”, shape 3, radius',
    message: 'A radius must be more than 0, found 0; write a positive number.',
  },
  {
    code: 'band-not-nested',
    edit: ['target: 60,', 'target: 66,'],
    at: '66',
    where: 'gate “Far gate”, closure, target',
    message: 'The target must lie inside desired [57, 63], found 66; move the target or widen desired.',
  },
  {
    code: 'band-not-nested',
    edit: ['desired: [57, 63]', 'desired: [45, 63]'],
    at: '[45',
    where: 'gate “Far gate”, closure, desired',
    message: 'Desired must lie inside adequate [50, 70], found [45, 63]; narrow desired or widen adequate.',
  },
  {
    code: 'band-not-nested',
    edit: ['desiredWithin: 5', 'desiredWithin: 15'],
    at: '15',
    where: 'plate “The raft”, spot “The centre”, desired within',
    message: 'Desired must lie inside adequate, within 12, found 15; narrow desired or widen adequate.',
  },
  {
    code: 'band-outside-range',
    edit: ['adequate: [50, 70]', 'adequate: [-50, 70]'],
    at: '[-50, 70]',
    where: 'gate “Far gate”, closure, adequate',
    message:
      'Adequate must lie inside the quantity’s range [-20, 100], found [-50, 70]; narrow adequate or widen the range.',
  },
  {
    code: 'limit-inside-band',
    edit: ['floor: 500, source', 'floor: 560, source'],
    at: '560',
    where: 'gate “Far gate”, altitude, floor',
    message:
      'A floor must not lie above the lower end of adequate, 550, found 560; lower the floor or raise that end.',
  },
  {
    code: 'limit-inside-band',
    edit: ['ceiling: 80 }', 'ceiling: 65 }'],
    at: '65',
    where: 'gate “Far gate”, closure, ceiling',
    message:
      'A ceiling must not lie below the upper end of adequate, 70, found 65; raise the ceiling or lower that end.',
  },
  {
    code: 'limit-outside-range',
    edit: ['sink: { ceiling: 800', 'sink: { ceiling: 8000'],
    at: '8000',
    where: 'phase “Far to middle”, limits, sink, ceiling',
    message:
      'A ceiling must lie inside the quantity’s range [-500, 1500], found 8000; move it or widen the range.',
  },
  {
    code: 'limits-crossed',
    edit: ['closure: { floor: 0 }', 'closure: { floor: 40, ceiling: 0 }'],
    at: '40',
    where: 'phase “Middle to near”, limits, closure, floor',
    message: 'A floor must lie below the ceiling, found 40 and 0; swap or change them.',
  },
  {
    code: 'limit-missing',
    edit: ['closure: { floor: 0 }', 'closure: {}'],
    at: '{}',
    where: 'phase “Middle to near”, limits, closure',
    message: 'A limit needs a floor or a ceiling, this one has neither; add the one that must not be passed.',
  },
  {
    code: 'value-outside-range',
    edit: ['default: 10', 'default: 50'],
    at: '50',
    where: 'day setting “wind”, default',
    message: 'A default must lie inside its quantity’s range [0, 40], found 50; move it or widen the range.',
  },
  {
    code: 'value-outside-range',
    edit: ['value: 80', 'value: 1080'],
    at: '1080',
    where: 'gate “Near gate”, detect, value',
    message:
      'The value to pass must lie inside its quantity’s range [0, 1000], found 1080; move it or widen the range.',
  },
  {
    code: 'bearing-outside-circle',
    edit: ['relativeDeg: 270', 'relativeDeg: -90'],
    at: '-90',
    where: 'gate “Middle gate”, detect, relative bearing (deg)',
    message: 'A bearing goes from 0 to 360, found -90; write 270.',
  },
];
