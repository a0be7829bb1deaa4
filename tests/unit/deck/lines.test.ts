import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linesOf } from '../../../src/deck/lines.ts';

describe('line and column of an offset', () => {
  it.each([
    ['', 0, 1, 1],
    ['abc', 2, 1, 3],
    ['abc', 3, 1, 4],
    ['a\nb', 1, 1, 2],
    ['a\nb', 2, 2, 1],
    ['a\n\n\nb', 3, 3, 1],
    ['a\r\nb', 3, 2, 1],
    ['a\n', 2, 2, 1],
    ['a', 99, 1, 2],
    ['a', -1, 1, 1],
  ])('in %j, %s is line %s, column %s', (text, offset, line, column) => {
    expect(linesOf(text).placeAt(offset)).toEqual({ line, column });
  });

  it('leads back to the offset', () => {
    const text = fc.string({ unit: fc.constantFrom('a', '\n', '\r', 'é') });
    fc.assert(
      fc.property(text, fc.nat(20), (written, wanted) => {
        const offset = Math.min(wanted, written.length);
        const lines = linesOf(written);
        const { line, column } = lines.placeAt(offset);
        expect(lines.startOf(line) + column - 1).toBe(offset);
        expect(written.slice(0, offset).split('\n')).toHaveLength(line);
      }),
    );
  });
});
