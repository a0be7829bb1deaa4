import { describe, expect, it } from 'vitest';
import { deckCodes } from '../../../src/deck/codes.ts';
import { analyse } from '../../../src/rules/analyse.ts';
import { ruleCodes, type RuleCode } from '../../../src/rules/codes.ts';
import { readProcedure } from '../../../src/rules/read.ts';
import { workedProcedure } from '../cards/worked-deck.ts';
import { documentedCodes } from '../deck/documented-codes.ts';
import { fixtureDeckText } from '../deck/fixture.ts';

/** For each code an edit of the fixture deck that makes it faulty so. */
const faults: Readonly<
  Record<Exclude<RuleCode, 'analysis-incomplete' | `draw-${string}`>, readonly [from: string, to: string]>
> = {
  'bad-condition': ['closure: "> 70"', 'closure: "=> 70"'],
  'condition-outside-range': ['sink: "> 600"', 'sink: "> 6000"'],
  'doubtful-comma': ['sink: "> 600"', 'sink: "> 1,000"'],
  'overlapping-words': ['when: "> 45"', 'when: "> -5"'],
  gap: ['closure: "[50..70]"', 'closure: "(50..70]"'],
  conflict: ['closure: "[50..70]"', 'closure: "[45..70]"'],
  'never-fires': ['sink: "> 600"', 'sink: "> 1200"'],
  'always-overridden': ['altitude: "< 150" }', 'altitude: "< 50" }'],
  'between-steps': ['{ id: low, when: { altitude: "< 350" }', '{ id: low, when: { altitude: "(350..355)" }'],
  'pointless-rule': [
    'then: more-power, because: Low gets lower.',
    'then: hold-power, because: Low gets lower.',
  ],
};

describe('every code of the rule engine', () => {
  it.each(Object.entries(faults))('%s', (code, [from, to]) => {
    expect(fixtureDeckText).toContain(from);
    const { procedure, findings } = readProcedure(fixtureDeckText.replace(from, to));
    const all = [...findings, ...(procedure ? analyse(procedure) : [])];
    const found = all.filter((finding) => finding.code === code);
    expect(found).not.toEqual([]);
    for (const { severity } of found) expect(documentedCodes.get(code)).toContain(severity);
  });

  it.each([
    ['draw-without-effect', 'draw: { wind-speed: [0, 25]', 'draw: { load: [0, 5], wind-speed: [0, 25]'],
    ['draw-without-value', 'draw: { temperature: [20, 60]', 'draw: { temperature: [50, 60]'],
    [
      'draw-too-narrow',
      'wind-speed: [0, 30], wind-angle: [-60, 60]',
      'wind-speed: [10, 11], wind-angle: [0, 5]',
    ],
  ])('%s', (code, from, to) => {
    const [found] = analyse(workedProcedure([from, to]));
    expect(found).toMatchObject({ code, severity: 'warning' });
    expect(documentedCodes.get(code)).toEqual(['warning']);
  });

  it('analysis-incomplete', () => {
    const { procedure } = readProcedure(fixtureDeckText);
    expect(analyse(procedure!, { work: 1 }).map(({ code }) => code)).toContain('analysis-incomplete');
  });

  it.each(ruleCodes)('%s has a row in the table for developers', (code) => {
    expect([...documentedCodes.keys()]).toContain(code);
  });

  it('is none of the loader’s', () => {
    expect(ruleCodes.filter((code) => (deckCodes as readonly string[]).includes(code))).toEqual([]);
  });
});
