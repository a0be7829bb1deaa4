import { describe, expect, it } from 'vitest';
import { deckCodes } from '../../../src/deck/codes.ts';
import type { Finding } from '../../../src/deck/findings.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { motionCodes } from '../../../src/motion/codes.ts';
import { ruleCodes } from '../../../src/rules/codes.ts';
import { documentedCodes } from './documented-codes.ts';
import { edited } from './edited.ts';
import { formulaFaults } from '../formulas/faults.ts';
import { bracketFaults } from './faults/brackets.ts';
import { chartFaults } from './faults/charts.ts';
import { doubtFaults } from './faults/doubts.ts';
import { firstUseFaults } from './faults/first-use.ts';
import { flyingFaults } from './faults/flying.ts';
import { lineFaults } from './faults/lines.ts';
import { motionFaults } from './faults/motion.ts';
import { namesFaults } from './faults/names.ts';
import { numbersFaults } from './faults/numbers.ts';
import { otherWordsFaults } from './faults/other-words.ts';
import { shapeFaults } from './faults/shape.ts';
import { structureFaults } from './faults/structure.ts';
import { textFaults } from './faults/text.ts';
import { wholeTextFaults } from './faults/whole-texts.ts';
import { workedFaults } from './faults/worked.ts';

const faults = [
  ...textFaults,
  ...lineFaults,
  ...doubtFaults,
  ...firstUseFaults,
  ...otherWordsFaults,
  ...bracketFaults,
  ...shapeFaults,
  ...namesFaults,
  ...numbersFaults,
  ...structureFaults,
  ...motionFaults,
  ...flyingFaults,
  ...chartFaults,
  ...workedFaults,
];
const warnings = [
  'unused-quantity',
  'unused-source',
  'gate-without-values',
  'same-label',
  ...['off-step', 'cue-tells-value', 'typographic-quotes', 'doubtful-remark'],
];

const textFrom = (text: string, { at }: Finding): string =>
  text.split('\n')[at!.line - 1]!.slice(at!.column - 1);

describe('a fault in a deck', () => {
  it.each(faults.map((fault) => [fault.code, fault.edit[1].trim().slice(0, 60), fault] as const))(
    '%s: %s',
    (code, _, { edit, at, where, message, severity }) => {
      const text = edited(...edit);
      const { deck, findings } = loadDeck(text);
      expect(findings.map((finding) => finding.code)).toEqual([code]);
      const [finding] = findings;
      expect(finding).toMatchObject({ where, message });
      expect(textFrom(text, finding!).slice(0, at.length)).toBe(at);
      expect(finding!.severity).toBe(severity ?? (warnings.includes(code) ? 'warning' : 'error'));
      expect(deck === null).toBe(finding!.severity === 'error');
    },
  );

  it.each(wholeTextFaults.map((fault) => [fault.name, fault] as const))(
    'is found in %s',
    (_, { code, text, at, message }) => {
      const { deck, findings } = loadDeck(text);
      const found = findings.filter((finding) => finding.code === code);
      expect(found).toMatchObject([{ severity: 'error', at, message }]);
      expect(found[0]!.where).not.toBe('');
      expect(deck).toBeNull();
    },
  );
});

describe('the list of codes', () => {
  // A reader that is not passed in is no fault of a deck: tests/unit/formulas/load-deck.test.ts.
  const shown = new Set<string>([
    'formulas-not-read',
    ...[...faults, ...formulaFaults, ...wholeTextFaults].map(({ code }) => code),
  ]);

  it.each(deckCodes.filter((code) => code !== 'more-findings'))('has a failing deck for %s', (code) => {
    expect(shown).toContain(code);
  });
});

describe('the table of codes for developers', () => {
  it.each(deckCodes)('has a row for %s', (code) => {
    expect([...documentedCodes.keys()]).toContain(code);
  });

  it.each(
    [...faults, ...formulaFaults].map(({ code, severity }) => [
      code,
      severity ?? (warnings.includes(code) ? 'warning' : 'error'),
    ]),
  )('says that %s is of severity %s', (code, severity) => {
    expect(documentedCodes.get(code)).toContain(severity);
  });

  it('has no row for a code that is gone', () => {
    const known: readonly string[] = [...deckCodes, ...ruleCodes, ...motionCodes];
    expect([...documentedCodes.keys()].filter((code) => !known.includes(code))).toEqual([]);
  });
});

describe('every message', () => {
  it.each([...faults, ...formulaFaults, ...wholeTextFaults].map(({ code, message }) => [code, message]))(
    '%s says the rule, what was found and the mend in one sentence: %s',
    (_, message) => {
      const own = message.replace(/“[^”]*”/g, '…');
      expect(own).toMatch(/^[A-Z“…].*[,;:] .+; .+\.$/);
      expect(own).not.toMatch(/[.!?] [A-Z]/);
      expect(own).not.toMatch(/\b(invalid|undefined|null|object Object)\b/i);
    },
  );
});
