/** Records of several devices as one: the union by id. Commutative, associative and idempotent. */
import { rawEvent } from './schema.ts';
import type { EventId, KeptEvent } from './types.ts';

export interface Merged {
  /** Each id once, in order of id, which is that of time. */
  readonly events: readonly KeptEvent[];
  /** Ids that came with two contents. It takes a damaged or doctored file to make one. */
  readonly conflicts: readonly EventId[];
}

/**
 * The union of any number of records. Of two events with one id but different content, the one whose
 * canonical text comes first is kept: senseless, but the same on every device and in any order.
 */
export function mergeEvents(...records: readonly Iterable<KeptEvent>[]): Merged {
  const byId = new Map<EventId, KeptEvent>();
  const conflicts = new Set<EventId>();
  for (const record of records)
    for (const event of record) {
      const there = byId.get(event.id);
      if (there === undefined) byId.set(event.id, event);
      else if (!sameEvent(there, event)) {
        conflicts.add(event.id);
        if (canonical(rawEvent(event)) < canonical(rawEvent(there))) byId.set(event.id, event);
      }
    }
  return { events: inOrder([...byId.values()]), conflicts: [...conflicts].sort() };
}

/** Events sorted by id. */
export function inOrder<T extends { readonly id: EventId }>(events: readonly T[]): T[] {
  return [...events].sort((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0));
}

export function sameEvent(one: KeptEvent, other: KeptEvent): boolean {
  return one === other || canonical(rawEvent(one)) === canonical(rawEvent(other));
}

/** JSON with sorted keys: equal for equal data, however it was put together. */
export function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  const data = value as Readonly<Record<string, unknown>>;
  const fields = Object.keys(data)
    .filter((key) => data[key] !== undefined)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(data[key])}`);
  return `{${fields.join(',')}}`;
}
