/** Parts written in another way than the format has: other words, other marks, other shapes. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const otherWordsFaults: readonly Fault[] = [
  {
    code: 'bad-id',
    edit: ['completeBy: middle', 'completeBy: 2'],
    at: '2',
    where: 'checklist “Final checks”, complete by',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found 2; write the id of one of the gates: far, middle, near, away or turned.',
  },
  {
    code: 'bad-id',
    edit: ['completeBy: middle', 'completeBy: Middle gate'],
    at: 'Middle',
    where: 'checklist “Final checks”, complete by',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “Middle gate”; write “middle”.',
  },
  {
    code: 'missing-colon',
    edit: ['critical: true, because: The keel', 'critical, because: The keel'],
    at: 'critical,',
    where: 'checklist “Final checks”, item “Floats”, response',
    message:
      'Entries in {braces} are a key, a colon and a value, “critical” has no colon; write it like “critical: true”, or take it away.',
  },
  {
    code: 'bad-alias',
    edit: ['response: Tight', 'response: *Tight*'],
    at: '*Tight*',
    where: 'checklist “Final checks”, item “Harness”, response',
    message:
      'An alias must stand for a value marked earlier with “&”, “*Tight*” stands for nothing before it; write the value out, or put a text with “*” in quotes.',
  },
  {
    code: 'bad-tag',
    edit: ['response: Tight', 'response: !Tight'],
    at: '!Tight',
    where: 'checklist “Final checks”, item “Harness”, response',
    message:
      'Values carry no type marks, here stands “!Tight”; take it away, or put a text with “!” in quotes.',
  },
  {
    code: 'bad-alias',
    severity: 'warning',
    edit: ['response: Tight', 'response: &Tight locked'],
    at: 'locked',
    where: 'checklist “Final checks”, item “Harness”, response',
    message:
      'A “&” at the start of a value names it for an alias, “&Tight” has none; take it away, or put a text with “&” in quotes.',
  },
  {
    code: 'unknown-key',
    edit: ['- { id: harness, challenge: Harness, response: Tight }', '- Harness: Tight'],
    at: 'Harness:',
    where: 'checklist “Final checks”, item 3, Harness',
    message:
      'An entry here has the keys id, challenge and response, found “Harness” alone; write { id: harness, challenge: Harness, response: Tight }.',
  },
  {
    code: 'wrong-type',
    edit: ['- { id: harness, challenge: Harness, response: Tight }', '- Harness - Tight'],
    at: 'Harness',
    where: 'checklist “Final checks”, item 3',
    message:
      'Keys with their values must stand here, found “Harness - Tight”; write { id: …, challenge: …, response: … }.',
  },
  {
    code: 'unknown-key',
    edit: [
      '- { id: harness, challenge: Harness, response: Tight }',
      '- { harness: { challenge: Harness, response: Tight } }',
    ],
    at: 'harness:',
    where: 'checklist “Final checks”, item 3, harness',
    message:
      'An entry here has the keys id, challenge and response, found “harness” alone; write { id: harness, … } with its other keys beside the id.',
  },
  {
    code: 'bad-id',
    edit: ['opposes: nose-up', 'opposes: Nose up'],
    at: 'Nose',
    where: 'control “Pitch”, action “Nose down”, opposes',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “Nose up”; write “nose-up”.',
  },
  {
    code: 'unknown-key',
    edit: ['windowS: 6', 'window: 6'],
    at: 'window:',
    where: 'phase “Far to middle”, window',
    message:
      'The keys here are id, label, from, to, cue, windowS, state, controls, rates, limits and pass, found “window”; write “windowS”.',
  },
  {
    code: 'number-as-text',
    edit: ['windowS: 6', 'windowS: 6s'],
    at: '6s',
    where: 'phase “Far to middle”, window (s)',
    message: 'A number must stand alone, found “6s”; write 6 without the unit.',
  },
  {
    code: 'bad-id',
    edit: ['from: far\n', 'from: the far one\n'],
    at: 'the',
    where: 'phase “Far to middle”, from',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “the far one”; write the id of one of the gates: far, middle, near, away or turned.',
  },
  {
    code: 'wrong-type',
    edit: ['controls: [pitch, power, call]\n    rates', 'controls: pitch, power, call\n    rates'],
    at: 'pitch,',
    where: 'phase “Far to middle”, controls',
    message: 'A list must stand here, found “pitch, power, call”; write [pitch, power, call].',
  },
  {
    code: 'bad-id',
    edit: ['controls: [pitch, power, call]\n    rates', 'controls: [pitch power call]\n    rates'],
    at: 'pitch',
    where: 'phase “Far to middle”, control 1',
    message:
      'An id has small letters, digits and single hyphens and begins with a letter, found “pitch power call”; put commas between them: pitch, power, call.',
  },
  {
    code: 'unknown-key',
    edit: ['closure: { floor: 0 }', 'closure: { min: 0 }'],
    at: 'min:',
    where: 'phase “Middle to near”, limits, closure, min',
    message: 'The keys here are floor, ceiling, because and source, found “min”; write “floor”.',
  },
  {
    code: 'unknown-key',
    edit: ['overriding: true', 'override: true'],
    at: 'override:',
    where: 'table “Go around”, override',
    message:
      'The keys here are id, label, phases, control, hit, priority, overriding, inputs, source and rules, found “override”; write “overriding”.',
  },
  {
    code: 'wrong-type',
    edit: [
      'priority: [more-power, hold-power, less-power]',
      'priority: more-power > hold-power > less-power',
    ],
    at: 'more-power',
    where: 'table “Power by height, close in”, priority',
    message:
      'A list must stand here, found “more-power > hold-power > less-power”; write [more-power, hold-power, less-power].',
  },
  {
    code: 'unknown-action',
    edit: ['priority: [more-power, hold-power, less-power]', 'priority: [more-power, hold-power, less-pwr]'],
    at: 'less-pwr]',
    where: 'table “Power by height, close in”, priority 3',
    message: 'An action named here must belong to the control “Power”, found “less-pwr”; write “less-power”.',
  },
  {
    code: 'wrong-type',
    edit: ['when: { sink: "> 600" }', 'when: sink > 600'],
    at: 'sink',
    where: 'table “Power by height, far out”, rule “falling”, when',
    message: '“when” holds conditions as quantity: "test", found “sink > 600”; write { sink: "> 600" }.',
  },
  {
    code: 'unknown-key',
    edit: ['when: { sink: "> 600" }', 'if: { sink: "> 600" }'],
    at: 'if:',
    where: 'table “Power by height, far out”, rule “falling”, if',
    message: 'The keys here are id, when, then, because and critical, found “if”; write “when”.',
  },
  {
    code: 'wrong-type',
    edit: ['when: { sink: "> 600" }', 'when: { sink: [600..800] }'],
    at: '[600..800]',
    where: 'table “Power by height, far out”, rule “falling”, when, sink',
    message:
      'A text must stand here, found a list of 1; put a text that begins with “[” in quotes: "[600..800]".',
  },
  {
    code: 'duplicate-key',
    edit: ['when: { sink: "> 600" }', 'when: { sink: "> 600", sink: "< 800" }'],
    at: 'sink:',
    where: 'table “Power by height, far out”, rule “falling”, when, sink',
    message:
      'A key may stand once in a mapping, “sink” stands here again; join the two into one condition, like [600..800].',
  },
  {
    code: 'wrong-type',
    edit: ['size: [200, 100]', 'size: 200 x 100'],
    at: '200',
    where: 'plate “The raft”, size',
    message: 'Two numbers must stand here, found “200 x 100”; write [200, 100], with a comma between them.',
  },
  {
    code: 'unknown-key',
    edit: ['shape: circle, at: [100, 50], radius: 8', 'shape: circle, at: [100, 50], r: 8'],
    at: 'r:',
    where: 'plate “The raft”, shape 3, r',
    message: 'The keys here are shape, at and radius, found “r”; write “radius”.',
  },
  {
    code: 'wrong-type',
    edit: ['points: [[10, 50], [190, 50]]', 'points: [10, 50, 190, 50]'],
    at: '[10,',
    where: 'plate “The raft”, shape 2, points',
    message:
      'Each point is a pair of numbers in its own [brackets], found them side by side; write [[10, 50], [190, 50]].',
  },
  {
    code: 'wrong-type',
    edit: ['points: [[10, 50], [190, 50]]', 'points: [(10, 50), (190, 50)]'],
    at: '[(10,',
    where: 'plate “The raft”, shape 2, points',
    message:
      'Each point is a pair of numbers in its own [brackets], found them side by side; write [[10, 50], [190, 50]].',
  },
  {
    code: 'unknown-choice',
    edit: ['    unit: m\n    source: book', '    unit: metres\n    source: book'],
    at: 'metres',
    where: 'plate “The raft”, unit',
    message: 'Here stands one of ft, m or nm, found “metres”; write “m”.',
  },
  {
    code: 'wrong-type',
    edit: ['at: [180, 80]', 'at: { x: 180, y: 80 }'],
    at: '{',
    where: 'plate “The raft”, spot “The bollard”, at',
    message: 'Two numbers must stand here, found a mapping; write [180, 80].',
  },
  {
    code: 'wrong-type',
    edit: ['answer: 3 ft', 'answer: 3'],
    at: '3',
    where: 'note “raft-height”, answer',
    message: 'A text must stand here, found 3; put it in quotes: "3".',
  },
  {
    code: 'unknown-key',
    edit: [
      'ask: How high does the raft lie above the water?',
      'question: How high does the raft lie above the water?',
    ],
    at: 'question:',
    where: 'note “raft-height”, question',
    message:
      'The keys here are id, ask, answer, accept, choices, gate, critical, because and source, found “question”; write “ask”.',
  },
];
