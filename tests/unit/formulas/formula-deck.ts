/** The fixture deck with quantities worked out from the day, and bands made of them. */
import { edited } from '../deck/edited.ts';

const edits: readonly (readonly [from: string, to: string])[] = [
  [
    '  - { id: wind, label: Wind, unit: kt, range: [0, 40], step: 1 }\n',
    `  - { id: wind, label: Wind, spoken: wind, unit: kt, range: [0, 30], step: 1 }
  - { id: gust, label: Gust, spoken: gust, unit: kt, range: [0, 30], step: 1 }
  - { id: load, label: Load, unit: kg, range: [0, 400], step: 10 }
  - { id: waves, label: Wave height, unit: m, range: [0, 1], step: 0.1 }
  - { id: felt-wind, label: Wind to fly for, spoken: wind to fly for, unit: kt, range: [0, 60], step: 1 }
  - { id: digging-in, label: Least closure today, unit: kt, range: [0, 40], step: 1 }
  - { id: run-in, label: Time from the far gate, unit: s, range: [0, 600], step: 1 }
`,
  ],
  [
    '  - { quantity: wind, default: 10 }\n',
    `  - { quantity: wind, default: 10 }
  - { quantity: gust, default: 10 }
  - { quantity: load, default: 150 }
  - { quantity: waves, default: 0.5 }
formulas:
  - { quantity: run-in, expression: 6000 ft / (70 kt - felt_wind / 2) }
  - { quantity: felt-wind, expression: wind + gust_share(gust), because: Part of the gust is always there., source: book }
  - { quantity: digging-in, expression: "least_closure(load, waves)" }
`,
  ],
  [
    'closure: { target: 60, desired: [57, 63], adequate: [50, 70], ceiling: 80 }',
    'closure: { target: 75 kt - felt_wind, desired: [closure - 3 kt, closure + 3 kt], adequate: [closure - 10 kt, closure + 10 kt], ceiling: 90 }',
  ],
];

export const formulaDeckText: string = edits.reduce(
  (text, [from, to]) => edited(from, to, text),
  edited('3 ft\n', '3 ft\n'),
);
