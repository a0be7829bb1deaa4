/** Ids of events: UUID version 7 (RFC 9562, section 5.7). As text they sort by the time they were made. */
import { v7 } from 'uuid';
import type { EventId } from './types.ts';

/** Gives `count` random bytes. In a browser: `(count) => crypto.getRandomValues(new Uint8Array(count))`. */
export type RandomBytes = (count: number) => Uint8Array;

export interface EventIds {
  /**
   * A new id, greater than every id given before by this source, also within one millisecond and
   * when the clock was set back.
   * @param nowMs epoch milliseconds; below 0 counts as 0.
   */
  next(nowMs: number): EventId;
}

/**
 * A source of ids. RFC 9562, section 6.2, method 1: the 32 bits after the time count up while the
 * clock doesn't move on. They start at random, so that two devices hardly ever meet, and with the top
 * bit clear, which leaves two thousand million ids before the count could run over.
 */
export function eventIds(randomBytes: RandomBytes): EventIds {
  let lastMs = -1;
  let counter = 0;
  return {
    next(nowMs) {
      const msecs = Math.max(0, Math.floor(nowMs));
      const random = randomBytes(16);
      if (msecs > lastMs) {
        lastMs = msecs;
        counter = ((random[6]! & 0x7f) << 24) | (random[7]! << 16) | (random[8]! << 8) | random[9]!;
      } else {
        counter += 1;
      }
      return v7({ msecs: lastMs, seq: counter, random });
    },
  };
}

/** The time within an id, in epoch milliseconds: its first 48 bits. */
export function idTimeMs(id: EventId): number {
  return Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}

const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const valueOf = new Map([...digits].map((digit, value) => [digit, value]));

/** An id in 22 characters instead of 36: its 128 bits in base64url (RFC 4648, section 5). */
export function packId(id: EventId): string {
  const hex = `${id.replaceAll('-', '')}0`;
  let packed = '';
  for (let i = 0; i < 33; i += 3) {
    const bits = Number.parseInt(hex.slice(i, i + 3), 16);
    packed += digits[bits >> 6]! + digits[bits & 63]!;
  }
  return packed;
}

/** The id that was packed; text that no id packs to gives text that is no id. */
export function unpackId(packed: string): EventId {
  let hex = '';
  for (let i = 0; i < packed.length; i += 2) {
    const bits = ((valueOf.get(packed[i]!) ?? 0) << 6) | (valueOf.get(packed[i + 1] ?? '') ?? 0);
    hex += bits.toString(16).padStart(3, '0');
  }
  const at = (from: number, to: number): string => hex.slice(from, to);
  return [at(0, 8), at(8, 12), at(12, 16), at(16, 20), at(20, 32)].join('-');
}
