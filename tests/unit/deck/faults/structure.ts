/** Faults of structure: phases, controls, tables, plates, notes; and the warnings. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const structureFaults: readonly Fault[] = [
  {
    code: 'phase-order',
    edit: ['from: far\n    to: middle', 'from: middle\n    to: far'],
    at: 'far',
    where: 'phase “Far to middle”, to',
    message: 'A phase leads from one gate to a later one, found from “middle” to “far”; swap or change them.',
  },
  {
    code: 'state-outside-range',
    edit: ['state: { altitude: [40, 400]', 'state: { altitude: [40, 4000]'],
    at: '[40, 4000]',
    where: 'phase “Middle to near”, state, altitude',
    message:
      'What can occur in a phase must lie inside the quantity’s range [0, 1000], found [40, 4000]; narrow it or widen the range.',
  },
  {
    code: 'quantity-not-in-phase',
    edit: ['closure: { constant: -0.5 }', 'aoa: { constant: -0.5 }'],
    at: 'aoa',
    where: 'phase “Far to middle”, rates, angle of attack',
    message:
      'Rates are worked out from the quantities in the phase’s “state”, found “aoa”; add it to “state” or take it away.',
  },
  {
    code: 'quantity-not-in-phase',
    edit: ['inputs: [closure, altitude]', 'inputs: [closure, altitude, to-go]'],
    at: 'to-go',
    where: 'table “Pitch by closure, close in”, input 3',
    message:
      'A table decides on quantities shown in its phases, “Middle to near” has no “to-go” in its “state”; add it there with its range or change the table.',
  },
  {
    code: 'control-not-in-phase',
    edit: ['controls: [pitch, power, call]\n    limits', 'controls: [pitch, power]\n    limits'],
    at: 'call',
    where: 'table “Go around”, control',
    message:
      'A table works a control of its phases, “Middle to near” has no “call” among its controls; add it there or change the table.',
  },
  {
    code: 'condition-not-input',
    edit: ['when: { closure: "> 70" }', 'when: { closur: "> 70" }'],
    at: 'closur:',
    where: 'table “Pitch by closure, far out”, rule “far-fast”, when, closur',
    message: 'Conditions stand on the table’s inputs “closure”, found “closur”; write “closure”.',
  },
  {
    code: 'opposes-itself',
    edit: ['opposes: nose-up', 'opposes: nose-down'],
    at: 'nose-down',
    where: 'control “Pitch”, action “Nose down”, opposes',
    message:
      'An action opposes another one, “nose-down” names itself; name its opposite or take the line away.',
  },
  {
    code: 'second-neutral',
    edit: ['id: less-power, label: Less,', 'id: less-power, neutral: true, label: Less,'],
    at: 'true',
    where: 'control “Power”, action “Hold”, neutral',
    message:
      'A control has one neutral action, “Less” is it already; take “neutral” away from one of the two.',
  },
  {
    code: 'missing-neutral',
    edit: ['label: Continue, neutral: true', 'label: Continue'],
    at: 'actions',
    where: 'control “Call”, actions',
    message:
      'A control needs a neutral action when an overriding table like “Go around” works it, this one has none; add “neutral: true” to the action that means to leave it.',
  },
  {
    code: 'missing-priority',
    edit: ['    priority: [more-power, hold-power, less-power]\n', ''],
    at: 'priority',
    where: 'table “Power by height, close in”, hit',
    message:
      'A table with “hit: priority” must rank its actions, “priority” is missing; add a list of them, the first to win first.',
  },
  {
    code: 'unexpected-priority',
    edit: ['hit: first', 'hit: first\n    priority: [more-power]'],
    at: 'priority',
    where: 'table “Power by height, far out”, priority',
    message:
      'Only a table with “hit: priority” ranks its actions, this one has “hit: first”; take “priority” away or change “hit”.',
  },
  {
    code: 'incomplete-priority',
    edit: ['priority: [more-power, hold-power, less-power]', 'priority: [more-power, less-power]'],
    at: '[more-power',
    where: 'table “Power by height, close in”, priority',
    message: '“priority” must rank every action of the rules, it lacks “hold-power”; add what is missing.',
  },
  {
    code: 'second-table',
    edit: ['phases: [arrival]\n    control: pitch', 'phases: [arrival, approach]\n    control: pitch'],
    at: 'approach',
    where: 'table “Pitch by closure, close in”, phase 2',
    message:
      'One table answers for a control in a phase, “Pitch by closure, far out” does so here already; join the two, change the phases, or mark one as overriding.',
  },
  {
    code: 'outside-plate',
    edit: ['label: The bollard, at: [180, 80]', 'label: The bollard, at: [280, 80]'],
    at: '[280',
    where: 'plate “The raft”, spot “The bollard”, at',
    message:
      'The spot “The bollard” must lie on the drawing, 200 wide and 100 high, found [280, 80]; move it or enlarge “size”.',
  },
  {
    code: 'answer-among-choices',
    edit: ['choices: [Less power', 'choices: [nose  up'],
    at: 'nose',
    where: 'note “first-correction”, choice 1',
    message:
      '“choices” holds the wrong answers, “nose up” is a right one; take it out, the program adds the answer itself.',
  },
  {
    code: 'unused-quantity',
    edit: ['day:\n', '  - { id: flaps, label: Flaps, unit: deg, range: [0, 40], step: 10 }\nday:\n'],
    at: 'flaps',
    where: 'quantity “Flaps”, id',
    message:
      'A quantity should be used by a gate, a phase, an action or the day, this one is not; use it or take it out.',
  },
  {
    code: 'unused-source',
    edit: ['quantities:\n', '  - { id: letter, title: A letter, kind: invented }\nquantities:\n'],
    at: 'letter',
    where: 'source “A letter”, id',
    message:
      'A source should be named by a value, this one is named nowhere; name it where it belongs or take it out.',
  },
  {
    code: 'gate-without-values',
    edit: [
      '    values:\n      altitude: { target: 200, desired: [180, 250], adequate: [150, 300] }\n',
      '    values: {}\n',
    ],
    at: 'values',
    where: 'gate “Away again”, values',
    message: 'A gate should say what to have there, this one has no values; add one, or take the gate out.',
  },
  {
    code: 'same-label',
    edit: ['label: Middle gate', 'label: Far gate'],
    at: 'Far gate',
    where: 'gate “Far gate”, label',
    message: 'Gates should be told apart by their labels, “Far gate” is here again; change one of the two.',
  },
];
