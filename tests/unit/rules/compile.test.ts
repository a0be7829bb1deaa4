import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import type { Deck } from '../../../src/deck/types.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { wordFor } from '../../../src/rules/interval-word.ts';
import { interval } from '../../../src/rules/intervals.ts';
import { fixtureDeckText } from '../deck/fixture.ts';

const deckOf = (from = '', to = ''): Deck => {
  expect(fixtureDeckText).toContain(from);
  return parse(fixtureDeckText.replace(from, to)) as Deck;
};

describe('compiled rules', () => {
  const procedure = compileRules(deckOf()).procedure!;

  it('hold the sets of their conditions, only where they restrain', () => {
    const [farSpeed, nearSpeed] = [procedure.phases.get('approach')!, procedure.phases.get('arrival')!].map(
      ({ base }) => base[0]!,
    );
    expect(farSpeed!.rules[0]!.when).toEqual(new Map([['closure', [interval(70, 100, true)]]]));
    expect([...nearSpeed!.rules[1]!.when.keys()]).toEqual(['closure', 'altitude']);
    expect(procedure.phases.get('approach')!.base[1]!.rules[3]!.when.size).toBe(0);
    const any = compileRules(deckOf('closure: "> 70"', 'closure: "-"')).procedure!;
    expect(any.phases.get('approach')!.base[0]!.rules[0]!.when.size).toBe(0);
  });

  it('stand by phase: base tables in the order of its controls, overriding ones in the deck’s', () => {
    const { base, overriding, neutral, box } = procedure.phases.get('approach')!;
    expect(base.map(({ id }) => id)).toEqual(['far-speed', 'far-height']);
    expect(overriding.map(({ id }) => id)).toEqual(['abandon']);
    expect([...neutral]).toEqual([
      ['pitch', 'hold-nose'],
      ['power', 'hold-power'],
      ['call', 'continue'],
    ]);
    expect(box.get('altitude')).toEqual(interval(200, 800));
  });
});

describe('what compiling finds', () => {
  it.each([
    [
      'closure: "> 70"',
      'closure: "> 70 kt"',
      'bad-condition',
      'error',
      ['tables', 0, 'rules', 0, 'when', 'closure'],
    ],
    ['when: "< 0"', 'when: "below 0"', 'bad-condition', 'error', ['quantities', 1, 'words', 0, 'when']],
    [
      'closure: "> 70"',
      'closure: "> 700"',
      'condition-outside-range',
      'warning',
      ['tables', 0, 'rules', 0, 'when', 'closure'],
    ],
    [
      'closure: "> 70"',
      'closure: "> 70,5"',
      'doubtful-comma',
      'warning',
      ['tables', 0, 'rules', 0, 'when', 'closure'],
    ],
    ['when: "> 45"', 'when: ">= -5"', 'overlapping-words', 'error', ['quantities', 1, 'words', 1, 'when']],
  ] as const)('%s as %s: %s', (from, to, code, severity, path) => {
    const { procedure, findings } = compileRules(deckOf(from, to));
    expect(findings).toMatchObject([{ code, severity, path }]);
    expect(procedure === null).toBe(severity === 'error');
  });

  it('says which words overlap, and where', () => {
    const [finding] = compileRules(deckOf('when: "> 45"', 'when: ">= -5"')).findings;
    expect(finding!.message.replaceAll('\u00a0', ' ')).toBe(
      'Words for intervals must not overlap, but “falling back” and “closing fast” both fit Closure −5 to under 0 kt: move an end of one, with ( or ) to leave it out.',
    );
  });
});

describe('the word for a value', () => {
  const closure = deckOf().quantities[1]!;
  it.each([
    [-0.5, 'falling back'],
    [0, null],
    [45, null],
    [46, 'closing fast'],
  ])('%d: %s', (value, word) => {
    expect(wordFor(closure, value)?.say ?? null).toBe(word);
  });

  it('is none for a quantity without words', () => {
    expect(wordFor(deckOf().quantities[0]!, 5)).toBeNull();
  });
});
