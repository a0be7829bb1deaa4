/**
 * A fold's state as text: a cache, from which start-up goes on instead of folding all events anew.
 * It is believed only if it was made by the same model from exactly the events it is to stand for;
 * else it is as if it weren't there.
 */
import type { DrillMark } from '../drill/types.ts';
import type { Rating } from '../grading/types.ts';
import type { CardMemory, Scheduler } from '../memory/types.ts';
import { crcWord } from './checksum.ts';
import { idTimeMs, packId, unpackId } from './event-id.ts';
import { Fold, type FoldState, type Logged, type LoggedCall } from './fold.ts';
import { knownCardKinds } from './schema.ts';
import type { Call, DaySet, EventId, PassEvent } from './types.ts';

/** Counts up when the fold itself, or this form, changes. */
const version = 5;
const idLength = 22;

const performances = ['desired', 'adequate', 'outside'] as const;
const timelinesses = ['prompt', 'late', 'timed-out'] as const;

/** A card's log in columns, one entry per call, and the few entries that aren't calls. Ids stand one after the other; words by their number in `words`. */
interface PackedCard {
  readonly key: string;
  readonly memory: CardMemory | null;
  readonly ids: string;
  readonly offsets: readonly number[];
  readonly marks: readonly number[];
  readonly elapsed: readonly number[];
  readonly values: readonly (number | null)[];
  readonly errors: readonly (number | null)[];
  /** Of the few that have one: which call, and its mark. */
  readonly drills: readonly (readonly [call: number, mark: DrillMark])[];
  /** Of the few made for another day: which call, and its day. */
  readonly days: readonly (readonly [call: number, day: DaySet])[];
  /** Which calls were made in a pass. */
  readonly passes: readonly number[];
  /** Where in the log the card fell due by a pass, and by which. */
  readonly dues: readonly (readonly [at: number, event: EventId, atMs: number])[];
  readonly expected: readonly number[];
  /** Null of a call without one. */
  readonly headlines: readonly (number | null)[];
  /** Of those that have either: which call, what was called and what was due. */
  readonly called: readonly (readonly [call: number, called: number | null, due: number | null])[];
  readonly words: readonly string[];
}

interface PackedFold {
  readonly version: number;
  readonly model: string;
  readonly cards: readonly PackedCard[];
  readonly passes: readonly PassEvent[];
  readonly undos: readonly string[];
}

export function writeSnapshot(fold: Fold, scheduler: Scheduler): string {
  const { cards, passes, undos } = fold.state();
  const packed: PackedFold = {
    version,
    model: modelMark(scheduler),
    cards: cards.map(packCard),
    passes,
    undos: undos.map(([id, of]) => packId(id) + packId(of)),
  };
  const json = JSON.stringify(packed);
  return crcWord(json) + json;
}

/** The fold of a snapshot; null when it is damaged, of another version, or made by another model. */
export function readSnapshot(text: unknown, scheduler: Scheduler): Fold | null {
  if (typeof text !== 'string') return null;
  const json = text.slice(8);
  if (crcWord(json) !== text.slice(0, 8)) return null;
  // The checksum says that this program wrote it.
  const packed = JSON.parse(json) as PackedFold;
  if (packed.version !== version || packed.model !== modelMark(scheduler)) return null;
  const state: FoldState = {
    cards: packed.cards.map((card) => ({ key: card.key, memory: card.memory, log: logIn(card) })),
    passes: packed.passes,
    undos: packed.undos.map((pair) => [unpackId(pair.slice(0, idLength)), unpackId(pair.slice(idLength))]),
  };
  return Fold.restore(state, scheduler);
}

/**
 * Tells models apart by what they do: the memories after each rating at first, each one days later, and
 * each one on the same day. Also holds the card kinds, since a version that knows more of them counts
 * more events.
 */
