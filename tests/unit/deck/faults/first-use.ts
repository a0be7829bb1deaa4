/** Slips of authors who write their first deck. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const firstUseFaults: readonly Fault[] = [
  {
    code: 'missing-colon',
    edit: ['gates:\n', 'gates\n'],
    at: 'gates',
    where: 'the deck',
    message: 'A key needs a colon after it, “gates” has none; write “gates:”.',
  },
  {
    code: 'yaml-syntax',
    edit: ['gates:\n', ' gates:\n'],
    at: '',
    where: 'day',
    message:
      'All keys of one mapping, and all dashes of one list, must begin in the same column, this line does not; indent it like its neighbours.',
  },
  {
    code: 'missing-colon',
    edit: ['title: Landing on the raft\n', 'title:Landing\n'],
    at: 'title:Landing',
    where: 'the deck',
    message: 'A colon needs a space after it, “title:Landing” has none; write “title: Landing”.',
  },
  {
    code: 'wrong-type',
    edit: ['cautions:\n  - Invented, not for flight.', 'cautions:\n  -Invented, not for flight.'],
    at: '-Invented,',
    where: 'cautions',
    message:
      'A list must stand here, found “-Invented, not for flight.”; put a space behind each dash that begins an element.',
  },
  {
    code: 'wrong-type',
    edit: ['cautions:\n  - Invented, not for flight.', 'cautions:\n  - Note: not for flight.'],
    at: 'Note:',
    where: 'caution 1',
    message:
      'A text must stand here, a “: ” makes it a key and a value; put the whole text in quotes: "Note: not for flight.".',
  },
  {
    code: 'bad-id',
    edit: ['defaultSource: notes', 'defaultSource: "Notes on the raft"'],
    at: '"Notes',
    where: 'default source',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “Notes on the raft”; write “notes”.',
  },
  {
    code: 'number-as-text',
    edit: ['step: 0.5', 'step: 1/2'],
    at: '1/2',
    where: 'quantity “Angle of attack”, step',
    message: 'A number is written with a point, found “1/2”; write 0.5.',
  },
  {
    code: 'yaml-syntax',
    edit: ['range: [-20, 100]', 'range: [- 20, 100]'],
    at: '-',
    where: 'quantity “Closure”, range, lower end',
    message: 'A minus sign stands close to its number, here a space parts them; write -20.',
  },
  {
    code: 'yaml-syntax',
    edit: ['range: [-20, 100]', 'range: [-20, 100))'],
    at: '[-20,',
    where: 'quantity “Closure”, range',
    message:
      'A bracket must be closed, “[” here is not; write “]” where what it holds ends, or put a text with brackets in quotes.',
  },
  {
    code: 'unknown-key',
    edit: ['- { quantity: wind, default: 10 }', '- wind: 10'],
    at: 'wind:',
    where: 'day setting 1, wind',
    message:
      'An entry here has the keys quantity and default, found “wind” alone; write { quantity: wind, default: 10 }.',
  },
  {
    code: 'unknown-key',
    edit: ['{ when: "> 45", say: closing fast }', '"> 45": closing fast'],
    at: '">',
    where: 'quantity “Closure”, words 2, > 45',
    message:
      'An entry here has the keys when and say, found “> 45” alone; write { when: "> 45", say: closing fast }.',
  },
  {
    code: 'unknown-unit',
    edit: ['unit: ft/min,', 'unit: ,'],
    at: 'unit:',
    where: 'quantity “Sink”, unit',
    message:
      'A unit is one of kt, ft, m, nm, ft/min, deg, aoa, lb, kg, l, hPa, inHg, degC, s, g, percent, rpm or count, found nothing; write one of them.',
  },
  {
    code: 'unknown-key',
    edit: ['position: { aheadFt: -2500,', 'position: { ahead: -2500,'],
    at: 'ahead:',
    where: 'gate “Middle gate”, position, ahead',
    message: 'The keys here are aheadFt, rightFt and courseDeg, found “ahead”; write “aheadFt”.',
  },
  {
    code: 'wrong-type',
    edit: ['sink: { target: 400, desired: [350, 450]', 'sink: { target: 400, desired: ±50'],
    at: '±50,',
    where: 'gate “Middle gate”, sink, desired',
    message:
      'Two numbers must stand here, found “±50”; write both ends, [350, 450] for 50 to either side of the target.',
  },
  {
    code: 'wrong-type',
    edit: ['sink: { target: 400, desired: [350, 450], adequate: [300, 500] }', 'sink: 400'],
    at: '400',
    where: 'gate “Middle gate”, sink',
    message:
      'Keys with their values must stand here, found 400; write { target: …, desired: …, adequate: … }.',
  },
  {
    code: 'yaml-syntax',
    edit: [
      'sink: { target: 400, desired: [350, 450], adequate: [300, 500] }',
      '- sink: { target: 400, desired: [350, 450], adequate: [300, 500] }',
    ],
    at: '-',
    where: 'gate “Middle gate”',
    message:
      'A dash begins an element of a list, and the lines above “sink” have none; take “- ” away here, or put it before each of them.',
  },
  {
    code: 'yaml-syntax',
    edit: [
      'sink: { target: 400, desired: [350, 450], adequate: [300, 500] }',
      'sink: { target: 400, desired: [350, 450], adequate: [300, 500]',
    ],
    at: '{',
    where: 'gate “Middle gate”, sink',
    message:
      'A bracket must be closed, “{” here is not; write “}” where what it holds ends, or put a text with brackets in quotes.',
  },
  {
    code: 'yaml-syntax',
    edit: [
      'sink: { target: 400, desired: [350, 450], adequate',
      'sink: { target: 400; desired: [350, 450]; adequate',
    ],
    at: ';',
    where: 'gate “Middle gate”, sink, target, 400; desired',
    message: 'Entries in brackets are parted by commas, here by a semicolon; write “,” for “;”.',
  },
];
