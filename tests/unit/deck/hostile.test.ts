import { describe, expect, it } from 'vitest';
import { loadDeck } from '../../../src/deck/load.ts';
import { edited } from './edited.ts';
import { fixtureDeckText } from './fixture.ts';

const codesOf = (text: string): string[] => loadDeck(text).findings.map(({ code }) => code);

describe('a name that every object answers to', () => {
  const maps = [
    ['the deck', 'summary: Three', '{key}: { polluted: yes }\nsummary: Three'],
    ['values', 'aoa: { target: 10', '{key}: { polluted: yes }\n      aoa: { target: 10'],
    ['state', 'state: { altitude: [40, 400]', 'state: { {key}: [0, 1], altitude: [40, 400]'],
    ['when', 'when: { closure: "> 70" }', 'when: { {key}: "> 1", closure: "> 70" }'],
    ['effects', 'effects: { sink: 50 }', 'effects: { {key}: 1, sink: 50 }'],
    ['a band', 'aoa: { target: 10', 'aoa: { {key}: 1, target: 10'],
  ] as const;
  const keys = ['__proto__', 'constructor', 'prototype', '"__proto__"', '"\\x5f_proto__"'];

  it.each(maps.flatMap(([name, from, to]) => keys.map((key) => [key, name, from, to] as const)))(
    'is refused as key %s in %s',
    (key, _, from, to) => {
      const { deck, findings } = loadDeck(edited(from, to.replace('{key}', key)));
      expect(deck).toBeNull();
      expect(findings.map(({ code }) => code)).toEqual(['reserved-name']);
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    },
  );

  it.each(['constructor', 'prototype'])('is refused as id “%s”', (id) => {
    expect(codesOf(edited('id: bollard', `id: ${id}`))).toEqual(['reserved-name']);
  });

  it('is an ordinary text elsewhere', () => {
    expect(codesOf(edited('title: Landing on the raft', 'title: constructor'))).toEqual([]);
  });
});

describe('very deep nesting', () => {
  let stairs = '';
  for (let level = 0; level < 1_500; level++) stairs += `${' '.repeat(level)}a:\n`;

  it.each([
    ['brackets that open', '['.repeat(10_000)],
    ['brackets that open and close', `${'['.repeat(10_000)}${']'.repeat(10_000)}`],
    ['braces', `${'{a: '.repeat(10_000)}${'}'.repeat(10_000)}`],
    ['dashes on one line', '- '.repeat(10_000)],
    ['question marks on one line', '? '.repeat(10_000)],
    ['colons on one line', ': '.repeat(10_000)],
    ['keys on one line', 'a: '.repeat(10_000)],
    ['keys and dashes on one line', 'a: - '.repeat(10_000)],
    ['indentation', stairs],
  ])('by %s is one finding', (_, text) => {
    expect(codesOf(text)).toEqual(['too-deep']);
  });

  it('by aliases is found as well', () => {
    const [open, close] = ['['.repeat(30), ']'.repeat(30)];
    expect(codesOf(`a: &a ${open}x${close}\nb: ${open}*a${close}\n`)).toContain('too-deep');
  });

  it('is not seen in quotes, comments and texts of several lines', () => {
    const marks = '[{- '.repeat(90);
    const text = edited('because: Too fast and too low. }', `because: "${marks}" } # ${marks}${marks}`);
    expect(codesOf(text)).toEqual([]);
    expect(codesOf(edited('title: Landing on the raft', `title: >-\n  ${marks.slice(0, 90)}`))).toEqual([]);
  });

  it('is not seen in lists at the indentation of their keys', () => {
    const text = fixtureDeckText.replace(/^cautions:\n {2}- /m, 'cautions:\n- ');
    expect(codesOf(text)).toEqual([]);
  });
});

