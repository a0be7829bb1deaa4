/** Faults that an edit of the fixture can't show: whole texts, and the place and finding they lead to. */
import type { DeckCode } from '../../../../src/deck/codes.ts';
import type { Place } from '../../../../src/deck/findings.ts';
import { fixtureDeckText } from '../fixture.ts';

export interface TextFault {
  readonly name: string;
  readonly code: DeckCode;
  readonly text: string;
  readonly at: Place;
  readonly message: string;
}

/** Nine levels, each ten times the one before: a thousand million values if they were written out. */
const multiplying = [
  'a: &a [x, x, x, x, x, x, x, x, x, x]',
  ...'bcdefghi'.split('').map((name, index) => {
    const before = `*${'abcdefgh'[index]}`;
    return `${name}: &${name} [${Array<string>(10).fill(before).join(', ')}]`;
  }),
].join('\n');

/** The line of the fixture that holds a piece of text. */
const lineOf = (piece: string): number =>
  fixtureDeckText.split('\n').findIndex((line) => line.includes(piece)) + 1;

export const wholeTextFaults: readonly TextFault[] = [
  {
    name: 'a file of more than 2 MB',
    code: 'too-large',
    text: `# ${'é'.repeat(1_000_000)}\n${fixtureDeckText}`,
    at: { line: 1, column: 1 },
    message: 'A deck file may have 2 MB, this one is larger; split it into several decks.',
  },
  {
    name: 'a small file of a quarter of a million marks',
    code: 'too-large',
    text: `[${'0,'.repeat(130_000)}]`,
    at: { line: 1, column: 250_001 },
    message: 'A deck file may have 250,000 words and marks, this one has more; split it into several decks.',
  },
  {
    name: 'an empty file',
    code: 'empty-file',
    text: '',
    at: { line: 1, column: 1 },
    message: 'A deck file must hold a deck, this one is empty; begin it with “format: gatecall-deck/1”.',
  },
  {
    name: 'a file of blanks',
    code: 'empty-file',
    text: '\uFEFF \n\t\n',
    at: { line: 1, column: 1 },
    message: 'A deck file must hold a deck, this one is empty; begin it with “format: gatecall-deck/1”.',
  },
  {
    name: 'a file in UTF-16',
    code: 'not-utf8',
    text: new TextDecoder().decode(
      Uint8Array.from([0xff, 0xfe, ...[...fixtureDeckText].flatMap((c) => [c.charCodeAt(0), 0])]),
    ),
    at: { line: 1, column: 1 },
    message:
      'A deck file must be a text in UTF-8, this one is UTF-16; save it again with the encoding “UTF-8”.',
  },
  {
    name: 'a file in an encoding of one byte a character',
    code: 'not-utf8',
    text: new TextDecoder().decode(
      Uint8Array.from([...fixtureDeckText.replace('abeam', '90°')].map((c) => c.charCodeAt(0))),
    ),
    at: { line: lineOf('the jetty abeam'), column: 32 },
    message:
      'A deck file must be a text in UTF-8, here stands a character in another encoding; save it again with the encoding “UTF-8”.',
  },
  {
    name: 'a picture',
    code: 'not-utf8',
    text: new TextDecoder().decode(
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 200]),
    ),
    at: { line: 1, column: 1 },
    message:
      'A deck file must be a text in UTF-8, this one is no text; choose the file that ends in “.deck.yaml”.',
  },
  {
    name: 'a list',
    code: 'not-a-mapping',
    text: '# Gates\n- far\n- near\n',
    at: { line: 2, column: 1 },
    message:
      'A deck file must be a mapping of keys and values, found a list of 2; begin it with “format: gatecall-deck/1”.',
  },
  {
    name: 'a file of comments only',
    code: 'not-a-mapping',
    text: '# Nothing yet\n',
    at: { line: 1, column: 1 },
    message:
      'A deck file must be a mapping of keys and values, found nothing; begin it with “format: gatecall-deck/1”.',
  },
  {
    name: 'a plain text',
    code: 'not-a-mapping',
    text: 'Dear instructor',
    at: { line: 1, column: 1 },
    message:
      'A deck file must be a mapping of keys and values, found “Dear instructor”; begin it with “format: gatecall-deck/1”.',
  },
  {
    name: 'ten thousand brackets in each other',
    code: 'too-deep',
    text: `gates: ${'['.repeat(10_000)}${']'.repeat(10_000)}`,
    at: { line: 1, column: 47 },
    message:
      'Lists and mappings may lie 40 deep in each other, here they lie deeper; close the open brackets or take indentation away.',
  },
  {
    name: 'aliases that multiply',
    code: 'too-many-aliases',
    text: `${fixtureDeckText}${multiplying}\n`,
    at: { line: fixtureDeckText.split('\n').length + 1, column: 12 },
    message:
      'A file may use 200 aliases, counted again inside what each stands for; here are more: write the values out.',
  },
];
