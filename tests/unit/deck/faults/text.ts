/** Faults of the text and of its YAML. Each is one edit of the fixture deck and the one finding it makes. */
import type { Fault } from './fault.ts';

export const textFaults: readonly Fault[] = [
  {
    code: 'yaml-syntax',
    edit: ['summary: Three gates', 'summary: Gates: three'],
    at: 'Gates',
    where: 'summary, Gates',
    message:
      'A value may hold no “: ” of its own, this one does; put the text in quotes, or give the key a line of its own.',
  },
  {
    code: 'yaml-syntax',
    edit: ['title: Landing on the raft\n', 'title: "Landing on the raft\n'],
    at: '"Landing',
    where: 'title',
    message: 'A text opened with " must be closed with ", this one is not; add the closing mark.',
  },
  {
    code: 'tab-indentation',
    edit: ['    choices: [Less power', '\tchoices: [Less power'],
    at: '\t',
    where: 'note “first-correction”',
    message: 'Lines are indented with spaces, here stands a tab; replace it by spaces.',
  },
  {
    code: 'too-many',
    edit: ['{ when: "< 0", say: falling back }', `[${'0, '.repeat(2001)}]`],
    at: '[0',
    where: 'quantity “Closure”, words 1',
    message: 'A list may have 2,000 elements, this one has 2,001; split the deck.',
  },
  {
    code: 'bad-alias',
    edit: ['title: Landing on the raft', 'title: *raft'],
    at: '*raft',
    where: 'title',
    message:
      'An alias must stand for a value marked earlier with “&”, “*raft” stands for nothing before it; write the value out, or put a text with “*” in quotes.',
  },
  {
    code: 'bad-tag',
    edit: ['title: Landing on the raft', 'title: !name Landing'],
    at: '!name',
    where: 'title',
    message:
      'Values carry no type marks, here stands “!name”; take it away, or put a text with “!” in quotes.',
  },
  {
    code: 'bad-key',
    edit: ['summary: Three', '[summary]: Three'],
    at: '[summary]',
    where: 'the deck',
    message: 'A key must be a word, here it is a list or a mapping; write one word before the colon.',
  },
  {
    code: 'duplicate-key',
    edit: ['summary: ', 'title: Another\nsummary: '],
    at: 'title: Another',
    where: 'title',
    message: 'A key may stand once in a mapping, “title” stands here again; take one of the two out.',
  },
  {
    code: 'reserved-name',
    edit: ['values:\n      altitude: { target: 300', 'values:\n      constructor: { target: 300'],
    at: 'constructor',
    where: 'gate “Middle gate”, constructor',
    message: 'No key may be called “constructor”, a name that the program itself needs; choose another.',
  },
  {
    code: 'reserved-name',
    edit: ['id: bollard, label', 'id: constructor, label'],
    at: 'constructor',
    where: 'plate “The raft”, spot “The bollard”, id',
    message: 'No id may be “constructor”, a name that the program itself needs; choose another.',
  },
  {
    code: 'several-documents',
    edit: ['notes:\n', '---\nnotes:\n'],
    at: '---',
    where: 'the deck',
    message: 'A file holds one deck, here “---” begins a second one; move it to a file of its own.',
  },
];
