import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Answer, Ask } from '../../../src/cards/types.ts';
import { gradeSequence, sequenceFaults } from '../../../src/grading/grade-sequence.ts';
import { longestIncreasing } from '../../../src/grading/longest-increasing.ts';
import { shuffled, seeded } from '../../../src/rules/random.ts';

type SequenceAsk = Extract<Ask, { form: 'sequence' }>;
const option = (id: string) => ({
  id,
  label: id === 'iff' ? 'IFF' : id.charAt(0).toUpperCase() + id.slice(1),
});
const six = ['wheels', 'flaps', 'jets', 'brakes', 'harness', 'fuel'];
const ask = (expected = six, critical = ['wheels']): SequenceAsk => ({
  form: 'sequence',
  pool: [...expected, 'hook', 'iff'].map(option),
  expected,
  critical,
});
const grade = (chosen: readonly string[], asked = ask()) =>
  gradeSequence(asked, { form: 'sequence', chosen } satisfies Answer);

describe('items put in order', () => {
  test.each([
    ['exactly right', six, 'desired', 'all 6 in order'],
    ['one missing', ['wheels', 'jets', 'brakes', 'harness', 'fuel'], 'adequate', '5 of 6: flaps missing'],
    ['a critical one missing', six.slice(1), 'outside', '5 of 6: wheels missing'],
    [
      'one out of place',
      ['wheels', 'jets', 'brakes', 'harness', 'fuel', 'flaps'],
      'adequate',
      '5 of 6: flaps out of place',
    ],
    ['one added', [...six, 'hook'], 'adequate', '6 of 6: hook too many'],
    ['one twice', [...six, 'flaps'], 'adequate', '6 of 6: flaps too many'],
    ['two missing', ['wheels', 'jets', 'harness', 'fuel'], 'outside', '4 of 6: flaps and brakes missing'],
    ['three missing', ['jets', 'harness', 'fuel'], 'outside', '3 of 6: wheels, flaps and 1 more missing'],
    [
      'an exchange',
      ['wheels', 'iff', 'jets', 'brakes', 'harness', 'fuel'],
      'outside',
      '5 of 6: flaps missing; IFF too many',
    ],
    ['backwards', [...six].reverse(), 'outside', '1 of 6: fuel, harness and 3 more out of place'],
  ])('%s', (_name, chosen, performance, headline) => {
    const graded = grade(chosen);
    expect(graded).toMatchObject({ ok: true, performance, headline });
  });

  it('names the critical item first among those missing', () => {
    expect(grade(['wheels', 'flaps'], ask(six, ['fuel']))).toMatchObject({
      headline: '2 of 6: fuel, jets and 2 more missing',
    });
  });

  it('forgives no slip in a list of three', () => {
    expect(grade(['wheels', 'flaps'], ask(['wheels', 'flaps', 'jets']))).toMatchObject({
      performance: 'outside',
    });
  });

  it('asks for at least one item', () => {
    expect(grade([])).toMatchObject({ ok: false, problem: { code: 'empty' } });
  });

  it('refuses an item that was not shown', () => {
    expect(grade(['wheels', '__proto__'])).toMatchObject({ ok: false, problem: { code: 'unknown-choice' } });
  });
});

/** The longest increasing subsequence by trying every subset. */
function bruteForce(numbers: readonly number[]): number {
  let best = 0;
  for (let subset = 0; subset < 1 << numbers.length; subset++) {
    const kept = numbers.filter((_, index) => subset & (1 << index));
    if (kept.every((number, index) => index === 0 || kept[index - 1]! < number))
      best = Math.max(best, kept.length);
  }
  return best;
}

describe('longest increasing subsequence', () => {
  it('is as long as trying every subset finds, increasing, and in the order given', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 9 }), (numbers) => {
        const found = longestIncreasing(numbers);
        expect(found).toHaveLength(bruteForce(numbers));
        let from = -1;
        found.forEach((number, index) => {
          if (index > 0) expect(number).toBeGreaterThan(found[index - 1]!);
          from = numbers.indexOf(number, from + 1);
          expect(from).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });
});

describe('faults of a sequence', () => {
  const sequences = fc
    .tuple(fc.integer({ min: 1, max: 7 }), fc.integer(), fc.integer({ min: 0, max: 127 }))
    .map(([length, seed, kept]) => {
      const expected = Array.from({ length }, (_, index) => `item-${index}`);
      const chosen = shuffled(expected, seeded(seed)).filter((_, index) => kept & (1 << index));
      return { expected, chosen };
    });

  it('are the fewest: taking the misplaced ones away leaves the rest in order, and no smaller set does', () => {
    fc.assert(
      fc.property(sequences, ({ expected, chosen }) => {
        const { missing, misplaced, added } = sequenceFaults(chosen, expected);
        const places = chosen.map((id) => expected.indexOf(id));
        expect(added).toEqual([]);
        expect([...missing, ...chosen].sort()).toEqual([...expected].sort());
        expect(chosen.length - misplaced.length).toBe(bruteForce(places));
        const rest = chosen.filter((id) => !misplaced.includes(id));
        expect(rest).toEqual(expected.filter((id) => rest.includes(id)));
      }),
    );
  });

  it('leave the items that stand in their own place, where as few can be moved either way', () => {
    // Of c, b and a any one could stay where it is; only b is where it belongs.
    expect(sequenceFaults(['c', 'b', 'a', 'd'], ['a', 'b', 'c', 'd']).misplaced).toEqual(['c', 'a']);
    fc.assert(
      fc.property(sequences, ({ expected, chosen }) => {
        const { misplaced } = sequenceFaults(chosen, expected);
        const atHome = (kept: readonly string[]): number =>
          kept.filter((id) => chosen.indexOf(id) === expected.indexOf(id)).length;
        const kept = chosen.filter((id) => !misplaced.includes(id));
        for (let subset = 0; subset < 1 << chosen.length; subset++) {
          const other = chosen.filter((_, index) => subset & (1 << index));
          const isInOrder = other.join() === expected.filter((id) => other.includes(id)).join();
          if (isInOrder && other.length === kept.length)
            expect(atHome(kept)).toBeGreaterThanOrEqual(atHome(other));
        }
      }),
    );
  });

  it('are none exactly when the sequence is the expected one', () => {
    fc.assert(
      fc.property(sequences, ({ expected, chosen }) => {
        const faults = Object.values(sequenceFaults(chosen, expected)).flat();
        expect(faults.length === 0).toBe(chosen.join() === expected.join());
      }),
    );
  });
});
