/**
 * The published JSON Schema against an independent validator (ajv, JSON Schema draft 2020-12,
 * https://json-schema.org/draft/2020-12): it accepts what the loader accepts and refuses the same faults
 * of shape.
 */
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { deckJsonSchema, deckJsonSchemaText } from '../../src/deck/json-schema.ts';
import { deckSchema } from '../../src/deck/schema.ts';
import { fixtureDeckText } from '../unit/deck/fixture.ts';
import { anyPath, mutated, put, validDeck, type Json, type Path } from '../unit/deck/mutation.ts';

const published = readFileSync(new URL('../../shared/deck.schema.json', import.meta.url), 'utf8');
const decksFolder = new URL('../../decks/', import.meta.url);
const shipped = readdirSync(decksFolder).filter((name) => name.endsWith('.deck.yaml'));

const accepts = new Ajv2020({ strict: true, strictTuples: false, allErrors: true }).compile(
  JSON.parse(published) as object,
);

const pieces: readonly Json[] = [
  ...[null, true, 0, -1, 2.5, 1e10, NaN, Infinity, '', 'far', 'Far', '1.0.0', 'ft', 'x'.repeat(500)],
  ...[
    [],
    [1],
    [1, 2],
    [1, 2, 3],
    ['far'],
    {},
    { id: 'x' },
    { kind: 'distance', ft: 1 },
    { shape: 'line', points: [] },
  ],
];

const brokenShapes: readonly [name: string, path: Path, piece: Json | undefined][] = [
  ['another format', ['format'], 'gatecall-deck/2'],
  ['a missing title', ['title'], undefined],
  ['a version without its third number', ['version'], '1.0'],
  ['a language that is no tag', ['language'], 'British English'],
  ['no cautions', ['cautions'], []],
  ['an unknown key', ['colour'], 'blue'],
  ['an id with a capital', ['gates', 0, 'id'], 'Far'],
  ['an id of 61 letters', ['gates', 0, 'id'], 'a'.repeat(61)],
  ['an empty label', ['gates', 0, 'label'], ''],
  ['a label of 61 letters', ['gates', 0, 'label'], 'a'.repeat(61)],
  ['an unknown unit', ['quantities', 0, 'unit'], 'furlong'],
  ['a number as a text', ['quantities', 0, 'step'], '5'],
  ['a number beyond a thousand million', ['quantities', 0, 'step'], 1e10],
  ['a range of three', ['quantities', 0, 'range'], [0, 1, 2]],
  ['a range of one', ['quantities', 0, 'range'], [0]],
  ['a band without a target', ['gates', 0, 'values', 'altitude', 'target'], undefined],
  ['a key unknown to bands', ['gates', 0, 'values', 'altitude', 'tolerance'], 5],
  ['a way of detection that is none', ['gates', 0, 'detect', 'kind'], 'abeam'],
  ['a detection with the keys of another', ['gates', 0, 'detect', 'relativeDeg'], 90],
  ['a checklist without items', ['checklists', 0, 'items'], []],
  ['a control with one action', ['controls', 0, 'actions'], [{ id: 'one', label: 'One' }]],
  ['an axis that is none', ['controls', 0, 'axis'], 'diagonal'],
  ['a state that is a list', ['phases', 0, 'state'], ['altitude']],
  ['a rate with a key too many', ['phases', 0, 'rates', 'altitude', 'power'], 1],
  ['a hit policy that is none', ['tables', 0, 'hit'], 'collect'],
  ['thirteen inputs', ['tables', 0, 'inputs'], Array<string>(13).fill('altitude')],
  ['a rule without its reason', ['tables', 0, 'rules', 0, 'because'], undefined],
  ['a condition that is a number', ['tables', 0, 'rules', 0, 'when', 'closure'], 70],
  [
    'an outline of two points',
    ['plates', 0, 'shapes', 0, 'points'],
    [
      [0, 0],
      [1, 1],
    ],
  ],
  ['a shape that is none', ['plates', 0, 'shapes', 0, 'shape'], 'star'],
  ['a spot of one coordinate', ['plates', 0, 'spots', 0, 'at'], [1]],
  ['a note with an empty choice', ['notes', 1, 'choices', 0], ''],
];

describe('the published schema', () => {
  it('is what “npm run schema” writes', () => {
    expect(
      published === deckJsonSchemaText(),
      'Run “npm run schema” and commit shared/deck.schema.json.',
    ).toBe(true);
  });

  it('names its draft, and no address that nobody serves', () => {
    expect(deckJsonSchema()).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'Gatecall deck',
    });
    expect(published).not.toContain('"$id"');
  });

  it('keeps the words for authors', () => {
    expect(published).toContain('"description": "What the pilot sees there."');
    expect(published).toContain('"description": "Never below this. Critical."');
  });
});

describe('a shipped deck', () => {
  it('exists', () => {
    expect(shipped.length).toBeGreaterThan(0);
  });

  it.each(shipped)('%s is accepted', (name) => {
    const deck: unknown = parse(readFileSync(new URL(name, decksFolder), 'utf8'));
    accepts(deck);
    expect(accepts.errors ?? []).toEqual([]);
  });
});

describe('schema and loader', () => {
  it('both accept the fixture, which uses every part', () => {
    const deck: unknown = parse(fixtureDeckText);
    expect(accepts(deck)).toBe(true);
    expect(deckSchema.safeParse(deck).success).toBe(true);
  });

  it.each(brokenShapes)('both refuse %s', (_, path, piece) => {
    const deck = structuredClone(validDeck);
    put(deck, path, piece);
    expect(deckSchema.safeParse(deck).success).toBe(false);
    expect(accepts(deck)).toBe(false);
  });

  it('say the same of random changes to the deck', () => {
    const plainPiece = fc.constantFrom<Json>(...pieces);
    const change = fc.oneof(
      fc.record({ kind: fc.constant('delete' as const), path: anyPath }),
      fc.record({ kind: fc.constant('replace' as const), path: anyPath, piece: plainPiece }),
      fc.record({ kind: fc.constant('swap' as const), path: anyPath, other: anyPath }),
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const deck = mutated(changes);
        expect(accepts(deck)).toBe(deckSchema.safeParse(deck).success);
      }),
      { numRuns: 400 },
    );
  });
});