function modelMark(scheduler: Scheduler): string {
  const ratings: readonly Rating[] = [1, 2, 3, 4];
  const startMs = Date.UTC(2026, 0, 1);
  const laterMs = startMs + 9 * 86_400_000;
  const states: CardMemory[] = [];
  for (const one of ratings)
    for (const two of ratings) {
      const first = scheduler.next(null, one, startMs, false);
      const second = scheduler.next(first, two, laterMs, true);
      states.push(first, second, scheduler.next(second, one, laterMs + 60_000, false));
    }
  return crcWord(JSON.stringify([states, knownCardKinds]));
}

function packCard({ key, memory, log }: FoldState['cards'][number]): PackedCard {
  const numbers = new Map<string, number>();
  const numberOf = (word: string): number => {
    const number = numbers.get(word) ?? numbers.size;
    numbers.set(word, number);
    return number;
  };
  const numberIn = (word: string | undefined): number | null => (word === undefined ? null : numberOf(word));
  const logged = log.flatMap((entry) => ('call' in entry ? [entry] : []));
  const calls = logged.map(({ call }) => call);
  return {
    key,
    memory,
    ids: calls.map(({ event }) => packId(event)).join(''),
    offsets: calls.map(({ event, atMs }) => atMs - idTimeMs(event)),
    marks: logged.map(marksOf),
    elapsed: calls.map(({ elapsedMs }) => elapsedMs),
    values: calls.map(({ value }) => value ?? null),
    errors: calls.map(({ signedError }) => signedError ?? null),
    drills: calls.flatMap(({ drill }, i) => (drill ? [[i, drill] as const] : [])),
    days: calls.flatMap(({ day }, i) => (day ? [[i, day] as const] : [])),
    passes: calls.flatMap(({ pass }, i) => (pass ? [i] : [])),
    dues: log.flatMap((entry, i) => ('due' in entry ? [[i, entry.due.event, entry.due.atMs] as const] : [])),
    expected: calls.map(({ expected }) => numberOf(expected)),
    headlines: calls.map(({ headline }) => numberIn(headline)),
    called: calls.flatMap(({ called, due }, i) =>
      called === undefined && due === undefined ? [] : [[i, numberIn(called), numberIn(due)] as const],
    ),
    words: [...numbers.keys()],
  };
}

function logIn(card: PackedCard): Logged[] {
  const drills = new Map(card.drills);
  const days = new Map(card.days);
  const called = new Map(card.called.map(([call, ...said]) => [call, said]));
  const wordIn = <K extends string>(key: K, number: number | null | undefined): { [key in K]?: string } =>
    number == null ? {} : ({ [key]: card.words[number]! } as { [key in K]?: string });
  const passes = new Set(card.passes);
  const log: Logged[] = card.marks.map((marks, i): LoggedCall => {
    const drill = drills.get(i);
    const day = days.get(i);
    const event = unpackId(card.ids.slice(i * idLength, (i + 1) * idLength));
    const value = card.values[i] ?? null;
    const signedError = card.errors[i] ?? null;
    const call: Call = {
      event,
      atMs: idTimeMs(event) + card.offsets[i]!,
      performance: performances[Math.floor(marks / 3) % 3]!,
      timeliness: timelinesses[marks % 3]!,
      elapsedMs: card.elapsed[i]!,
      ...(value === null ? {} : { value }),
      ...(signedError === null ? {} : { signedError }),
      ...(drill ? { drill } : {}),
      ...(day ? { day } : {}),
      ...(passes.has(i) ? { pass: true } : {}),
      ...wordIn('headline', card.headlines[i]),
      expected: card.words[card.expected[i]!]!,
      ...wordIn('called', called.get(i)?.[0]),
      ...wordIn('due', called.get(i)?.[1]),
    };
    return { call, rating: ((Math.floor(marks / 9) % 4) + 1) as Rating, critical: marks >= 36 };
  });
  for (const [at, event, atMs] of card.dues) log.splice(at, 0, { due: { event, atMs } });
  return log;
}

function marksOf({ call, rating, critical }: LoggedCall): number {
  const graded = performances.indexOf(call.performance) * 3 + timelinesses.indexOf(call.timeliness);
  return (critical ? 36 : 0) + (rating - 1) * 9 + graded;
}
