import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldEvents } from '../../../src/record/fold.ts';
import { canonical, mergeEvents } from '../../../src/record/merge.ts';
import type { KeptEvent } from '../../../src/record/types.ts';
import { answer, anyRecord, evening, eveningMs, testIds, testScheduler } from './examples.ts';

const merge = (...records: KeptEvent[][]): KeptEvent[] => [...mergeEvents(...records).events];
const sameId = testIds().next(eveningMs);
/** Records that share ids, some with two contents. */
const records = fc
  .tuple(anyRecord, anyRecord, anyRecord, fc.nat(40), fc.nat(40))
  .map(([one, two, three, from, value]) => {
    const shared = one.slice(0, from);
    const other = three.map((event) => (event.kind === 'answer' ? { ...event, value } : event));
    return [one, [...shared, ...two], [...other, ...shared], [...three, answer(sameId, { value })]];
  });

describe('merged records', () => {
  it('hold each event once, in order of id', () => {
    const [one, two] = [evening(20, { seed: 1 }), evening(20, { seed: 2 })];
    const { events, conflicts } = mergeEvents(two, one, two);
    expect(events).toHaveLength(40);
    expect(events.map(({ id }) => id)).toEqual([...one, ...two].map(({ id }) => id).sort());
    expect(conflicts).toEqual([]);
  });

  it('are the same whichever comes first', () => {
    fc.assert(
      fc.property(records, ([a, b, c, d]) => {
        expect(mergeEvents(a!, b!)).toEqual(mergeEvents(b!, a!));
        expect(mergeEvents(c!, d!)).toEqual(mergeEvents(d!, c!));
      }),
    );
  });

  it('are the same however they are grouped', () => {
    fc.assert(
      fc.property(records, ([a, b, c, d]) => {
        expect(merge(merge(a!, b!), merge(c!, d!))).toEqual(merge(a!, merge(b!, merge(c!, d!))));
      }),
    );
  });

  it('don’t change when merged again', () => {
    fc.assert(
      fc.property(records, ([, , c, d]) => {
        expect(merge(merge(c!, d!), d!, c!)).toEqual(merge(c!, d!));
      }),
    );
  });

  it('fold to the same on both devices', () => {
    fc.assert(
      fc.property(records, ([, , c, d]) => {
        const here = foldEvents(merge(c!, d!), testScheduler);
        expect(here).toEqual(foldEvents(merge(d!, c!), testScheduler));
      }),
    );
  });

  it('name an id that came with two contents, and keep the same one in any order', () => {
    const [one, other] = [answer(sameId, { value: 1 }), answer(sameId, { value: 2 })];
    expect(mergeEvents([one], [other])).toEqual({ events: [one], conflicts: [sameId] });
    expect(mergeEvents([other], [one])).toEqual({ events: [one], conflicts: [sameId] });
  });

  it('don’t mind in which order an event has its fields', () => {
    const event = answer(sameId);
    const turned = Object.fromEntries(Object.entries(event).reverse()) as unknown as KeptEvent;
    expect(mergeEvents([event], [turned]).conflicts).toEqual([]);
  });
});

describe('canonical text', () => {
  it('is equal for equal data', () => {
    expect(canonical({ b: [1, { d: null, c: 'x' }], a: undefined })).toBe('{"b":[1,{"c":"x","d":null}]}');
  });
});
