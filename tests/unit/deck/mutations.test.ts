import fc from 'fast-check';
import { parse, stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { deckCodes } from '../../../src/deck/codes.ts';
import type { Finding } from '../../../src/deck/findings.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { deckSchema } from '../../../src/deck/schema.ts';
import { fixtureDeckText } from './fixture.ts';
import { anyPath, mutated, mutation, type Mutation } from './mutation.ts';

const textOf = (mutations: readonly Mutation[]): string =>
  stringify(mutated(mutations), { aliasDuplicateObjects: false });

const isKnown: ReadonlySet<string> = new Set(deckCodes);

/** What is wrong with a finding itself: it must be complete, say a mend, and lie in the file. */
function faultsOf({ code, at, where, message }: Finding, lines: readonly string[]): string[] {
  const faults: string[] = [];
  if (!isKnown.has(code)) faults.push(`unknown code ${code}`);
  if (!where) faults.push(`${code} without where`);
  if (!/.; .+\.$/s.test(message)) faults.push(`${code} without a mend: ${message}`);
  const line = at && lines[at.line - 1];
  if (!at || line === undefined || at.column < 1 || at.column > line.length + 1)
    faults.push(`${code} outside of the file: ${JSON.stringify(at)}`);
  return faults;
}

/** What holds for every text: it is loaded or refused, and what is said of it is orderly. */
function expectOrderly(text: string): void {
  const { deck, findings } = loadDeck(text);
  const lines = text.split('\n');
  expect(findings.flatMap((finding) => faultsOf(finding, lines))).toEqual([]);
  expect(deck === null).toBe(findings.some(({ severity }) => severity === 'error'));
  const places = findings.map(({ at }) => at!.line * 1e6 + at!.column);
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(new Set(findings.map((finding) => JSON.stringify(finding))).size).toBe(findings.length);
  if (deck) expect(deckSchema.safeParse(deck).success).toBe(true);
}

/** For a machine that is busy with other things. */
const patienceMs = 60_000;

describe('a valid deck with random changes', () => {
  it(
    'to its data is loaded or refused with findings that lie in the file',
    () => {
      fc.assert(
        fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) =>
          expectOrderly(textOf(mutations)),
        ),
        { numRuns: 60 },
      );
    },
    patienceMs,
  );

  it(
    'is refused when a value of its shape is taken away',
    () => {
      fc.assert(
        fc.property(anyPath, (path) => {
          const text = textOf([{ kind: 'delete', path }]);
          const sound = deckSchema.safeParse(parse(text)).success;
          if (!sound) expect(loadDeck(text).deck).toBeNull();
        }),
        { numRuns: 60 },
      );
    },
    patienceMs,
  );

  it(
    'to its text is loaded or refused with findings that lie in the file',
    () => {
      const edit = fc.record({
        from: fc.nat(fixtureDeckText.length),
        length: fc.nat(30),
        piece: fc.oneof(
          fc.string({ maxLength: 8 }),
          fc.constantFrom(
            '\n',
            '\t',
            '  ',
            '- ',
            ': ',
            '[',
            ']',
            '{',
            '}',
            '"',
            "'",
            '#',
            '&a ',
            '*a',
            '!x ',
            '---\n',
            '\r',
          ),
        ),
      });
      fc.assert(
        fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
          const text = edits.reduce(
            (before, { from, length, piece }) => before.slice(0, from) + piece + before.slice(from + length),
            fixtureDeckText,
          );
          expectOrderly(text);
        }),
        { numRuns: 80 },
      );
    },
    patienceMs,
  );

  it(
    'of any text at all',
    () => {
      fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), expectOrderly), { numRuns: 150 });
    },
    patienceMs,
  );
});
