/**
 * Sealed chunks: some hundred events as compact text. One line each, as a JSON array with its own
 * checksum before it, so that damage costs the lines it hits and nothing wrong is ever taken for right.
 * Cards and words that return are written once, and named by number.
 */
import { crc32 } from './checksum.ts';
import { idTimeMs, packId, unpackId } from './event-id.ts';
import type { RecordProblem } from './problem.ts';
import { answerKeys, parseEvent, rawEvent, undoKeys } from './schema.ts';
import type { AnswerEvent, KeptEvent, UndoEvent } from './types.ts';

const format = 'gatecall-chunk';
const version = 1;

const modes = ['recall', 'drill'] as const;
const performances = ['desired', 'adequate', 'outside'] as const;
const timelinesses = ['prompt', 'late', 'timed-out'] as const;
const ratings = [1, 2, 3, 4] as const;

/** What came later than the form of a line goes with further fields, so that older versions carry it. */
const laterKeys: ReadonlySet<string> = new Set(['drill', 'day', 'called', 'due']);
/** What an answer's line has a place for. */
const packedKeys: ReadonlySet<string> = new Set([...answerKeys].filter((key) => !laterKeys.has(key)));

/** Tags of lines: header, string, card, answer, undo, and whatever this version doesn't know. */
type Tag = 'h' | 's' | 'c' | 'a' | 'u' | 'x';

/** The events as a chunk's text. */
export function encodeChunk(events: readonly KeptEvent[]): string {
  const writer = new ChunkWriter();
  writer.line('h', format, version, events.length);
  for (const event of events) {
    if (event.kind === 'answer') writer.answer(event);
    else if (event.kind === 'undo') writer.undo(event);
    // A pass too: an older version carries it as what it doesn't know.
    else writer.line('x', rawEvent(event));
  }
  return writer.lines.join('\n');
}

export interface DecodedChunk {
  readonly events: readonly KeptEvent[];
  readonly problems: readonly RecordProblem[];
}

/** What can be read of a chunk, and in words what can't. Never throws, whatever it is given. */
export function decodeChunk(chunk: unknown): DecodedChunk {
  if (typeof chunk !== 'string') return { events: [], problems: [damaged(0, null)] };
  const reader = new ChunkReader();
  for (const line of chunk.split('\n')) reader.line(line);
  if (reader.newer) return { events: [], problems: [newerChunk] };
  const { events, promised } = reader;
  return { events, problems: promised === events.length ? [] : [damaged(events.length, promised)] };
}

/** 24 bits of the line's checksum in 5 characters: of lines damaged at random, one in 16 million passes. */
function checkOf(json: string): string {
  return (crc32(json) & 0xffffff).toString(36).padStart(5, '0');
}

class ChunkWriter {
  readonly lines: string[] = [];
  readonly #numbers = new Map<string, number>();

  line(tag: Tag, ...fields: readonly unknown[]): void {
    const json = JSON.stringify([tag, ...fields]);
    this.lines.push(checkOf(json) + json);
  }

  answer(event: AnswerEvent): void {
    const { deck, deckVersion, card, cardKind, critical } = event;
    const words = [deck, deckVersion, cardKind].map((word) => this.#numberOf('s', word));
    const cardNumber = this.#numberOf('c', ...words, card, critical ? 1 : 0);
    const fields: unknown[] = [
      packId(event.id),
      event.atMs - idTimeMs(event.id),
      cardNumber,
      marksOf(event),
      event.seed,
      event.elapsedMs,
      this.#numberOf('s', event.headline),
      this.#numberOf('s', event.expected),
      event.value ?? null,
      event.signedError ?? null,
      furtherFields(event, packedKeys),
    ];
    while (fields[fields.length - 1] === null) fields.pop();
    this.line('a', ...fields);
  }

  undo(event: UndoEvent): void {
    const further = furtherFields(event, undoKeys);
    const fields = [packId(event.id), event.atMs - idTimeMs(event.id), packId(event.of)];
    this.line('u', ...fields, ...(further === null ? [] : [further]));
  }

  /** The number of a word or card; the first time, a line says which it stands for. */
  #numberOf(tag: Tag, ...fields: readonly (string | number)[]): number {
    const key = JSON.stringify([tag, ...fields]);
    const there = this.#numbers.get(key);
    if (there !== undefined) return there;
    const number = this.#numbers.size;
    this.#numbers.set(key, number);
    this.line(tag, number, ...fields);
    return number;
  }
}

