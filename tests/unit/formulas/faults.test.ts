import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/deck/findings.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { edited } from '../deck/edited.ts';
import { formulaFaults } from './faults.ts';
import { formulaDeckText } from './formula-deck.ts';

const textFrom = (text: string, { at }: Finding): string =>
  text.split('\n')[at!.line - 1]!.slice(at!.column - 1);

describe('the deck with formulas', () => {
  it('has nothing to be told of', () => {
    expect(loadDeck(formulaDeckText, readFormulas).findings).toEqual([]);
  });
});

describe('a fault in a formula', () => {
  it.each(formulaFaults.map((fault) => [fault.code, fault.edit[1].trim().slice(0, 60), fault] as const))(
    '%s: %s',
    (code, _, { edit, at, where, message, severity = 'error' }) => {
      const text = edited(...edit, formulaDeckText);
      const { deck, findings } = loadDeck(text, readFormulas);
      expect(findings.map((finding) => finding.code)).toEqual([code]);
      expect(findings[0]).toMatchObject({ where, message, severity });
      expect(textFrom(text, findings[0]!).slice(0, at.length)).toBe(at);
      expect(deck === null).toBe(severity === 'error');
    },
  );
});
