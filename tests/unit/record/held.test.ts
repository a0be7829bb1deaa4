import { describe, expect, it } from 'vitest';
import { Fold, foldEvents } from '../../../src/record/fold.ts';
import { HeldRecord } from '../../../src/record/held.ts';
import { readSnapshot, writeSnapshot } from '../../../src/record/snapshot.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import { evening, testScheduler } from './examples.ts';

const events = evening(12);
const [sealed, loose, late] = [events.slice(0, 8), events.slice(8, 11), events[11]!];
const fold = (of: readonly KeptEvent[]) => foldEvents(of, testScheduler);
const snapshotOf = (of: readonly KeptEvent[]): string => {
  const folded = new Fold(testScheduler);
  folded.add(of);
  return writeSnapshot(folded, testScheduler);
};
const nothing = { snapshot: null, loose: [], mark: '', problems: [] };
const held = (...adopted: KeptEvent[]): HeldRecord => {
  const record = new HeldRecord(testScheduler);
  record.adopt(adopted);
  return record;
};
const idsOf = (of: Iterable<KeptEvent>): string[] => [...of].map(({ id }) => id);

describe('what a tab holds, when it starts', () => {
  it('is the snapshot, the loose events, and what came before the store answered', () => {
    const record = held(late);
    const changed = record.resume({ snapshot: snapshotOf(sealed), loose, mark: 'm1', problems: [] });
    expect(changed?.size).toBeGreaterThan(0);
    expect(record.histories).toEqual(fold(events));
    expect(idsOf(record.loose)).toEqual(idsOf([...loose, late]));
    expect(record.mark).toBe('m1');
    expect(record.sealFrom).toBeNull();
  });

  it('counts what came, and is sealed by now, as sealed', () => {
    const record = held(sealed[3]!);
    record.resume({ snapshot: snapshotOf(sealed), loose: [], mark: 'm1', problems: [] });
    expect(idsOf(record.loose)).toEqual([]);
    expect(record.histories).toEqual(fold(sealed));
  });

  it('takes all events when a loose one is in the snapshot too: it may be there in two versions', () => {
    const twice = { snapshot: snapshotOf(sealed), loose: [sealed[3]!], mark: 'm1', problems: [] };
    expect(held().resume(twice)).toBeNull();
  });

  it('takes all events when there are sealed ones and no snapshot of them', () => {
    expect(held().resume({ snapshot: null, loose, mark: 'm1', problems: [] })).toBeNull();
    expect(held().resume({ snapshot: 'damaged', loose, mark: 'm1', problems: [] })).toBeNull();
  });

  it('forgets what was sealed when nothing is any more, as after an erasure it didn’t hear of', () => {
    const record = held();
    record.resume({ snapshot: snapshotOf(sealed), loose: [], mark: 'm1', problems: [] });
    record.resume({ ...nothing, loose: [late] });
    expect(record.histories).toEqual(fold([late]));
  });
});

describe('what a tab holds, read anew', () => {
  it('is what the store gave and what is only here; the latter stays loose', () => {
    const record = held(late);
    const changed = record.replace({
      events: [...sealed, ...loose],
      loose: idsOf(loose),
      mark: 'm1',
      problems: [],
    });
    expect(record.histories).toEqual(fold(events));
    expect(changed).toEqual(new Set(record.histories.keys()));
    expect(idsOf(record.loose)).toEqual(idsOf([...loose, late]));
  });

  it('counts what another tab sealed as sealed', () => {
    const record = held(sealed[0]!);
    record.replace({ events: sealed, loose: [], mark: 'm1', problems: [] });
    expect(idsOf(record.loose)).toEqual([]);
  });
});

describe('a snapshot of what a tab holds', () => {
  const started = (): HeldRecord => {
    const record = held();
    record.resume({ ...nothing, loose: sealed });
    return record;
  };

  it('is of exactly the sealed events', () => {
    const record = started();
    record.sealed({ ok: true, events: sealed, before: '', after: 'm1' });
    const { text, mark } = record.snapshot()!;
    expect(mark).toBe('m1');
    expect(readSnapshot(text, testScheduler)?.histories).toEqual(fold(sealed));
  });

  it('waits when an answer came while the seal was under way: it may never have been written', () => {
    const record = started();
    record.adopt([late]);
    record.sealed({ ok: true, events: sealed, before: '', after: 'm1' });
    expect(record.snapshot()).toBeNull();
    expect(record.sealFrom).toBe(1);
  });

  it('holds what another tab wrote and this one had not heard of', () => {
    const record = started();
    const changed = record.sealed({ ok: true, events: [...sealed, ...loose], before: '', after: 'm1' });
    expect(changed.size).toBeGreaterThan(0);
    const { text } = record.snapshot()!;
    expect(readSnapshot(text, testScheduler)?.histories).toEqual(fold([...sealed, ...loose]));
  });

  it('waits until all is read when another tab sealed events before', () => {
    const record = started();
    record.sealed({ ok: true, events: sealed, before: 'another tab’s', after: 'm2' });
    expect(record.mark).toBeNull();
    expect(record.snapshot()).toBeNull();
    record.replace({ events: [...sealed, ...loose], loose: [], mark: 'm2', problems: [] });
    expect(record.snapshot()?.mark).toBe('m2');
  });

  it('waits until all is read when an event was sealed in two versions', () => {
    const record = started();
    const other = { ...sealed[0]!, value: -1 };
    record.sealed({ ok: true, events: [...sealed, other], before: '', after: 'm1' });
    expect(record.mark).toBeNull();
    expect(record.snapshot()).toBeNull();
  });

  it('is asked for once: then it takes many new events to be worth a new one', () => {
    const record = started();
    record.sealed({ ok: true, events: sealed, before: '', after: 'm1' });
    expect(record.sealFrom).toBe(1);
    record.keptSnapshot('m1');
    expect(record.snapshot()).toBeNull();
    expect(record.sealFrom).toBeNull();
    record.adopt(evening(250, { seed: 5 }));
    expect(record.sealFrom).toBe(200);
  });

  it('that was written for an older state doesn’t count', () => {
    const record = started();
    record.sealed({ ok: true, events: sealed, before: '', after: 'm1' });
    record.adopt([late]);
    record.sealed({ ok: true, events: [late], before: 'm1', after: 'm2' });
    record.keptSnapshot('m1');
    expect(record.snapshot()?.mark).toBe('m2');
  });
});
