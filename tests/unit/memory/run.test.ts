import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  answered,
  current,
  LOOK_FROM_REPEAT,
  looked,
  progress,
  REPEAT_AFTER,
  startRun,
  takenBack,
  type SessionRun,
} from '../../../src/memory/run.ts';
import { MOST_REPEATS } from '../../../src/memory/worth.ts';
import type { Performance } from '../../../src/rules/types.ts';

const runOf = (count: number): SessionRun =>
  startRun({
    items: Array.from({ length: count }, (_, i) => ({ id: `card ${i}`, why: 'due', showings: 1.5 })),
  });

const anyPerformance = fc.constantFrom<Performance>('desired', 'adequate', 'outside');
const anyPerformances = fc.array(anyPerformance, { maxLength: 60 });

const after = (run: SessionRun, performances: readonly Performance[]): SessionRun =>
  performances.reduce(answered, run);

/** The cards asked, until the run is over, each answered as told. */
function asked(run: SessionRun, answerOf: (id: string, repeat: number) => Performance): string[] {
  const ids: string[] = [];
  for (let card = current(run); card !== null; card = current(run)) {
    ids.push(card.id);
    run = answered(run, answerOf(card.id, card.repeat));
  }
  return ids;
}

describe('a run', () => {
  it('asks each card once, in the order of the plan, when all are answered desired', () => {
    expect(asked(runOf(5), () => 'desired')).toEqual(['card 0', 'card 1', 'card 2', 'card 3', 'card 4']);
  });

  it.each(['adequate', 'outside'] as const)(
    'brings a card back four others later when it was %s',
    (performance) => {
      const ids = asked(runOf(8), (id, repeat) =>
        id === 'card 1' && repeat === 0 ? performance : 'desired',
      );
      expect(ids.map((id) => id.slice(5)).join('')).toBe('012345167');
    },
  );

  it('brings a card back last when fewer others are left', () => {
    const ids = asked(runOf(3), (id, repeat) => (id === 'card 1' && repeat === 0 ? 'outside' : 'desired'));
    expect(ids.map((id) => id.slice(5)).join('')).toBe('0121');
  });

  it('asks the only card left straight away again', () => {
    expect(asked(runOf(1), (_id, repeat) => (repeat < 2 ? 'outside' : 'desired'))).toHaveLength(3);
  });

  it('never asks a card twice in a row while others are left, and keeps its distance where it can', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), anyPerformances, (count, performances) => {
        let run = runOf(count);
        const lastAskedAt = new Map<string, number>();
        performances.forEach((performance, at) => {
          const card = current(run);
          if (card === null) return;
          const others = at - (lastAskedAt.get(card.id) ?? -Infinity) - 1;
          expect(others).toBeGreaterThanOrEqual(Math.min(REPEAT_AFTER, progress(run).left - 1));
          lastAskedAt.set(card.id, at);
          run = answered(run, performance);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('gives a card up after six repeats, and says so', () => {
    const ids = asked(runOf(2), (id) => (id === 'card 0' ? 'outside' : 'desired'));
    expect(ids.filter((id) => id === 'card 0')).toHaveLength(1 + MOST_REPEATS);
    const over = after(
      runOf(1),
      Array.from({ length: 1 + MOST_REPEATS }, () => 'adequate' as const),
    );
    expect(current(over)).toBeNull();
    expect(progress(over)).toEqual({ done: 1, givenUp: ['card 0'], left: 0 });
  });

  it('ends, whatever is answered', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 12 }),
        fc.infiniteStream(anyPerformance),
        (count, performances) => {
          const ids = asked(runOf(count), () => performances.next().value as Performance);
          expect(ids.length).toBeLessThanOrEqual(count * (1 + MOST_REPEATS));
          expect(new Set(ids).size).toBe(count);
        },
      ),
    );
  });

  it('that is over takes no more answers', () => {
    const over = after(runOf(1), ['desired']);
    expect(current(over)).toBeNull();
    expect(answered(over, 'outside')).toBe(over);
  });

  it('counts what is done and what is left', () => {
    const run = after(runOf(4), ['desired', 'outside', 'desired']);
    expect(progress(run)).toEqual({ done: 2, givenUp: [], left: 2 });
  });
});

describe('a card missed again and again', () => {
  const misses = (count: number): SessionRun => after(runOf(1), Array(count).fill('outside'));

  it('is to be looked at before it is asked once more', () => {
    expect(current(misses(LOOK_FROM_REPEAT - 1))?.lookFirst).toBe(false);
    expect(current(misses(LOOK_FROM_REPEAT))?.lookFirst).toBe(true);
  });

  it('is asked some others after the look, which counts as no try', () => {
    const answers = ['outside', 'desired', 'desired', 'desired', 'desired', 'outside'] as const;
    let run = after(runOf(20), answers);
    run = after(run, ['desired', 'desired', 'desired', 'desired']);
    expect(current(run)).toMatchObject({ id: 'card 0', repeat: 2, lookFirst: true });
    const seen = looked(run);
    expect(current(seen)?.id).not.toBe('card 0');
    expect(takenBack(seen)).toEqual(run);
    const later = after(seen, ['desired', 'desired', 'desired', 'desired']);
    expect(current(later)).toMatchObject({ id: 'card 0', repeat: 2, lookFirst: false });
  });

  it('is given up after a last try', () => {
    let run = runOf(1);
    let tries = 0;
    for (let card = current(run); card !== null; card = current(run)) {
      if (card.lookFirst) run = looked(run);
      else {
        run = answered(run, 'outside');
        tries++;
      }
    }
    expect(tries).toBe(1 + MOST_REPEATS);
    expect(progress(run).givenUp).toEqual(['card 0']);
  });

  it('is not looked at before', () => {
    const run = misses(1);
    expect(looked(run)).toBe(run);
  });
});

describe('an answer taken back', () => {
  it('leaves the run exactly as it was', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10 }),
        anyPerformances,
        anyPerformance,
        (count, performances, next) => {
          const run = after(runOf(count), performances);
          fc.pre(current(run) !== null);
          expect(takenBack(answered(run, next))).toEqual(run);
        },
      ),
    );
  });

  it('can be taken back down to the start, and no further', () => {
    const start = runOf(3);
    let run = after(start, ['outside', 'desired', 'desired', 'desired']);
    expect(current(run)).toBeNull();
    for (let i = 0; i < 4; i++) run = takenBack(run);
    expect(run).toEqual(start);
    expect(takenBack(run)).toBe(run);
  });
});

describe('a run written down and read again', () => {
  it('goes on where it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10 }), anyPerformances, (count, performances) => {
        const run = after(runOf(count), performances);
        const read = JSON.parse(JSON.stringify(run)) as SessionRun;
        expect(read).toEqual(run);
        expect(current(read)).toEqual(current(run));
      }),
    );
  });
});