class ChunkReader {
  readonly events: KeptEvent[] = [];
  /** How many events the header speaks of; null when it can't be read. */
  promised: number | null = null;
  newer = false;
  readonly #fields = new Map<unknown, readonly unknown[]>();

  line(line: string): void {
    const json = line.slice(5);
    if (line.slice(0, 5) !== checkOf(json)) return;
    const [tag, ...fields] = arrayIn(json);
    if (tag === 'h') this.#header(fields);
    else if (tag === 's' || tag === 'c') this.#fields.set(fields[0], fields.slice(1));
    else if (tag === 'a') this.#take(this.#answer(fields));
    else if (tag === 'u') this.#take(undoIn(fields));
    else if (tag === 'x') this.#take(fields[0]);
  }

  #header([name, ofVersion, count]: readonly unknown[]): void {
    this.newer = name === format && typeof ofVersion === 'number' && ofVersion > version;
    this.promised = typeof count === 'number' ? count : null;
  }

  #take(raw: unknown): void {
    const parsed = parseEvent(raw);
    if (parsed.ok) this.events.push(parsed.event);
  }

  #answer(fields: readonly unknown[]): unknown {
    const [packed, offsetMs, cardNumber, marks, seed, elapsedMs, headline, expected] = fields;
    const [value, signedError, further] = fields.slice(8);
    const [deck, deckVersion, cardKind, card, critical] = this.#fields.get(cardNumber) ?? [];
    const id = unpackId(String(packed));
    return {
      ...objectIn(further),
      kind: 'answer',
      id,
      atMs: idTimeMs(id) + Number(offsetMs),
      deck: this.#word(deck),
      deckVersion: this.#word(deckVersion),
      card,
      cardKind: this.#word(cardKind),
      critical: critical === 1,
      ...marksIn(Number(marks)),
      seed,
      elapsedMs,
      ...(typeof value === 'number' ? { value } : {}),
      ...(typeof signedError === 'number' ? { signedError } : {}),
      headline: this.#word(headline),
      expected: this.#word(expected),
    };
  }

  #word(number: unknown): unknown {
    return this.#fields.get(number)?.[0];
  }
}

function undoIn([packed, offsetMs, of, further]: readonly unknown[]): unknown {
  const id = unpackId(String(packed));
  const atMs = idTimeMs(id) + Number(offsetMs);
  return { ...objectIn(further), kind: 'undo', id, atMs, of: unpackId(String(of)) };
}

/** Four small choices in one number. */
function marksOf({ mode, performance, timeliness, rating }: AnswerEvent): number {
  const soFar = modes.indexOf(mode) * 3 + performances.indexOf(performance);
  return (soFar * 3 + timelinesses.indexOf(timeliness)) * 4 + ratings.indexOf(rating);
}

function marksIn(marks: number): object {
  return {
    mode: modes[Math.floor(marks / 36)],
    performance: performances[Math.floor(marks / 12) % 3],
    timeliness: timelinesses[Math.floor(marks / 4) % 3],
    rating: ratings[marks % 4],
  };
}

/** Fields that this version doesn't know, to be carried along; null when there are none. */
function furtherFields(event: AnswerEvent | UndoEvent, known: ReadonlySet<string>): object | null {
  const further = Object.entries(rawEvent(event)).filter(
    ([key, value]) => !known.has(key) && value !== undefined,
  );
  return further.length === 0 ? null : Object.fromEntries(further);
}

function arrayIn(json: string): readonly unknown[] {
  try {
    const value: unknown = JSON.parse(json);
    return Array.isArray(value) ? value : [];
  } catch {
    return [];
  }
}

const objectIn = (value: unknown): object => (typeof value === 'object' && value !== null ? value : {});

function damaged(readable: number, promised: number | null): RecordProblem {
  const readableOf = promised === null ? `${readable}` : `${readable} of ${promised}`;
  return {
    code: 'damaged-chunk',
    message:
      `A part of the training record is damaged. ${readableOf} of its entries can be read, and count; ` +
      'the rest is left as it is. Bring in a saved record to get back what it holds.',
  };
}

const newerChunk: RecordProblem = {
  code: 'newer-chunk',
  message:
    'A part of the training record was written by a newer version of Gatecall. It is left as it is, ' +
    'and counts once this page is reloaded with the newer version.',
};
