import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostFormulaCharacters } from '../../../src/deck/limits.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { compileFormula } from '../../../src/formulas/compile.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { namesIn, type Scope } from '../../../src/formulas/scope.ts';
import type { Quantity } from '../../../src/deck/types.ts';
import { edited } from '../deck/edited.ts';
import { formulaDeckText } from './formula-deck.ts';

const wind = { id: 'wind', unit: 'kt' } as Quantity;
const scope: Scope = {
  quantityNamed: (name) => (name === 'wind' ? wind : undefined),
  isOfDay: () => true,
  chartNamed: () => null,
  known: new Set(['wind']),
};
const compiled = (text: string) => compileFormula(text, namesIn(scope, text));
const repeated = (piece: string, count = 480): string => piece.repeat(Math.floor(count / piece.length));

describe('a hostile formula', () => {
  it.each([
    ['an assignment', 'wind = 3 kt'],
    ['a function of its own', 'f(x) = x + wind'],
    ['a property', 'wind.constructor'],
    ['a property in brackets', 'wind["constructor"]'],
    ['an index', 'wind[1]'],
    ['a matrix', '[1, 2; 3, 4]'],
    ['an object', '{ a: 1 }'],
    ['a string', '"wind"'],
    ['a string in single quotes', "'wind'"],
    ['a range', '1:10'],
    ['a second statement', 'wind; wind'],
    ['a second line', 'wind\nwind'],
    ['a comment', 'wind # or not'],
    ['a factorial', '170!'],
    ['a remainder', 'mod(wind, 3 kt)'],
    ['a remainder in a word', 'wind mod 3 kt'],
    ['a change of units', 'wind to ft'],
    ['a transposition', "wind'"],
    ['a template', '${wind}'],
    ['logic', 'wind and wind'],
    ['bits', 'wind | 1'],
    ['true', 'true'],
    ['null', 'null'],
    ['infinity', 'Infinity'],
    ['no number', 'NaN'],
    ['the imaginary unit', 'i'],
    ['too large a number', '1e300'],
    ['a number without end', '9'.repeat(400)],
    ['the name of a call alone', 'sqrt'],
    ['a call of a call', 'sqrt(wind)(3)'],
    ['a call of a number', '3(4)'],
    ['a call of a quantity', 'wind(3)'],
    ['a chain of comparisons', '1 < 2 < 3 ? 1 : 2'],
    ['a comparison as a number', '(1 < 2) + 3'],
    ['a number before “?”', '1 ? 2 : 3'],
    ['a huge power', '9 ^ 999'],
    ['a power of powers', '9 ^ 9 ^ 9'],
    ['a broken power', 'wind ^ 0.5'],
    ['a power of the day', '2 ^ wind'],
    ['a product without a mark', '2 wind'],
    ['parentheses side by side', '(2)(3)'],
    ['nothing', ''],
    ['blanks', '   '],
    ['an open parenthesis', '(('],
    ...[
      'import',
      'createUnit',
      'evaluate',
      'parse',
      'compile',
      'simplify',
      'derivative',
      'config',
      'help',
    ].map((name) => [`a call of ${name}`, `${name}(wind)`]),
    ...['constructor', '__proto__', 'prototype', 'toString', 'hasOwnProperty', 'valueOf', 'e', 'process'].map(
      (name) => [`the name ${name}`, name],
    ),
    ...['constructor', '__proto__', 'toString', 'eval', 'Function', 'random', 'now'].map((name) => [
      `a call of ${name}`,
      `${name}(3)`,
    ]),
    ['letters that look like others', 'wіnd'],
    ['a sign that looks like another', 'wind − wind'],
    ['wide digits', '１５ kt'],
    ['an invisible blank', 'wind\u200b + wind'],
    ['a mark that turns the text round', '\u202ewind'],
    ['half a character', '\ud800'],
    ['an end of text', 'wind\0'],
  ])('is refused with a message: %s', (_, text) => {
    const made = compiled(text);
    expect(made.ok).toBe(false);
    if (!made.ok) expect(`${made.why}; ${made.mend}`.length).toBeLessThan(500);
  });

  it.each([
    ['parentheses', `${'('.repeat(200)}wind${')'.repeat(200)}`],
    ['calls', `${repeated('abs(', 400)}wind`],
    ['signs', `${repeated('-')}wind`],
    ['signs and blanks', `${repeated('- ')}wind`],
    ['powers', `${repeated('2^')}2`],
    ['choices', `${repeated('1<2?1:')}2`],
    ['logical signs', `${repeated('!')}wind`],
  ])('is refused when %s lie deep in each other', (_, text) => {
    expect(compiled(text)).toMatchObject({ ok: false });
  });

  it('is refused before it is read, when it is long', () => {
    const made = compiled('wind + '.repeat(150_000));
    expect(made).toMatchObject({ ok: false, code: 'formula-not-allowed', into: mostFormulaCharacters });
  });

  it.each([
    repeated('1+'),
    repeated('1*'),
    repeated('1 kt,'),
    repeated('wind'),
    repeated('1 '),
    repeated('a b '),
  ])('of full length is answered: %s', (text) => {
    expect(typeof compiled(`${text}1`).ok).toBe('boolean');
  });

  it('is answered, whatever its marks', () => {
    const pieces = fc.constantFrom(
      ...[
        'wind',
        ' ',
        '(',
        ')',
        '+',
        '-',
        '*',
        '/',
        '^',
        '?',
        ':',
        '<',
        '=',
        '!',
        ',',
        '.',
        '1',
        '2e3',
        'kt',
      ],
      ...[
        'sqrt',
        'max',
        '"',
        '[',
        ']',
        '{',
        '}',
        ';',
        '\n',
        '%',
        "'",
        '#',
        '&',
        '|',
        'to',
        'in',
        'mod',
        'not',
      ],
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 60 }), (list) => {
        expect(typeof compiled(list.join('')).ok).toBe('boolean');
      }),
      { numRuns: 2000 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (text) => {
        expect(typeof compiled(text).ok).toBe('boolean');
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a hostile deck', () => {
  const codes = (text: string) => loadDeck(text, readFormulas).findings.map(({ code }) => code);

  it('with a megabyte in one formula is told that it is too long', () => {
    const text = edited('wind + gust_share(gust)', 'wind + '.repeat(150_000) + 'wind', formulaDeckText);
    expect(codes(text)).toContain('text-too-long');
  });

  it('with more formulas than allowed is told so', () => {
    const many = '  - { quantity: felt-wind, expression: wind }\n'.repeat(300);
    expect(codes(edited('formulas:\n', `formulas:\n${many}`, formulaDeckText))).toContain('too-many');
  });

  it('with a long chain of formulas is worked out', () => {
    const ids = Array.from({ length: 190 }, (_, at) => `link-${at}`);
    const quantities = ids.map(
      (id) => `  - { id: ${id}, label: Link ${id}, unit: kt, range: [0, 1000], step: 1 }\n`,
    );
    const links = ids.map(
      (id, at) =>
        `  - { quantity: ${id}, expression: ${at === ids.length - 1 ? 'wind' : `link_${at + 1} + 1 kt`} }\n`,
    );
    const text = edited(
      'day:\n',
      `${quantities.join('')}day:\n`,
      edited('formulas:\n', `formulas:\n${links.join('')}`, formulaDeckText),
    );
    expect(codes(text)).toEqual([]);
  });
});