describe('too much of a thing', () => {
  it('is refused in a list', () => {
    const gate = (index: number) =>
      `  - { id: g${index}, label: G${index}, cue: c, position: { aheadFt: 0, rightFt: 0, courseDeg: 0 }, values: {} }\n`;
    const gates = Array.from({ length: 2_001 }, (_, index) => gate(index)).join('');
    const { findings } = loadDeck(edited('gates:\n', `gates:\n${gates}`));
    expect(findings.map(({ code, where }) => [code, where])).toEqual([['too-many', 'gates']]);
  });

  it('is refused in a mapping', () => {
    const keys = Array.from({ length: 501 }, (_, index) => `q${index}: [0, 1]`).join(', ');
    const { findings } = loadDeck(
      edited('state: { altitude: [40, 400]', `state: { ${keys}, altitude: [40, 400]`),
    );
    expect(findings.map(({ code, where }) => [code, where])).toEqual([
      ['too-many', 'phase “Middle to near”, state'],
    ]);
  });

  it('is refused among the inputs of a table', () => {
    const inputs = Array.from({ length: 13 }, (_, index) => `q${index}`).join(', ');
    expect(codesOf(edited('inputs: [closure, altitude]', `inputs: [${inputs}]`))).toContain('too-many');
  });

  it('of findings ends with a note that there are more', () => {
    const list = Array.from({ length: 300 }, () => 'x').join(', ');
    const { findings } = loadDeck(
      edited('phases: [approach]\n    control: pitch', `phases: [${list}]\n    control: pitch`),
    );
    expect(findings).toHaveLength(201);
    expect(findings[200]).toMatchObject({
      code: 'more-findings',
      severity: 'note',
      message: 'The first 200 findings are shown and there are more; mend these and load the file again.',
    });
    expect(findings.every(({ at, where }) => at!.line > 0 && where)).toBe(true);
  });
});

describe('numbers that are none', () => {
  it.each(['.nan', '.NaN', '.inf', '-.inf', '1e999', '-1e999'])(
    '%s is refused wherever a number stands',
    (number) => {
      const text = fixtureDeckText
        .replace('courseDeg: 0 }', `courseDeg: ${number} }`)
        .replace('step: 5,', `step: ${number},`)
        .replace('sink: -0.016667', `sink: ${number}`)
        .replace('desired: [57, 63]', `desired: [57, ${number}]`);
      expect(codesOf(text)).toEqual(Array(4).fill('not-a-number'));
    },
  );

  it.each(['1e3', '0x10', '0o17', '+5', '5.', '.5e1'])('%s is a number of YAML 1.2', (number) => {
    expect(codesOf(edited('windowS: 6', `windowS: ${number}`))).toEqual([]);
  });

  it('−0 is 0', () => {
    const { deck } = loadDeck(edited('rightFt: -200', 'rightFt: -0'));
    expect(Object.is(deck!.gates[0]!.position.rightFt, 0)).toBe(true);
  });
});

describe('marks of type', () => {
  it.each(['!js/function', '!!binary', '!!timestamp', '!!set', '!!omap', '!<tag:x>'])(
    '%s are refused',
    (tag) => {
      expect(codesOf(edited('title: Landing', `title: ${tag} Landing`))).toContain('bad-tag');
    },
  );

  it('make no merge key of “<<”', () => {
    const band = '{ target: 10, desired: [9, 11], adequate: [8, 12] }';
    const { findings } = loadDeck(edited('aoa: { target: 10', `<<: ${band}\n      aoa: { target: 10`));
    expect(findings.map(({ code, where }) => [code, where])).toEqual([
      ['unknown-quantity', 'gate “Far gate”, <<'],
    ]);
  });
});

describe('aliases', () => {
  it('that stand inside themselves end in a finding', () => {
    expect(codesOf('a: &a [*a]\n')).toContain('bad-alias');
    expect(codesOf('a: &a { b: &b [*a], c: *b }\n')).toContain('bad-alias');
  });

  it('can not stand for a key', () => {
    expect(codesOf(edited('title: Landing', '? &k title\n: Landing'))).toEqual([]);
    expect(codesOf(`${fixtureDeckText}\n*notes : 5\n`)).toContain('bad-key');
  });
});
