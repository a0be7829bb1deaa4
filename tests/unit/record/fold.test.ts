import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cardKey, Fold, foldEvents } from '../../../src/record/fold.ts';
import { inOrder } from '../../../src/record/merge.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import type { Scheduler } from '../../../src/memory/types.ts';
import {
  answer,
  anyRecord,
  dayMs,
  evening,
  eveningMs,
  shuffledInPieces,
  testIds,
  testScheduler,
  undo,
} from './examples.ts';

const key = cardKey('marram-recovery', 'value/alongside/altitude');
const fold = (events: Iterable<KeptEvent>) => foldEvents(events, testScheduler);

describe('a fold', () => {
  it('gives what the answers of a card come to', () => {
    const ids = testIds();
    const one = answer(ids.next(eveningMs), {
      performance: 'outside',
      rating: 1,
      value: 90,
      signedError: -50,
    });
    const two = answer(ids.next(eveningMs + dayMs), { atMs: eveningMs + dayMs });
    const history = fold([one, two]).get(key);
    expect(history?.calls.map(({ value }) => value)).toEqual([90, 145]);
    expect(history?.calls[1]).toEqual({
      event: two.id,
      atMs: eveningMs + dayMs,
      performance: 'desired',
      timeliness: 'prompt',
      elapsedMs: 2100,
      value: 145,
      signedError: 5,
      headline: '5 ft high',
      expected: '140 ft',
    });
    const first = testScheduler.next(null, 1, eveningMs, false);
    expect(history?.memory).toEqual(testScheduler.next(first, 3, eveningMs + dayMs, false));
    expect(history?.desiredInARow).toBe(1);
  });

  it('keeps in words what was called and what was due, where the event has them', () => {
    const words = { called: 'more power', due: 'come right, less power' };
    const [call] = fold([answer(testIds().next(eveningMs), words)]).get(key)!.calls;
    expect(call).toMatchObject({ headline: '5 ft high', ...words });
  });

  it('counts an answer for another day like any other, and keeps the day with the call', () => {
    const ids = testIds();
    const day = { 'wind-speed': 20 };
    const own = answer(ids.next(eveningMs), {});
    const other = answer(ids.next(eveningMs + dayMs), { atMs: eveningMs + dayMs, day });
    const history = fold([own, other]).get(key);
    expect(history?.calls.map((call) => call.day)).toEqual([undefined, day]);
    expect(new Set(history?.calls.map(({ expected }) => expected))).toEqual(new Set(['140 ft']));
    const sameDay = { ...other, day: undefined };
    expect(history?.memory).toEqual(fold([own, sameDay as unknown as KeptEvent]).get(key)?.memory);
  });

  it('counts desired answers in a row up to the last', () => {
    const ids = testIds();
    const runs = (...performances: ('desired' | 'adequate' | 'outside')[]) =>
      fold(performances.map((performance) => answer(ids.next(eveningMs), { performance }))).get(key)
        ?.desiredInARow;
    expect(runs('desired', 'desired', 'desired')).toBe(3);
    expect(runs('desired', 'adequate', 'desired', 'desired')).toBe(2);
    expect(runs('desired', 'outside')).toBe(0);
  });

  it('keeps the cards of two decks apart, and those answered in drills together with those recalled', () => {
    const ids = testIds();
    const other = answer(ids.next(eveningMs), { deck: 'light-aircraft-circuit' });
    const recalled = answer(ids.next(eveningMs), { cardKind: 'rule', card: 'rule/height/high' });
    const drilled = answer(ids.next(eveningMs), {
      cardKind: 'rule',
      card: 'rule/height/high',
      mode: 'drill',
    });
    const histories = fold([other, recalled, drilled]);
    expect([...histories.keys()].sort()).toEqual([
      'light-aircraft-circuit/value/alongside/altitude',
      'marram-recovery/rule/height/high',
    ]);
    expect(histories.get('marram-recovery/rule/height/high')?.memory?.answers).toBe(2);
  });

  it('passes on whether the card is critical', () => {
    const asked: boolean[] = [];
    const noting: Scheduler = {
      ...testScheduler,
      next(...given) {
        asked.push(given[3]);
        return testScheduler.next(...given);
      },
    };
    const ids = testIds();
    foldEvents([answer(ids.next(1), { critical: true }), answer(ids.next(2), { critical: false })], noting);
    expect(asked).toEqual([true, false]);
  });

  it('knows nothing of events it doesn’t understand', () => {
    const id = testIds().next(eveningMs);
    expect(fold([{ kind: 'stranger', id, atMs: eveningMs, raw: { kind: 'wind-log', id } }])).toEqual(
      new Map(),
    );
  });
});

