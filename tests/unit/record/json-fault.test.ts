import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../../src/record/json-fault.ts';

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe('the fault in a text that is not JSON', () => {
  it.each([
    ['{"a": 1,}', 1, 9],
    ['{\n  "a": 1\n  "b": 2\n}', 3, 3],
    ['[1, 2, x]', 1, 8],
    ['[1 2]', 1, 4],
    ['{"a" 1}', 1, 6],
    ["{'a': 1}", 1, 2],
    ['{"a": "b\nc"}', 1, 9],
    ['{"a": "\\x"}', 1, 8],
    ['[01]', 1, 3],
    ['[1] []', 1, 5],
    ['[}', 1, 2],
    ['{"a": 1]', 1, 8],
    ['\n\n<html>', 3, 1],
  ])('of %j is found at line %i, column %i', (text, line, column) => {
    expect(jsonFault(text)).toEqual({ line, column, atEnd: false });
  });

  it.each(['', '  ', '[', '{"a"', '{"a":', '["abc', '[1, ', '{"a": 1'])('of %j is that it ends', (text) => {
    expect(jsonFault(text)?.atEnd).toBe(true);
  });

  it('is there exactly when the engine can’t parse it either', () => {
    const hurt = fc
      .tuple(
        fc.json(),
        fc.nat(),
        fc.nat(3),
        fc.constantFrom('', '"', ',', '}', ']', '[', '{', ':', '\\', '0', 'e', '\n', ' '),
      )
      .map(([json, at, cut, put]) => {
        const from = at % (json.length + 1);
        return json.slice(0, from) + put + json.slice(from + cut);
      });
    fc.assert(
      fc.property(hurt, (text) => {
        expect(jsonFault(text) === null).toBe(parses(text));
      }),
      { numRuns: 3000 },
    );
  });

  it('is found however deep it lies', () => {
    expect(jsonFault(`${'['.repeat(500_000)}x`)).toEqual({ line: 1, column: 500_001, atEnd: false });
  });
});
