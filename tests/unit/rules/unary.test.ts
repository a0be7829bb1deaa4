import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interval } from '../../../src/rules/intervals.ts';
import { toUnary } from '../../../src/rules/say-intervals.ts';
import type { IntervalSet } from '../../../src/rules/types.ts';
import { longestUnary, parseUnary } from '../../../src/rules/unary.ts';
import { anySet, domain } from './arbitrary.ts';

const range = interval(-200, 500);
const read = (text: string): IntervalSet => {
  const parsed = parseUnary(text, range);
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.set;
};
const below = (value: number, open = true) => interval(-200, value, false, open);
const above = (value: number, open = true) => interval(value, 500, open);

describe('a unary test', () => {
  it.each<[string, IntervalSet]>([
    ['-', [range]],
    ['140', [interval(140, 140)]],
    ['-5', [interval(-5, -5)]],
    ['.5', [interval(0.5, 0.5)]],
    ['1.5e2', [interval(150, 150)]],
    ['= 140', [interval(140, 140)]],
    ['!= 140', [below(140), above(140)]],
    ['< 140', [below(140)]],
    ['<=140', [below(140, false)]],
    ['>-5', [above(-5)]],
    ['>= 140', [above(140, false)]],
    ['[100..140]', [interval(100, 140)]],
    ['(100..140]', [interval(100, 140, true)]],
    [']100..140]', [interval(100, 140, true)]],
    ['[100..140)', [interval(100, 140, false, true)]],
    ['[100..140[', [interval(100, 140, false, true)]],
    [']100..140[', [interval(100, 140, true, true)]],
    ['[ -10 .. -5 ]', [interval(-10, -5)]],
    ['< 0, 100, (120..140]', [below(0), interval(100, 100), interval(120, 140, true)]],
    ['[0..10), [10..20]', [interval(0, 20)]],
    ['not(140)', [below(140), above(140)]],
    ['not(< 0, > 100)', [interval(0, 100)]],
    ['not ( [0..100] )', [below(0), above(100)]],
    ['not(< 1000)', []],
  ])('%s', (text, set) => {
    expect(read(text)).toEqual(set);
  });

  it('is cut to what can occur at all', () => {
    expect(read('< 1000')).toEqual([range]);
    expect(read('[400..900]')).toEqual([interval(400, 500)]);
    expect(read('> 500')).toEqual([]);
    expect(read('>= 500')).toEqual([interval(500, 500)]);
  });

  it('reads back from what a set is written as', () => {
    fc.assert(
      fc.property(anySet, (set) => {
        const text = toUnary(set, domain);
        if (text === null) expect(set).toEqual([]);
        else expect(parseUnary(text, domain)).toEqual({ ok: true, set, doubt: null });
      }),
    );
  });

  it('with a comma between digits is read as two tests, with a doubt', () => {
    const parsed = parseUnary('> 8,5', range);
    expect(parsed).toMatchObject({ ok: true, set: [interval(5, 5), above(8)] });
    expect(parsed.ok && parsed.doubt).toMatchObject({ column: 4 });
    expect(parsed.ok && parsed.doubt?.message).toContain('write 8.5 for a decimal fraction');
  });
});

describe('what is no unary test is refused with its place and mend:', () => {
  it.each<[text: string, column: number, mend: string]>([
    ['', 1, 'write a test such as < 140, or - for any value'],
    ['   ', 1, 'it is empty'],
    ['=> 140', 1, 'write >= 140'],
    ['=< 140', 1, 'write <= 140'],
    ['> = 140', 1, 'write >= 140'],
    ['≥ 140', 1, 'write >= 140'],
    ['<> 140', 1, 'write != 140'],
    ['== 140', 1, 'write = 140'],
    ['over 340', 1, 'write > 340'],
    ['at most 8,5', 1, 'write <= 8.5'],
    ['[140..100]', 1, 'has its lower end last: write [100..140]'],
    ['(5..5]', 1, 'write 5 for that value alone'],
    ['> 140 ft', 7, '“ft” follows the number: leave the unit out'],
    ['[5..6] kt', 8, 'leave the unit out'],
    ['5°', 2, 'leave the unit out'],
    ['[8,5..11]', 1, 'decimal comma: write [8.5..11]'],
    ['140-160', 1, 'write [140..160]'],
    ['140 to 160', 1, 'write [140..160]'],
    ['100..140', 1, 'write [100..140]'],
    ['between 140 and 160', 1, 'write [140..160]'],
    ['[100-140]', 1, 'write [100..140]'],
    ['[100...140)', 1, 'write [100..140)'],
    ['[100..140', 1, 'write [100..140]'],
    ['not(140', 8, 'write the bracket that closes it'],
    ['140)', 4, 'closing bracket without its opening one'],
    ['[..140]', 1, 'write <= 140'],
    ['[100..]', 1, 'write >= 100'],
    ['[a..b]', 1, 'write plain numbers'],
    ['> 100 and < 140', 1, 'write (100..140)'],
    ['<= 140 and >= 100', 1, 'write [100..140]'],
    ['100 < closure <= 140', 1, 'write (100..140]'],
    ['altitude > 140', 1, '“altitude” names what is tested: leave it out'],
    ['(140)', 1, 'needs no brackets: write 140'],
    ['(< 140)', 1, 'write < 140'],
    ['not 140', 1, 'write not(140)'],
    ['< 5, not(3)', 6, 'must enclose the whole condition'],
    ['not(not(5))', 5, 'must enclose the whole condition'],
    ['-, 5', 1, '“-” means any value and stands alone'],
    ['any', 1, 'write - for any value'],
    ['+5', 1, 'write 5'],
    ['> - 5', 1, 'write > -5'],
    ['−5', 1, 'write -5'],
    ['[−5..6]', 1, 'long minus sign'],
    ['5.', 1, 'write 5'],
    ['<', 1, 'has no number after it'],
    ['5,', 3, 'there is nothing here'],
    ['5,,6', 3, 'nothing between two commas'],
    ['5; 6', 2, 'write a comma'],
    ['< 5 or > 6', 5, 'write a comma'],
    ['5 6', 3, 'write a comma between them'],
    ['5+3', 2, 'write the result'],
    ['"5"', 1, 'quotation mark'],
    ['1e999', 1, 'out of all bounds'],
    ['$', 1, "can't be read"],
  ])('%s', (text, column, mend) => {
    const parsed = parseUnary(text, range);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.problem.column).toBe(column);
    expect(parsed.problem.message).toContain(mend);
    expect(parsed.problem.message).toMatch(/^A condition is .* but at character \d+ .*\.$/);
  });

  it('a text longer than any author writes, unread', () => {
    const parsed = parseUnary('1, '.repeat(longestUnary), range);
    expect(parsed.ok || parsed.problem.message).toContain('has 3000');
  });

  it('any text at all: the reader never throws', () => {
    const scraps = fc.constantFrom(...'[]()<>=!.,-+ 0159e', 'not', '..', 'to ', ' and ', 'ft', '≤', '…');
    const texts = fc.oneof(
      fc.string({ maxLength: 60 }),
      fc.array(scraps, { maxLength: 20 }).map((s) => s.join('')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const parsed = parseUnary(text, range);
        if (parsed.ok) return;
        expect(parsed.problem.column).toBeGreaterThanOrEqual(1);
        expect(parsed.problem.column).toBeLessThanOrEqual(text.length + 1);
      }),
      { numRuns: 2000 },
    );
  });
});