describe('an undo', () => {
  const ids = testIds();
  const one = answer(ids.next(eveningMs), { value: 1 });
  const two = answer(ids.next(eveningMs), { value: 2 });
  const three = answer(ids.next(eveningMs), { value: 3 });
  const undoTwo = undo(ids.next(eveningMs), two.id);
  const redoTwo = undo(ids.next(eveningMs), undoTwo.id);
  const undoTwoAgain = undo(ids.next(eveningMs), redoTwo.id);
  const otherUndoTwo = undo(ids.next(eveningMs), two.id);

  it('leaves the card as if the answer had never been', () => {
    expect(fold([one, two, three, undoTwo])).toEqual(fold([one, three]));
  });

  it('of an undo is a redo, and so on', () => {
    expect(fold([one, two, three, undoTwo, redoTwo])).toEqual(fold([one, two, three]));
    expect(fold([one, two, three, undoTwo, redoTwo, undoTwoAgain])).toEqual(fold([one, three]));
  });

  it('stands beside another one: to redo, both must be undone', () => {
    expect(fold([one, two, undoTwo, otherUndoTwo, redoTwo])).toEqual(fold([one]));
  });

  it('works when it comes before its answer', () => {
    const growing = new Fold(testScheduler);
    growing.add([undoTwo]);
    growing.add([one, three]);
    growing.add([two]);
    expect(growing.histories).toEqual(fold([one, three]));
  });

  it('works when the undo of it comes first', () => {
    const growing = new Fold(testScheduler);
    growing.add([redoTwo, one, two]);
    growing.add([undoTwo]);
    expect(growing.histories).toEqual(fold([one, two]));
  });

  it('takes the card away when no answer is left', () => {
    expect(fold([two, undoTwo])).toEqual(new Map());
  });

  it('leads nowhere in a ring', () => {
    const ring = [undo(ids.next(1), ids.next(1))];
    const self = ids.next(1);
    const back = undo(ring[0]!.of, ring[0]!.id);
    expect(fold([one, ...ring, back, undo(self, self)])).toEqual(fold([one]));
  });

  it('in a chain of 100,000 is followed to its end', () => {
    const chain: KeptEvent[] = [one];
    for (let i = 0; i < 100_001; i++) chain.push(undo(ids.next(eveningMs), chain[chain.length - 1]!.id));
    expect(fold(chain)).toEqual(new Map());
    expect(fold(chain.slice(0, -1))).toEqual(fold([one]));
  });
});

describe('a fold that grows', () => {
  it('is the same for any order, any pieces and any repeats', () => {
    const cases = anyRecord.chain((record) => fc.tuple(fc.constant(record), shuffledInPieces(record)));
    fc.assert(
      fc.property(cases, ([record, pieces]) => {
        const growing = new Fold(testScheduler);
        for (const piece of pieces) growing.add(piece);
        expect(growing.histories).toEqual(fold(inOrder(record)));
      }),
      { numRuns: 500 },
    );
  });

  it('takes one step of the model for an answer in order of time, and folds one card anew otherwise', () => {
    let steps = 0;
    const counting: Scheduler = {
      ...testScheduler,
      next: (...given) => (steps++, testScheduler.next(...given)),
    };
    const stepsFor = (work: () => void): number => {
      steps = 0;
      work();
      return steps;
    };
    const answers = evening(400, { cards: 4 });
    const growing = new Fold(counting);
    expect(stepsFor(() => growing.add(answers))).toBe(400);
    const ids = testIds(9);
    const laterMs = eveningMs + dayMs;
    const card = answers[0]!.card;
    const before = growing.histories.get(cardKey('marram-recovery', card))!.calls.length;
    const late = answer(ids.next(laterMs), { card });
    expect(stepsFor(() => growing.add([late]))).toBe(1);
    expect(stepsFor(() => growing.add([undo(ids.next(laterMs), late.id)]))).toBe(before);
    expect(stepsFor(() => growing.add([answer(testIds().next(eveningMs - dayMs), { card })]))).toBe(
      before + 1,
    );
    expect(stepsFor(() => growing.add(answers))).toBe(0);
  });

  it('names the cards that changed, and leaves a history it gave away as it was', () => {
    const ids = testIds();
    const growing = new Fold(testScheduler);
    expect([...growing.add([answer(ids.next(1)), answer(ids.next(1), { card: 'note/a' })])].sort()).toEqual([
      'marram-recovery/note/a',
      key,
    ]);
    const given = growing.histories.get(key)!;
    const note = growing.histories.get('marram-recovery/note/a');
    const copy = structuredClone(given);
    expect([...growing.add([answer(ids.next(1))])]).toEqual([key]);
    expect(given).toEqual(copy);
    expect(growing.histories.get(key)).not.toBe(given);
    expect(growing.histories.get('marram-recovery/note/a')).toBe(note);
  });

  it('knows the answer given last that still stands', () => {
    const ids = testIds();
    const growing = new Fold(testScheduler);
    expect(growing.lastStanding()).toBeNull();
    const one = answer(ids.next(1), { card: 'note/b' });
    const two = answer(ids.next(2));
    const elsewhere = answer(ids.next(3), { deck: 'light-aircraft-circuit' });
    growing.add([two, elsewhere, one]);
    expect(growing.lastStanding()).toBe(elsewhere.id);
    expect(growing.lastStanding('marram-recovery')).toBe(two.id);
    growing.add([undo(ids.next(4), two.id)]);
    expect(growing.lastStanding('marram-recovery')).toBe(one.id);
  });
});
