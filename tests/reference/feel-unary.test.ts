/**
 * Unary tests against `feelin`, an independent implementation of FEEL (npm, MIT): for generated tests, is
 * a value a member or not. Values lie at the ends that a test names, just beside them and between them.
 */
import fc from 'fast-check';
import { unaryTest } from 'feelin';
import { describe, expect, it } from 'vitest';
import { contains, interval } from '../../src/rules/intervals.ts';
import { parseUnary } from '../../src/rules/unary.ts';

/** So wide that nothing is cut off. */
const domain = interval(-1e6, 1e6);
const texts = 1000;
const seed = 20_261_125;

/** Few enough different numbers that ends coincide, with decimals that have no exact double. */
const end = fc.oneof(
  fc.integer({ min: -4, max: 4 }),
  fc.integer({ min: -9, max: 9 }).map((tenths) => tenths / 10),
  fc.integer({ min: -200, max: 2000 }),
);
const space = fc.constantFrom('', ' ');
const literal = (value: number, short: boolean): string => {
  const text = String(value);
  return short ? text.replace(/^(-?)0\./, '$1.') : text;
};
const number = fc
  .tuple(end, fc.boolean())
  .map(([value, short]) => ({ text: literal(value, short), ends: [value] }));

interface Test {
  readonly text: string;
  readonly ends: readonly number[];
}

const comparison: fc.Arbitrary<Test> = fc
  .tuple(fc.constantFrom('', '', '<', '<=', '>', '>=', '=', '!='), space, number)
  .map(([operator, gap, { text, ends }]) => ({ text: `${operator}${operator && gap}${text}`, ends }));

const range: fc.Arbitrary<Test> = fc
  .tuple(fc.constantFrom('[', '(', ']'), end, end, fc.constantFrom(']', ')', '['), space)
  .filter(([open, a, b, close]) => a !== b || (open === '[' && close === ']'))
  .map(([open, a, b, close, gap]) => {
    const [lo, hi] = [Math.min(a, b), Math.max(a, b)];
    return { text: `${open}${gap}${lo}${gap}..${gap}${hi}${gap}${close}`, ends: [lo, hi] };
  });

const list: fc.Arbitrary<Test> = fc
  .tuple(fc.array(fc.oneof(comparison, range), { minLength: 1, maxLength: 4 }), space)
  .map(([tests, gap]) => ({
    text: tests.map(({ text }) => text).join(`,${gap}`),
    ends: tests.flatMap(({ ends }) => ends),
  }));

const anyTest: fc.Arbitrary<Test> = fc.oneof(
  { weight: 6, arbitrary: list },
  { weight: 3, arbitrary: list.map(({ text, ends }) => ({ text: `not(${text})`, ends })) },
  { weight: 1, arbitrary: fc.constant({ text: '-', ends: [0] }) },
);

/** Each end, the doubles next to it, and what lies between two of them or beyond the last. */
function valuesFor(ends: readonly number[]): number[] {
  const sorted = [...new Set(ends)].sort((a, b) => a - b);
  const beside = sorted.flatMap((value) => {
    const least = Math.max(Math.abs(value), 1) * Number.EPSILON;
    return [value - least, value, value + least];
  });
  const between = sorted.slice(1).map((value, i) => (value + sorted[i]!) / 2);
  return [sorted[0]! - 1, ...beside, ...between, sorted[sorted.length - 1]! + 1];
}

const isMember = (text: string, value: number): boolean => {
  const parsed = parseUnary(text, domain);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem.message}`);
  return contains(parsed.set, value);
};

describe('unary tests', () => {
  it(
    'have the members that feelin gives them, in more than 10,000 generated cases',
    { timeout: 120_000 },
    () => {
      let cases = 0;
      const different: string[] = [];
      for (const { text, ends } of fc.sample(anyTest, { numRuns: texts, seed }))
        for (const value of valuesFor(ends)) {
          cases++;
          if (isMember(text, value) !== unaryTest(text, { '?': value }).value)
            different.push(`${text} at ${value}`);
        }
      expect(different).toEqual([]);
      expect(cases).toBeGreaterThan(10_000);
    },
  );

  it('are an error to feelin too, where the text stops short', () => {
    for (const text of ['', '<', '5,', '[1..2', '5..6', '[..5]', '5 ft', '1.', '< = 5', 'not(-)']) {
      expect(() => unaryTest(text, { '?': 5 }), text).toThrow();
      expect(parseUnary(text, domain).ok, text).toBe(false);
    }
  });
});

describe('named differences', () => {
  const feelin = (text: string, value: number) => unaryTest(text, { '?': value }).value;

  it('an interval with its ends reversed: feelin turns it round, here it is an author’s mistake', () => {
    expect(feelin('[140..100]', 120)).toBe(true);
    expect(parseUnary('[140..100]', domain).ok).toBe(false);
  });

  it('an interval of one value left out at an end: feelin has no member, here it is a mistake', () => {
    expect(feelin('(5..5]', 5)).toBe(false);
    expect(parseUnary('(5..5]', domain).ok).toBe(false);
  });

  // DMN 1.5, 10.3.1.2, from memory: a numeric literal may have an exponent; feelin reads none.
  it('numbers with an exponent', () => {
    expect(feelin('1e3', 1000)).toBe(false);
    expect(isMember('1e3', 1000)).toBe(true);
  });

  it('expressions: FEEL works them out, a condition of a deck is plain numbers', () => {
    expect(feelin('> 5 + 1', 7)).toBe(true);
    expect(feelin('(< 5)', 3)).toBe(true);
    expect(feelin('+5', 5)).toBe(true);
    for (const text of ['> 5 + 1', '(< 5)', '+5', '? > 3', 'not(not(5))'])
      expect(parseUnary(text, domain).ok, text).toBe(false);
  });
});
