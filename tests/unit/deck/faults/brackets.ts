/** Faults in brackets and in what stands in their place. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const bracketFaults: readonly Fault[] = [
  {
    code: 'stray-comma',
    edit: ['response: Unlatched', 'response: Unlatched, twice'],
    at: 'twice',
    where: 'checklist “Final checks”, item “Door”, response',
    message:
      'A comma ends a value in brackets, so “twice” is taken for a key; put the whole text in quotes: "Unlatched, twice".',
  },
  {
    code: 'stray-comma',
    edit: ['response: "Down, two green"', 'response: “Down, two green”'],
    at: 'two',
    where: 'checklist “Final checks”, item “Floats”, response',
    message:
      'A comma ends a value in brackets, so “two green”” is taken for a key; put the whole text in straight quotes: "Down, two green".',
  },
  {
    code: 'stray-comma',
    edit: ['response: "Down, two green"', 'response: "Down", two green'],
    at: 'two',
    where: 'checklist “Final checks”, item “Floats”, response',
    message:
      'A comma ends a value in brackets, so “two green” is taken for a key; put the whole text in quotes.',
  },
  {
    code: 'stray-comma',
    edit: ['target: 60, desired', 'target: 1,500, desired'],
    at: '1,500,',
    where: 'gate “Far gate”, closure, target',
    message: 'A comma ends a value in brackets, so “1,500” is no number; write 1500.',
  },
  {
    code: 'stray-comma',
    edit: ['target: 60, desired', 'target: 70,5, desired'],
    at: '70,5,',
    where: 'gate “Far gate”, closure, target',
    message: 'A comma ends a value in brackets, so “70,5” is no number; write 70.5.',
  },
  {
    code: 'stray-comma',
    edit: ['step: 0.5', 'step: 0,250'],
    at: '0,250',
    where: 'quantity “Angle of attack”, step',
    message: 'A comma ends a value in brackets, so “0,250” is no number; write 0.25.',
  },
  {
    code: 'missing-colon',
    edit: ['target: 60, desired', 'target:60, desired'],
    at: 'target:60,',
    where: 'gate “Far gate”, closure',
    message: 'A colon needs a space after it, “target:60” has none; write “target: 60”.',
  },
  {
    code: 'missing-colon',
    edit: ['target: 60, desired', 'target 60, desired'],
    at: 'target',
    where: 'gate “Far gate”, closure',
    message:
      'Entries in {braces} are a key, a colon and a value, “target 60” has no colon; write it like “target: 60”, or take it away.',
  },
  {
    code: 'missing-colon',
    edit: ['when: { altitude: "< 350" }', 'when: { altitude < 350 }'],
    at: 'altitude',
    where: 'table “Power by height, far out”, rule “low”, when',
    message:
      'A key in braces needs a colon and its value, “altitude < 350” has none; write “altitude: "< 350"”.',
  },
  {
    code: 'missing-colon',
    edit: ['desired: [57, 63]', 'desired: {57, 63}'],
    at: '{57,',
    where: 'gate “Far gate”, closure, desired',
    message:
      'In {braces} stand keys with their values, found “{57, 63}”; write “key: value”, or a list as [57, 63].',
  },
  {
    code: 'stray-comma',
    edit: ['desired: [57, 63]', 'desired: [57,5, 63,5]'],
    at: '[57,5,',
    where: 'gate “Far gate”, closure, desired',
    message: 'A comma ends a value in brackets, so “57,5” is read as two numbers; write [57.5, 63.5].',
  },
  {
    code: 'stray-comma',
    edit: ['range: [0, 1000]', 'range: [0, 1,000]'],
    at: '[0,',
    where: 'quantity “Altitude”, range',
    message: 'A comma ends a value in brackets, so “1,000” is read as two numbers; write [0, 1000].',
  },
  {
    code: 'stray-comma',
    edit: ['desired: [57, 63]', 'desired: (57, 63)'],
    at: '(57,',
    where: 'gate “Far gate”, closure, desired',
    message: 'Two numbers stand in [brackets], found “(57, 63)” without them; write [57, 63].',
  },
  {
    code: 'stray-comma',
    edit: ['desired: [57, 63]', 'desired: 57, 63'],
    at: '57,',
    where: 'gate “Far gate”, closure, desired',
    message: 'Two numbers stand in [brackets], found “57, 63” without them; write [57, 63].',
  },
  {
    code: 'wrong-count',
    edit: ['range: [0, 1000]', 'range: [0 1000]'],
    at: '[0',
    where: 'quantity “Altitude”, range',
    message: 'Exactly 2 numbers must stand here, found “0 1000”; write [0, 1000], with a comma between them.',
  },
  {
    code: 'wrong-type',
    edit: ['desired: [57, 63]', 'desired: 57-63'],
    at: '57-63,',
    where: 'gate “Far gate”, closure, desired',
    message: 'Two numbers must stand here, found “57-63”; write [57, 63], with a comma between them.',
  },
  {
    code: 'wrong-count',
    edit: [
      'points: [[10, 10], [190, 10], [190, 90], [10, 90]]',
      'points: [[10, 10, 5], [190, 10], [190, 90], [10, 90]]',
    ],
    at: '[10,',
    where: 'plate “The raft”, shape 1, point 1',
    message:
      'Exactly 2 numbers must stand here, found 3; write them as [first, second], with a point before decimals.',
  },
  {
    code: 'wrong-type',
    edit: ['accept: ["3", three feet]', 'accept: [three feet, more: or less]'],
    at: 'more:',
    where: 'note “raft-height”, accepted answer 2',
    message:
      'A text must stand here, a “: ” makes it a key and a value; put the whole text in quotes: "more: or less".',
  },
  {
    code: 'missing-key',
    edit: ['when: {}, ', ''],
    at: '{',
    where: 'table “Power by height, far out”, rule “steady”, when',
    message:
      'A rule needs “when” with its conditions, it is missing; add “when: { … }”, or “when: {}” when the rule always fits.',
  },
  {
    code: 'wrong-type',
    edit: ['when: {}', 'when: always'],
    at: 'always,',
    where: 'table “Power by height, far out”, rule “steady”, when',
    message:
      '“when” holds conditions as quantity: "test", found “always”; write “when: { … }”, or “when: {}” when the rule always fits.',
  },
  {
    code: 'number-as-text',
    edit: ['target: 60, desired', 'target: “60”, desired'],
    at: '“60”,',
    where: 'gate “Far gate”, closure, target',
    message: 'A number must stand alone, found ““60””; write 60, without quotes or marks between its digits.',
  },
  {
    code: 'unknown-quantity',
    edit: [
      'inputs: [altitude, sink]\n    rules:\n      - { id: falling',
      'inputs: [altitude, sinc]\n    rules:\n      - { id: falling',
    ],
    at: 'sinc]',
    where: 'table “Power by height, far out”, input 2',
    message: 'A quantity named here must be one of “quantities”, found “sinc”; write “sink”.',
  },
  {
    code: 'condition-not-input',
    edit: ['inputs: [closure, altitude]', 'inputs: [altitude]'],
    at: 'closure:',
    where: 'table “Pitch by closure, close in”, rule “near-fast”, when, closure',
    message:
      'Conditions stand on the table’s inputs “altitude”, found “closure”; add it to the inputs or take it out of the rules.',
  },
];
