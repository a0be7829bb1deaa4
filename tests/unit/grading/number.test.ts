import { describe, expect, it, test } from 'vitest';
import { limitBand } from '../../../src/cards/limit.ts';
import type { Quantity } from '../../../src/deck/types.ts';
import { gradeNumber } from '../../../src/grading/grade-number.ts';
import { smallDeck } from '../cards/small-deck.ts';
import { call } from './small-calls.ts';

describe('a called value', () => {
  // Altitude at the far gate: 600 ft, desired 580 to 620, adequate 550 to 650, never below 500.
  test.each([
    ['600', 'desired', 'on target', 0],
    ['620 ft', 'desired', '20\u00a0ft high', 20],
    ['579', 'adequate', '21\u00a0ft low', -21],
    ['650', 'adequate', '50\u00a0ft high', 50],
    ['651', 'outside', '51\u00a0ft high', 51],
    ['500', 'outside', '100\u00a0ft low', -100],
    ['499', 'outside', '101\u00a0ft low, below the floor', -101],
  ])('%s is %s: %s', (text, performance, headline, signedError) => {
    const assessment = call('value/far/altitude', text);
    expect(assessment).toMatchObject({
      performance,
      headline,
      expected: '600\u00a0ft',
      because: 'Room to descend.',
    });
    expect(assessment.detail).toMatchObject({ form: 'number', signedError, steps: signedError / 5 });
  });

  it('says which limit it passed', () => {
    expect(call('value/near/drift', '5')).toMatchObject({
      headline: '5\u00a0kt right, above the ceiling',
      critical: true,
      detail: { passedLimit: 'ceiling' },
    });
  });
});

describe('a called limit', () => {
  // Never below 500 ft, called in steps of 5.
  test.each([
    ['500', 'desired', 'on the floor', null],
    ['502', 'desired', '2\u00a0ft above the floor', null],
    ['505', 'adequate', '5\u00a0ft above the floor', null],
    ['506', 'outside', '6\u00a0ft above the floor', null],
    ['499', 'outside', '1\u00a0ft below the floor', 'floor'],
    ['495', 'outside', '5\u00a0ft below the floor', 'floor'],
  ])('floor 500 ft, called %s: %s', (text, performance, headline, passedLimit) => {
    expect(call('limit/far/altitude/floor', text)).toMatchObject({
      performance,
      headline,
      expected: 'never below 500\u00a0ft',
      detail: { passedLimit },
    });
  });

  // Never above 600 ft/min, called in steps of 10.
  test.each([
    ['600', 'desired', 'on the ceiling', null],
    ['590', 'adequate', '10\u00a0ft/min below the ceiling', null],
    ['580', 'outside', '20\u00a0ft/min below the ceiling', null],
    ['610', 'outside', '10\u00a0ft/min above the ceiling', 'ceiling'],
  ])('ceiling 600 ft/min, called %s: %s', (text, performance, headline, passedLimit) => {
    expect(call('limit/approach/sink/ceiling', text)).toMatchObject({
      performance,
      headline,
      detail: { passedLimit },
    });
  });

  it('holds for decimals that doubles can’t add exactly', () => {
    const spacing: Quantity = { id: 'spacing', label: 'Spacing', unit: 'nm', range: [0, 5], step: 0.1 };
    const deck = { ...smallDeck, quantities: [spacing] };
    for (let tenths = 1; tenths < 49; tenths++) {
      const limit = tenths / 10;
      const band = limitBand(limit, 'floor', spacing);
      const grade = (text: string) =>
        gradeNumber(
          deck,
          { form: 'number', quantity: 'spacing', band, limit: 'floor' },
          { form: 'number', text },
        );
      expect(grade(String(limit))).toMatchObject({ performance: 'desired' });
      expect(grade(String((tenths + 1) / 10))).toMatchObject({ performance: 'adequate' });
      expect(grade(String((tenths - 1) / 10))).toMatchObject({ performance: 'outside' });
      expect(grade(String((tenths + 2) / 10))).toMatchObject({ performance: 'outside' });
    }
  });

  it('stays within what the quantity can be', () => {
    const drift = smallDeck.quantities[2]!;
    expect(limitBand(30, 'floor', drift)).toMatchObject({ desired: [30, 30], adequate: [30, 30] });
    expect(limitBand(-30, 'ceiling', drift)).toMatchObject({ desired: [-30, -30], adequate: [-30, -30] });
  });
});
