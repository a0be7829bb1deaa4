import fc from 'fast-check';
import { default_w } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { Fold } from '../../../src/record/fold.ts';
import { readSnapshot, writeSnapshot } from '../../../src/record/snapshot.ts';
import type { Scheduler } from '../../../src/memory/types.ts';
import { anyRecord, evening, shuffledInPieces, testScheduler } from './examples.ts';

const foldOf = (events: Parameters<Fold['add']>[0]): Fold => {
  const fold = new Fold(testScheduler);
  fold.add(events);
  return fold;
};

describe('a snapshot', () => {
  it('gives the same histories as the events it stands for, and goes on like them', () => {
    const cases = anyRecord.chain((record) =>
      fc.tuple(fc.constant(record), shuffledInPieces(record), fc.nat(record.length)),
    );
    fc.assert(
      fc.property(cases, ([record, pieces, at]) => {
        const restored = readSnapshot(
          writeSnapshot(foldOf(record.slice(0, at)), testScheduler),
          testScheduler,
        )!;
        expect(restored.histories).toEqual(foldOf(record.slice(0, at)).histories);
        for (const piece of pieces) restored.add(piece);
        expect(restored.histories).toEqual(foldOf(record).histories);
      }),
      { numRuns: 300 },
    );
  });

  it('knows which events it holds', () => {
    const events = evening(30);
    const restored = readSnapshot(writeSnapshot(foldOf(events), testScheduler), testScheduler)!;
    expect(events.every(({ id }) => restored.has(id))).toBe(true);
    expect(restored.lastStanding()).toBe(events[29]!.id);
  });

  it('is not believed when a character of it changed', () => {
    const text = writeSnapshot(foldOf(evening(5)), testScheduler);
    fc.assert(
      fc.property(fc.nat(text.length - 1), (at) => {
        const hurt = `${text.slice(0, at)}${text[at] === '1' ? '2' : '1'}${text.slice(at + 1)}`;
        expect(readSnapshot(hurt, testScheduler)).toBeNull();
      }),
      { numRuns: 200 },
    );
  });

  it('is not believed when another model made it', () => {
    const slower: Scheduler = {
      ...testScheduler,
      next: (...given) => ({ ...testScheduler.next(...given), difficulty: 5.000001 }),
    };
    const text = writeSnapshot(foldOf(evening(5)), testScheduler);
    expect(readSnapshot(text, slower)).toBeNull();
    expect(readSnapshot(text, testScheduler)).not.toBeNull();
  });

  it('is not believed after any change to the parameters of the model in use', () => {
    const events = evening(300, { cards: 9 });
    const fold = new Fold(createScheduler());
    fold.add(events);
    const text = writeSnapshot(fold, createScheduler());
    expect(readSnapshot(text, createScheduler())?.histories).toEqual(fold.histories);
    const changed = default_w.map((_, at) => ({
      parameters: default_w.map((w, i) => (i === at ? w * 1.01 : w)),
    }));
    for (const options of [...changed, { retention: 0.89 }, { criticalRetention: 0.94 }])
      expect(readSnapshot(text, createScheduler(options))).toBeNull();
  });

  it.each([[undefined], [''], ['nothing'], [{ cards: [] }], [7]])('that is %j is none', (text) => {
    expect(readSnapshot(text, testScheduler)).toBeNull();
  });
});
