/** Faults of names: used twice, or leading nowhere. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const namesFaults: readonly Fault[] = [
  {
    code: 'duplicate-id',
    edit: ['id: turned\n', 'id: far\n'],
    at: 'far',
    where: 'gate “Turned away”, id',
    message: 'Each id stands once in its list, “far” stands here again; give this one an id of its own.',
  },
  {
    code: 'duplicate-id',
    edit: ['id: turned\n', 'id: arrival\n'],
    at: 'arrival',
    where: 'phase “Middle to near”, id',
    message:
      'A phase needs an id that no gate has, a gate is called “arrival” too; give the phase another, like “arrival-leg”.',
  },
  {
    code: 'repeated-entry',
    edit: ['controls: [pitch, power, call]\n    rates', 'controls: [pitch, power, call, pitch]\n    rates'],
    at: 'pitch]',
    where: 'phase “Far to middle”, control 4',
    message: 'Each name may stand once in this list, “pitch” stands here again; take it out.',
  },
  {
    code: 'repeated-entry',
    edit: ['default: 10 }\n', 'default: 10 }\n  - { quantity: wind, default: 12 }\n'],
    at: 'wind, default: 12',
    where: 'day setting “wind”, quantity',
    message: 'A quantity is set once for the day, “wind” is set here again; take one of the two out.',
  },
  {
    code: 'unknown-source',
    edit: ['floor: 500, source: book', 'floor: 500, source: bok'],
    at: 'bok',
    where: 'gate “Far gate”, altitude, source',
    message: 'A source named here must be one of “sources”, found “bok”; write “book”.',
  },
  {
    code: 'unknown-quantity',
    edit: ['effects: { closure: 1.5 }', 'effects: { closur: 1.5 }'],
    at: 'closur',
    where: 'control “Pitch”, action “Nose down”, effects, closur',
    message: 'A quantity named here must be one of “quantities”, found “closur”; write “closure”.',
  },
  {
    code: 'unknown-quantity',
    edit: ['height: altitude', 'height: elevation'],
    at: 'elevation',
    where: 'reference, height',
    message: 'A quantity named here must be one of “quantities”, found “elevation”; add it there.',
  },
  {
    code: 'unknown-gate',
    edit: ['completeBy: middle', 'completeBy: midle'],
    at: 'midle',
    where: 'checklist “Final checks”, complete by',
    message: 'A gate named here must be one of “gates”, found “midle”; write “middle”.',
  },
  {
    code: 'unknown-control',
    edit: ['controls: [pitch, power, call]\n    rates', 'controls: [pitch, power, call, flaps]\n    rates'],
    at: 'flaps',
    where: 'phase “Far to middle”, control 4',
    message: 'A control named here must be one of “controls”, found “flaps”; add it there.',
  },
  {
    code: 'unknown-phase',
    edit: ['phases: [approach, arrival]', 'phases: [approach, arival]'],
    at: 'arival',
    where: 'table “Go around”, phase 2',
    message: 'A phase named here must be one of “phases”, found “arival”; write “arrival”.',
  },
  {
    code: 'unknown-action',
    edit: ['then: nose-up, because: The nose', 'then: noseup, because: The nose'],
    at: 'noseup',
    where: 'table “Pitch by closure, far out”, rule “far-fast”, then',
    message: 'An action named here must belong to the control “Pitch”, found “noseup”; write “nose-up”.',
  },
  {
    code: 'unknown-action',
    edit: ['opposes: nose-up', 'opposes: up'],
    at: 'up',
    where: 'control “Pitch”, action “Nose down”, opposes',
    message:
      'An action named here must belong to the control “Pitch”, found “up”; write one of its actions, or add it there.',
  },
];
