/**
 * What lies where in the browser's database: one entry for each loose event (`e:<id>`), so that two tabs
 * never write over each other; chunks of sealed ones (`c:<first>..<last>…`); a snapshot (`s`); decks
 * (`d:<id>`) and settings (`p:<name>`).
 */
import { crcWord } from '../checksum.ts';
import { decodeChunk, encodeChunk } from '../codec.ts';
import { inOrder, sameEvent } from '../merge.ts';
import type { RecordProblem } from '../problem.ts';
import { parseEvent } from '../schema.ts';
import type { KeptEvent } from '../types.ts';
import type { SealMark } from './store.ts';

export const prefixes = { loose: 'e:', chunk: 'c:', deck: 'd:', setting: 'p:' } as const;
export const snapshotKey = 's';

/** Every key that starts with the prefix. `;` is the character after `:`. */
export function under(kind: keyof typeof prefixes): IDBKeyRange {
  const prefix = prefixes[kind];
  return IDBKeyRange.bound(prefix, prefix.replace(':', ';'), false, true);
}

/** The names of chunks say what they hold, so together they name the sealed events. */
export const markOf = (chunkKeys: readonly IDBValidKey[]): SealMark => chunkKeys.join('\n');

/** Loose events that can be read, in order of id, and the keys they lie under. */
export function readLoose(raws: readonly unknown[], keys: readonly IDBValidKey[] = []) {
  const keyOf = new Map<KeptEvent, IDBValidKey>();
  const problems: RecordProblem[] = [];
  raws.forEach((raw, i) => {
    const parsed = parseEvent(raw);
    if (parsed.ok) keyOf.set(parsed.event, keys[i] ?? '');
    else problems.push(unreadableEvent(parsed.why));
  });
  return { events: inOrder([...keyOf.keys()]), keyOf, problems };
}

export interface Chunk {
  readonly events: readonly KeptEvent[];
  readonly text: string;
  /** Says what it holds, so that two chunks have one key only when they are the same. */
  readonly key: string;
}

export function chunkOf(events: readonly KeptEvent[]): Chunk {
  const text = encodeChunk(events);
  const [first, last] = [events[0]!.id, events[events.length - 1]!.id];
  return { events, text, key: `${prefixes.chunk}${first}..${last}:${events.length}:${crcWord(text)}` };
}

/** Loose events are removed only when what takes their place gives them back. */
export function readsBack({ text, events }: Chunk): boolean {
  const read = decodeChunk(text).events;
  return read.length === events.length && read.every((event, i) => sameEvent(event, events[i]!));
}

export function snapshotFor(mark: SealMark, kept: unknown): string | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { mark: madeAt, text } = kept as { readonly mark?: unknown; readonly text?: unknown };
  return madeAt === mark && typeof text === 'string' ? text : null;
}

const unreadableEvent = (why: string): RecordProblem => ({
  code: 'unreadable-event',
  message: `One entry of the training record can’t be read and doesn’t count: ${why}. It is left as it is.`,
});

export const twoContents = (count: number): RecordProblem => ({
  code: 'same-id',
  message:
    `The training record holds ${count === 1 ? 'an entry' : `${count} entries`} in two versions, which a ` +
    'damaged or altered saved record can bring in. One version counts, the same on every device; the other is left as it is.',
});
