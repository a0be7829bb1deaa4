/** Faults of shape: what the schema alone refuses. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const shapeFaults: readonly Fault[] = [
  {
    code: 'wrong-format',
    edit: ['gatecall-deck/1', 'gatecall-deck/9'],
    at: 'gatecall-deck/9',
    where: 'format',
    message:
      'This program reads the format “gatecall-deck/1”, found “gatecall-deck/9”; write “format: gatecall-deck/1”, or open the file with a program that knows its format.',
  },
  {
    code: 'missing-key',
    edit: ['    cue: The raft as wide as a thumb.\n', ''],
    at: 'id: far',
    where: 'gate “Far gate”, cue',
    message: '“cue” (what the pilot sees there) must be given, it is missing; add “cue: …”.',
  },
  {
    code: 'missing-key',
    edit: ['format: gatecall-deck/1\n', ''],
    at: 'id: raft-landing',
    where: 'format',
    message: '“format” must be given, it is missing; begin the file with “format: gatecall-deck/1”.',
  },
  {
    code: 'missing-key',
    edit: ['detect: { kind: distance, ft: 6000 }', 'detect: { ft: 6000 }'],
    at: '{',
    where: 'gate “Far gate”, detect, kind',
    message: '“kind” must be given, it is missing; add “kind: …”.',
  },
  {
    code: 'unknown-key',
    edit: ['label: Far gate', 'lable: Far gate'],
    at: 'lable',
    where: 'gate “far”, lable',
    message: 'The keys here are id, label, cue, position, detect and values, found “lable”; write “label”.',
  },
  {
    code: 'wrong-type',
    edit: ['label: Far gate', 'label: 12'],
    at: '12',
    where: 'gate “far”, label',
    message: 'A text must stand here, found 12; put it in quotes: "12".',
  },
  {
    code: 'wrong-type',
    edit: ['step: 5,', 'step: five,'],
    at: 'five',
    where: 'quantity “Altitude”, step',
    message: 'A number must stand here, found “five”; write one.',
  },
  {
    code: 'wrong-type',
    edit: ['critical: true }\n  - id: middle', 'critical: yes }\n  - id: middle'],
    at: 'yes',
    where: 'gate “Far gate”, angle of attack, critical',
    message: 'Yes or no is written “true” or “false”, found “yes”; write one of them, without quotes.',
  },
  {
    code: 'wrong-type',
    edit: ['controls: [pitch, power, call]\n    rates', 'controls: pitch\n    rates'],
    at: 'pitch',
    where: 'phase “Far to middle”, controls',
    message:
      'A list must stand here, found “pitch”; put each element on a line of its own after “- ”, or all in [brackets].',
  },
  {
    code: 'wrong-type',
    edit: ['range: [0, 1000]', 'range: 1000'],
    at: '1000',
    where: 'quantity “Altitude”, range',
    message:
      'Two numbers must stand here, found 1000; write them as [first, second], with a point before decimals.',
  },
  {
    code: 'wrong-type',
    edit: ['position: { aheadFt: -6000, rightFt: -200, courseDeg: 0 }', 'position:'],
    at: 'position',
    where: 'gate “Far gate”, position',
    message:
      'Keys with their values must stand here, found nothing; write { aheadFt: …, rightFt: …, courseDeg: … }.',
  },
  {
    code: 'number-as-text',
    edit: [
      'target: 600, desired: [580, 620], adequate: [550, 660], floor',
      'target: 600 ft, desired: [580, 620], adequate: [550, 660], floor',
    ],
    at: '600 ft',
    where: 'gate “Far gate”, altitude, target',
    message: 'A number must stand alone, found “600 ft”; write 600 without the unit.',
  },
  {
    code: 'number-as-text',
    edit: ['step: 5,', 'step: "5",'],
    at: '"5"',
    where: 'quantity “Altitude”, step',
    message: 'A number must stand alone, found “5”; write 5, without quotes or marks between its digits.',
  },
  {
    code: 'not-a-number',
    edit: ['target: 60,', 'target: .nan,'],
    at: '.nan',
    where: 'gate “Far gate”, closure, target',
    message: 'A value must be a number that can be flown, found no number (.nan); write a plain number.',
  },
  {
    code: 'not-a-number',
    edit: ['range: [0, 1000]', 'range: [0, 1e999]'],
    at: '1e999',
    where: 'quantity “Altitude”, range, upper end',
    message: 'A value must be a number that can be flown, found infinity (.inf); write a plain number.',
  },
  {
    code: 'number-too-large',
    edit: ['range: [0, 1000]', 'range: [0, 1e12]'],
    at: '1e12',
    where: 'quantity “Altitude”, range, upper end',
    message: 'A number must lie between -1000000000 and 1000000000, found 1000000000000; check its digits.',
  },
  {
    code: 'bad-id',
    edit: ['id: book', 'id: Flight Manual'],
    at: 'Flight',
    where: 'source “A printed manual”, id',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “Flight Manual”; write “flight-manual”.',
  },
  {
    code: 'bad-version',
    edit: ['version: 0.3.1', 'version: 1.0'],
    at: '1.0',
    where: 'version',
    message: 'A version is three whole numbers with dots, found 1; write one like “1.0.0”.',
  },
  {
    code: 'bad-language',
    edit: ['language: en-GB', 'language: British English'],
    at: 'British',
    where: 'language',
    message:
      'A language is written as a BCP 47 tag, found “British English”; write one like “en” or “de-AT”.',
  },
  {
    code: 'empty-text',
    edit: ['label: Far gate', 'label: ""'],
    at: '""',
    where: 'gate “far”, label',
    message: 'A text must stand here, it is empty; write it or take the key away.',
  },
  {
    code: 'text-too-long',
    edit: ['label: Far gate', 'label: far far far far far far far far far far far far far far far far gate'],
    at: 'far',
    where: 'gate “far far far far far far far far far far…”, label',
    message: 'A text here may have 60 characters, this one has 68; shorten it.',
  },
  {
    code: 'too-few',
    edit: ['cautions:\n  - Invented, not for flight.', 'cautions: []'],
    at: '[]',
    where: 'cautions',
    message: 'A list needs at least 1 element here, found 0; add 1 or take the key away.',
  },
  {
    code: 'unknown-choice',
    edit: ['kind: invented', 'kind: inventd'],
    at: 'inventd',
    where: 'source “Notes on the raft”, kind',
    message: 'Here stands one of published, common practice or invented, found “inventd”; write “invented”.',
  },
  {
    code: 'unknown-choice',
    edit: ['kind: bearing', 'kind: abeam'],
    at: 'abeam',
    where: 'gate “Middle gate”, detect, kind',
    message:
      'Here stands one of falling, rising, distance, bearing or turned, found “abeam”; write one of them.',
  },
  {
    code: 'unknown-unit',
    edit: ['unit: ft/min', 'unit: feet per minute'],
    at: 'feet',
    where: 'quantity “Sink”, unit',
    message:
      'A unit is one of kt, ft, m, nm, ft/min, deg, aoa, lb, kg, l, hPa, inHg, degC, s, g, percent, rpm or count, found “feet per minute”; write “ft/min”.',
  },
  {
    code: 'unknown-unit',
    edit: ['unit: ft/min', 'unit: furlong'],
    at: 'furlong',
    where: 'quantity “Sink”, unit',
    message:
      'A unit is one of kt, ft, m, nm, ft/min, deg, aoa, lb, kg, l, hPa, inHg, degC, s, g, percent, rpm or count, found “furlong”; write one of them.',
  },
  {
    code: 'too-many',
    edit: [
      'inputs: [altitude, sink]\n    rules:\n      - { id: falling',
      'inputs: [altitude, sink, a, a, a, a, a, a, a, a, a, a, a]\n    rules:\n      - { id: falling',
    ],
    at: '[altitude',
    where: 'table “Power by height, far out”, inputs',
    message: 'A list may have 12 elements here, found 13; take 1 away.',
  },
];
