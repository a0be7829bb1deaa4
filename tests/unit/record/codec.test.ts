import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeChunk, encodeChunk } from '../../../src/record/codec.ts';
import { rawEvent } from '../../../src/record/schema.ts';
import type { AnswerEvent, KeptEvent } from '../../../src/record/types.ts';
import { answer, anyRecord, evening, eveningMs, testIds } from './examples.ts';

const textOf = (event: KeptEvent): string => JSON.stringify(event);

describe('a sealed chunk', () => {
  it('gives back what was sealed, whatever it was', () => {
    fc.assert(
      fc.property(anyRecord, (events) => {
        expect(decodeChunk(encodeChunk(events))).toEqual({ events, problems: [] });
      }),
      { numRuns: 300 },
    );
  });

  it('keeps an answer whose clock had been set back, and one without a number', () => {
    const { value: _, signedError: __, ...wordless } = answer(testIds().next(eveningMs), { atMs: 1234 });
    expect(decodeChunk(encodeChunk([wordless])).events).toEqual([wordless]);
  });

  it('keeps what a newer version added: fields, card kinds and events', () => {
    const ids = testIds();
    const further = { ...answer(ids.next(1)), wind: { fromDeg: 20, speedKt: 15 } } as AnswerEvent;
    const raw = { kind: 'wind-log', id: ids.next(2), atMs: 5, legs: [1, 2] };
    const heard = { ...answer(ids.next(3)), cardKind: 'heard' };
    const strangers: KeptEvent[] = [
      { kind: 'stranger', id: raw.id, atMs: 5, raw },
      { kind: 'stranger', id: heard.id, atMs: eveningMs, raw: heard },
    ];
    const { events, problems } = decodeChunk(encodeChunk([further, ...strangers]));
    expect(problems).toEqual([]);
    expect(events.map(rawEvent)).toEqual([further, raw, heard]);
    expect(events).toEqual([further, ...strangers]);
  });

  it('is less than half as long as the events', () => {
    const events = evening(300, { cards: 100 });
    expect(encodeChunk(events).length).toBeLessThan(JSON.stringify(events).length / 2);
  });
});

describe('a damaged chunk', () => {
  const events = evening(40);
  const whole = encodeChunk(events);
  const originals = new Set(events.map(textOf));

  it('gives back only true answers and says how many, whatever happened to a character', () => {
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.string({ minLength: 0, maxLength: 3 }), (at, put) => {
        fc.pre(whole.slice(at, at + 1) !== put);
        const hurt = whole.slice(0, at) + put + whole.slice(at + 1);
        const { events: read, problems } = decodeChunk(hurt);
        expect(read.filter((event) => !originals.has(textOf(event)))).toEqual([]);
        if (read.length < events.length) {
          expect(problems.map(({ code }) => code)).toEqual(['damaged-chunk']);
          expect(problems[0]!.message).toContain(`${read.length}`);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('loses one answer when one line of an answer is hit', () => {
    const lines = whole.split('\n');
    const at = lines.findLastIndex((line) => line.includes('["a"'));
    lines[at] = lines[at]!.replace('"a"', '"A"');
    const { events: read, problems } = decodeChunk(lines.join('\n'));
    expect(read).toEqual(events.slice(0, -1));
    expect(problems[0]!.message).toContain('39 of 40 of its entries can be read');
  });

  it('gives back what came before the place where it was cut off', () => {
    const { events: read, problems } = decodeChunk(whole.slice(0, whole.length / 2));
    expect(read.length).toBeGreaterThan(10);
    expect(read).toEqual(events.slice(0, read.length));
    expect(problems).toHaveLength(1);
  });

  it('that lost its head gives back its answers and says that some may be missing', () => {
    const { events: read, problems } = decodeChunk(whole.split('\n').slice(1).join('\n'));
    expect(read).toEqual(events);
    expect(problems.map(({ code }) => code)).toEqual(['damaged-chunk']);
  });

  it.each([[''], ['{}'], [null], [undefined], [42], [new Uint8Array(8)], ['\n\n\n'], ['00000[]']])(
    'that is %j gives a problem and no more',
    (chunk) => {
      expect(decodeChunk(chunk)).toMatchObject({ events: [], problems: [{ code: 'damaged-chunk' }] });
    },
  );

  it('is told from one that a newer version wrote', () => {
    // The head as version 2 would write it, with its checksum.
    const newer = encodeChunk([]).replace(/^.*$/, () => headOf(2));
    expect(decodeChunk(newer)).toMatchObject({ events: [], problems: [{ code: 'newer-chunk' }] });
  });
});

function headOf(version: number): string {
  const json = JSON.stringify(['h', 'gatecall-chunk', version, 3]);
  let sum = 0xffffffff;
  for (const byte of Buffer.from(json)) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (((sum ^ 0xffffffff) >>> 0) & 0xffffff).toString(36).padStart(5, '0') + json;
}
