import { describe, expect, it } from 'vitest';
import { evaluate, quantitiesIn, type Surroundings } from '../../../src/day/evaluate.ts';
import type { Expression, FormulaFunction } from '../../../src/deck/computed.ts';

const today: Surroundings = {
  quantity: (id) => (id === 'wind' ? { ok: true, value: 20 } : { ok: false, why: `no ${id} today` }),
  chart: (_, inputs) =>
    inputs[0]! > 40 ? { ok: false, why: 'the chart ends at 40' } : { ok: true, value: inputs[0]! * 2 },
};
const number = (value: number): Expression => ({ kind: 'number', value });
const wind: Expression = { kind: 'quantity', quantity: 'wind' };
const gust: Expression = { kind: 'quantity', quantity: 'gust' };
const call = (name: FormulaFunction, ...of: Expression[]): Expression => ({ kind: 'call', name, of });
const chart = (of: Expression): Expression => ({ kind: 'chart', chart: 'any', of: [of] });
const choice = (then: Expression, otherwise: Expression): Expression => ({
  kind: 'choice',
  when: { is: '>', left: wind, right: number(15) },
  then,
  otherwise,
});

describe('an expression', () => {
  it.each<[string, Expression, string]>([
    ['a division by zero', { kind: 'quotient', left: wind, right: number(0) }, 'it divides by zero'],
    ['a negative power of zero', { kind: 'power', of: number(0), exponent: -1 }, 'it divides by zero'],
    [
      'a root of less than nothing',
      call('sqrt', number(-1)),
      'it takes the square root of a negative number',
    ],
    ['a sine over 1', call('asin', number(1.1)), 'no angle has such a sine or cosine'],
    ['a place past the end of a chart', chart(number(41)), 'the chart ends at 40'],
    ['a quantity without a value', { kind: 'sum', left: wind, right: gust }, 'no gust today'],
    [
      'what is past all numbers',
      { kind: 'product', left: number(1e300), right: number(1e300) },
      'it comes to no finite number',
    ],
  ])('has no value for %s, and says why', (_, expression, why) => {
    expect(evaluate(expression, today)).toEqual({ ok: false, why });
  });

  it('is worked out where a choice leads, and nowhere else', () => {
    expect(evaluate(choice(wind, gust), today)).toEqual({ ok: true, value: 20 });
    expect(evaluate(choice(gust, wind), today)).toEqual({ ok: false, why: 'no gust today' });
  });

  it.each([
    [2.5, 3],
    [-2.5, -3],
    [2.4999, 2],
    [-0.4, -0],
  ])('rounds %d away from zero at the half: %d', (value, rounded) => {
    expect(evaluate(call('round', number(value)), today)).toEqual({ ok: true, value: rounded });
  });

  it('takes for whole what only a change of units made less', () => {
    expect(evaluate(call('floor', number(3 - 1e-15)), today)).toEqual({ ok: true, value: 3 });
    expect(evaluate(call('ceil', number(3 + 1e-15)), today)).toEqual({ ok: true, value: 3 });
    expect(evaluate(call('floor', number(2.999)), today)).toEqual({ ok: true, value: 2 });
  });

  it('compares in proportion, however small a mixed unit makes its numbers', () => {
    const small: Expression = {
      kind: 'choice',
      when: { is: '>', left: number(2e-20), right: number(1e-20) },
      then: number(1),
      otherwise: number(0),
    };
    expect(evaluate(small, today)).toEqual({ ok: true, value: 1 });
  });

  it('names its quantities once each, on both sides of a choice', () => {
    expect(quantitiesIn({ kind: 'sum', left: choice(gust, wind), right: wind })).toEqual(['wind', 'gust']);
  });
});
