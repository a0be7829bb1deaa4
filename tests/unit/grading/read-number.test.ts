import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Quantity } from '../../../src/deck/types.ts';
import { unitIds, units } from '../../../src/deck/units.ts';
import { sayNumber, sayValue } from '../../../src/deck/say.ts';
import { readNumber } from '../../../src/grading/read-number.ts';

const altitude: Quantity = { id: 'altitude', label: 'Altitude', unit: 'ft', range: [-100, 2000], step: 5 };
const of = (unit: Quantity['unit']): Quantity => ({
  id: 'q',
  label: 'Value',
  unit,
  range: [-1e6, 1e6],
  step: 1,
});
const messageOf = (text: string, quantity = altitude) => {
  const read = readNumber(text, quantity);
  return read.ok ? `read as ${read.value}` : `${read.problem.code}: ${read.problem.message}`;
};

describe('a number as a pilot types it', () => {
  test.each([
    ['140', 140],
    ['  140 ', 140],
    ['140 ft', 140],
    ['140ft', 140],
    ['140 FT.', 140],
    ['140 feet', 140],
    ["140'", 140],
    ['140\u2032', 140],
    ['1,000', 1000],
    ['1,000 ft', 1000],
    ['1 000', 1000],
    ['1\u202f000', 1000],
    ['1\u00a0000\u00a0ft', 1000],
    ['1.000', 1],
    ['12.75', 12.75],
    ['.5', 0.5],
    ['5.', 5],
    ['+5', 5],
    ['-5', -5],
    ['\u22125', -5],
    ['\u20135', -5],
    ['- 5', -5],
    ['-0', 0],
    ['0140', 140],
    ['1e2', 100],
    ['1E2', 100],
  ])('%j is %d', (text, value) => {
    expect(readNumber(text, altitude)).toEqual({ ok: true, value });
    expect(Object.is(readNumber(text, altitude).ok && value, -0)).toBe(false);
  });

  test.each([
    ['', 'empty: Type a number: altitude is called in ft.'],
    [' \t\n', 'empty: Type a number: altitude is called in ft.'],
    ['abc', 'not-a-number: “abc” is not a number. Type the altitude in digits, without words.'],
    [
      '140 bananas',
      'not-a-number: “140 bananas” is not a number. Type the altitude in digits, without words.',
    ],
    ['140 kt', 'wrong-unit: Altitude is called in ft; 140 kt is a speed. Type the number alone.'],
    ['140 knots', 'wrong-unit: Altitude is called in ft; 140 kt is a speed. Type the number alone.'],
    ['140 m', 'wrong-unit: Altitude is called in ft; 140 m is in metres. Type the number alone.'],
    ['60°', 'wrong-unit: Altitude is called in ft; 60° is an angle. Type the number alone.'],
    ['1e9', 'out-of-range: 1e9 ft is outside what altitude can be (−100 to 2,000\u00a0ft).'],
    ['2001', 'out-of-range: 2001 ft is outside what altitude can be (−100 to 2,000\u00a0ft).'],
    ['2,001 feet', 'out-of-range: 2,001 feet is outside what altitude can be (−100 to 2,000\u00a0ft).'],
    ['1e999', 'out-of-range: 1e999 ft is outside what altitude can be (−100 to 2,000\u00a0ft).'],
    [
      '1,5',
      'not-a-number: “1,5” has a comma that groups no thousands. Type a decimal with a point, like 1.5.',
    ],
    [
      '0,140',
      'not-a-number: “0,140” has a comma that groups no thousands. Type a decimal with a point, like 1.5.',
    ],
  ])('%j is refused, with what to type instead', (text, message) => {
    expect(messageOf(text)).toBe(message);
  });

  test.each([
    '--5',
    '.',
    '-',
    '1..5',
    '1,000,',
    '12:30',
    '0x10',
    '1/2',
    'NaN',
    'Infinity',
    '140 150 m2',
    '١٤٠',
    '１４０',
    '1e',
    '5e5e5',
  ])('%j is no number', (text) => {
    expect(messageOf(text)).toContain('not-a-number');
  });

  it('takes a bare degree sign for a temperature, and refuses it for a speed', () => {
    expect(readNumber('15°', of('degC'))).toEqual({ ok: true, value: 15 });
    expect(messageOf('15°', of('kt'))).toContain('wrong-unit');
  });

  it('calls a count a bare number', () => {
    expect(messageOf('3 kt', of('count'))).toBe(
      'wrong-unit: Value is called as a bare number; 3 kt is a speed. Type the number alone.',
    );
  });

  test.each(unitIds)('every spelling of the unit %s is understood', (unit) => {
    const { symbol, spoken, typed } = units[unit];
    for (const spelling of [symbol, spoken, ...typed])
      expect(readNumber(`12 ${spelling}`, of(unit))).toEqual({ ok: true, value: 12 });
  });

  test.each(unitIds)('no spelling of another unit passes for %s', (unit) => {
    const own: readonly string[] = [units[unit].symbol, units[unit].spoken, ...units[unit].typed].map(
      (text) => text.toLowerCase(),
    );
    for (const other of unitIds)
      for (const spelling of [units[other].symbol, units[other].spoken, ...units[other].typed]) {
        const bareDegree = unit === 'degC' && spelling === '°';
        if (spelling === '' || own.includes(spelling.toLowerCase()) || bareDegree) continue;
        expect(messageOf(`12 ${spelling}`, of(unit)), spelling).toContain('wrong-unit');
      }
  });

  it('reads back every number as the app writes it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), fc.constantFrom(...unitIds), (whole, unit) => {
        const quantity = of(unit);
        const value = whole === 0 ? 0 : whole;
        expect(readNumber(sayNumber(value), quantity)).toEqual({ ok: true, value });
        expect(readNumber(sayValue(value, quantity), quantity)).toEqual({ ok: true, value });
      }),
    );
  });

  it('gives a finite number within the range or a problem, whatever is typed', () => {
    const anything = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.stringMatching(/^[-+\u2212 0-9.,eEft°']{0,20}$/),
    );
    fc.assert(
      fc.property(anything, (text) => {
        const read = readNumber(text, altitude);
        if (read.ok) expect(read.value >= -100 && read.value <= 2000).toBe(true);
        else expect(read.problem.message.length).toBeLessThan(200);
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps a long hostile text out of its message', () => {
    const message = messageOf(`${'9'.repeat(1e6)}<script>`);
    expect(message).toBe(
      `not-a-number: “${'9'.repeat(24)}…” is not a number. Type the altitude in digits, without words.`,
    );
  });
});
