/** What is no error and was hardly meant. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const doubtFaults: readonly Fault[] = [
  {
    code: 'off-step',
    edit: ['target: 60, desired', 'target: 60.5, desired'],
    at: '60.5,',
    where: 'gate “Far gate”, closure, target',
    message:
      'Closure is called in steps of 1, found 60.5 between two of them; write 60 or 61, or make the step of the quantity finer.',
  },
  {
    code: 'off-step',
    edit: ['adequate: [9, 11.5]', 'adequate: [9, 11.7]'],
    at: '11.7],',
    where: 'gate “Far gate”, angle of attack, adequate, upper end',
    message:
      'Angle of attack is called in steps of 0.5, found 11.7 between two of them; write 11.5 or 12, or make the step of the quantity finer.',
  },
  {
    code: 'off-step',
    edit: ['floor: 500, source', 'floor: 503, source'],
    at: '503,',
    where: 'gate “Far gate”, altitude, floor',
    message:
      'Altitude is called in steps of 5, found 503 between two of them; write 500 or 505, or make the step of the quantity finer.',
  },
  {
    code: 'off-step',
    edit: ['sink: { ceiling: 800', 'sink: { ceiling: 805'],
    at: '805,',
    where: 'phase “Far to middle”, limits, sink, ceiling',
    message:
      'Sink is called in steps of 10, found 805 between two of them; write 800 or 810, or make the step of the quantity finer.',
  },
  {
    code: 'off-step',
    edit: ['default: 10', 'default: 10.5'],
    at: '10.5',
    where: 'day setting “wind”, default',
    message:
      'Wind is called in steps of 1, found 10.5 between two of them; write 10 or 11, or make the step of the quantity finer.',
  },
  {
    code: 'cue-tells-value',
    edit: ['cue: The raft as wide as a thumb.', 'cue: At 600 feet the raft is as wide as a thumb.'],
    at: 'At',
    where: 'gate “Far gate”, cue',
    message:
      'A cue should not tell a value that is asked at its gate, “At 600 feet the raft is as wide as a th…” tells Altitude; say what the pilot sees without the number.',
  },
  {
    code: 'cue-tells-value',
    edit: ['cue: Half way, the jetty abeam.', 'cue: "Half way, altitude 300."'],
    at: '"Half',
    where: 'gate “Middle gate”, cue',
    message:
      'A cue should not tell a value that is asked at its gate, “Half way, altitude 300.” tells Altitude; say what the pilot sees without the number.',
  },
  {
    code: 'typographic-quotes',
    edit: ['title: Landing on the raft', 'title: “Landing on the raft”'],
    at: '“Landing',
    where: 'title',
    message:
      'Quotes around a text are straight, “Landing on the raft” has typographic ones that will be shown; write "Landing on the raft", or put straight ones around them.',
  },
  {
    code: 'doubtful-remark',
    edit: ['ask: How high does the raft lie above the water?', 'ask: How high does raft #2 lie?'],
    at: '#2',
    where: 'note “raft-height”, ask',
    message:
      'A “#” behind a space begins a remark, so the text ends before “#2 lie?”; put the whole text in quotes, or a space behind the “#” of a remark.',
  },
  {
    code: 'missing-neutral',
    severity: 'warning',
    edit: ['spoken: hold the nose, neutral: true', 'spoken: hold the nose'],
    at: 'actions:',
    where: 'control “Pitch”, actions',
    message:
      'A control should have a neutral action, the one that leaves it as it is, this one has none; add “neutral: true” to that action.',
  },
];
