/** Faults of lines: dashes, columns, quotes, remarks. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const lineFaults: readonly Fault[] = [
  {
    code: 'missing-dash',
    edit: ['  - id: middle\n', '    id: middle\n'],
    at: 'id:',
    where: 'gate “Far gate”',
    message:
      'Each element of a list begins with a dash and a space, “id: middle” has none; write “- id: middle”, the dash in one column with the list’s others.',
  },
  {
    code: 'missing-dash',
    edit: ['  - id: middle\n', '  id: middle\n'],
    at: 'id:',
    where: 'gate “Far gate”',
    message:
      'Each element of a list begins with a dash and a space, “id: middle” has none; write “- id: middle”, the dash in one column with the list’s others.',
  },
  {
    code: 'missing-dash',
    edit: ['  - id: far\n', '    id: far\n'],
    at: 'id:',
    where: 'the deck',
    message:
      'Each element of a list begins with a dash and a space, “id: far” has none; write “- id: far”, the dash in one column with the list’s others.',
  },
  {
    code: 'missing-dash',
    edit: ['  - id: closure\n', '    id: closure\n'],
    at: 'id:',
    where: 'quantity “Altitude”',
    message:
      'Each element of a list begins with a dash and a space, “id: closure” has none; write “- id: closure”, the dash in one column with the list’s others.',
  },
  {
    code: 'missing-dash',
    edit: ['      - { id: door,', '      { id: door,'],
    at: '{',
    where: 'checklist “Final checks”, item “Floats”',
    message:
      'Each element of a list begins with a dash and a space, “{ id:” has none; write “- { id:”, the dash in one column with the list’s others.',
  },
  {
    code: 'yaml-syntax',
    edit: ['response: Unlatched', 'response: Unlatched: twice'],
    at: 'Unlatched:',
    where: 'checklist “Final checks”, item “Door”, response, Unlatched',
    message:
      'Inside brackets entries are parted by commas and nothing is indented, here a key or a dash follows at once; add the comma, or put a text that holds “: ” in quotes.',
  },
  {
    code: 'yaml-syntax',
    edit: ['response: Unlatched', 'response: # 2 unlatched'],
    at: '#',
    where: 'checklist “Final checks”, item “Door”, response',
    message:
      'A “#” behind a space begins a remark, here it hides the rest of the line with its closing bracket; put the text that holds “#” in quotes.',
  },
  {
    code: 'yaml-syntax',
    edit: ['response: Unlatched', 'response: Unlatched #2'],
    at: '#2',
    where: 'checklist “Final checks”, item “Door”, response',
    message:
      'A “#” behind a space begins a remark, here it hides the rest of the line with its closing bracket; put the text that holds “#” in quotes.',
  },
  {
    code: 'yaml-syntax',
    edit: ['accept: ["3", three feet]', 'accept: [three feet #2, x]'],
    at: '#2,',
    where: 'note “raft-height”, accepted answer 1',
    message:
      'A “#” behind a space begins a remark, here it hides the rest of the line with its closing bracket; put the text that holds “#” in quotes.',
  },
  {
    code: 'tab-indentation',
    edit: ['    label: Middle gate', '\tlabel: Middle gate'],
    at: '\tlabel:',
    where: 'gate “middle”',
    message: 'Lines are indented with spaces, here stands a tab; replace it by spaces.',
  },
  {
    code: 'tab-indentation',
    edit: ['  - id: middle\n', '\t- id: middle\n'],
    at: '\t-',
    where: 'gate “Far gate”, values',
    message: 'Lines are indented with spaces, here stands a tab; replace it by spaces.',
  },
  {
    code: 'yaml-syntax',
    edit: ['    label: Middle gate', '     label: Middle gate'],
    at: 'label:',
    where: 'gate 2',
    message:
      'The keys of one part begin in one column, this line in column 6 and “id” in column 5; take 1 space away before it.',
  },
  {
    code: 'yaml-syntax',
    edit: ['    label: Middle gate', '   label: Middle gate'],
    at: 'label:',
    where: 'gate “middle”',
    message:
      'The keys of one part begin in one column, this line in column 4 and “id” in column 5; put 1 space more before it.',
  },
  {
    code: 'yaml-syntax',
    edit: ['  - id: middle\n', '   - id: middle\n'],
    at: '-',
    where: 'gate “Far gate”',
    message:
      'The dashes of one list begin in one column, this line in column 4 and the dash above in column 3; take 1 space away before it.',
  },
  {
    code: 'yaml-syntax',
    edit: ['  - id: middle\n', ' - id: middle\n'],
    at: '-',
    where: 'gate “Far gate”',
    message:
      'The dashes of one list begin in one column, this line in column 2 and the dash above in column 3; put 1 space more before it.',
  },
  {
    code: 'yaml-syntax',
    edit: ['      altitude: { target: 300', '     altitude: { target: 300'],
    at: 'sink:',
    where: 'gate “Middle gate”',
    message:
      'The keys of one part begin in one column, this line in column 7 and “altitude” in column 6; take 1 space away before it.',
  },
  {
    code: 'yaml-syntax',
    edit: ['because: Low gets lower.', "because: 'It doesn't get lower.'"],
    at: 't',
    where: 'table “Power by height, far out”, rule “low”, because',
    message: 'An apostrophe ends a text in \'…\', and “t” follows it; put the whole text in "…" instead.',
  },
  {
    code: 'yaml-syntax',
    edit: ['title: Landing on the raft', "title: 'The raft's landing'"],
    at: 's',
    where: 'title',
    message: 'An apostrophe ends a text in \'…\', and “s” follows it; put the whole text in "…" instead.',
  },
  {
    code: 'yaml-syntax',
    edit: ['cue: Half way, the jetty abeam.', 'cue: "Half way" to go'],
    at: 'to',
    where: 'gate “Middle gate”, cue',
    message:
      'A text in "…" ends at the second ", and “to” follows it; put the whole text in \'…\', or write \\" inside it.',
  },
];
