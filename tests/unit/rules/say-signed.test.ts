import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../src/deck/types.ts';
import { saySigned } from '../../../src/rules/say-signed.ts';

const sink: Quantity = {
  id: 'sink',
  label: 'Sink',
  unit: 'ft/min',
  range: [-2000, 3000],
  step: 10,
  above: 'too much',
  below: 'too little',
  words: [
    { when: '< -50', say: 'climbing' },
    { when: '[-50..50]', say: 'level' },
  ],
};
const drift: Quantity = {
  id: 'drift',
  label: 'Drift',
  unit: 'kt',
  range: [-30, 30],
  step: 1,
  above: 'to the right',
  below: 'to the left',
};
const pitch: Quantity = { id: 'pitch', label: 'Attitude', unit: 'deg', range: [-15, 25], step: 1 };

describe('a value with a side', () => {
  it.each([
    ['a word for values below zero only takes the sign', -90, sink, 'climbing 90\u00a0ft/min'],
    ['a word for both sides leaves it', -50, sink, '−50\u00a0ft/min'],
    ['a value above zero stands alone', 90, sink, '90\u00a0ft/min'],
    ['an offset has its side', -5, drift, '5\u00a0kt to the left'],
    ['an offset has its side, the other way', 5, drift, '5\u00a0kt to the right'],
    ['nothing has none', 0, drift, '0\u00a0kt'],
    ['what rounds to nothing has none', -0.0001, drift, '0\u00a0kt'],
    ['without words the sign stays, and a degree sign stands close', -4, pitch, '−4°'],
  ])('%s', (_, value, quantity, said) => {
    expect(saySigned(value, quantity)).toBe(said);
  });
});
