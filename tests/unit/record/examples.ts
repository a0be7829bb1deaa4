/** Events to test with, made by hand or drawn at random, and a model of memory that notices any change of order. */
import fc from 'fast-check';
import type { DrillMark } from '../../../src/drill/types.ts';
import type { AssessedAnswer } from '../../../src/record/answer-event.ts';
import { eventIds, type EventIds } from '../../../src/record/event-id.ts';
import { knownCardKinds } from '../../../src/record/schema.ts';
import type { AnswerEvent, EventId, KeptEvent, PassEvent, UndoEvent } from '../../../src/record/types.ts';
import type { Scheduler } from '../../../src/memory/types.ts';
import { seeded } from '../../../src/rules/random.ts';

/** 1 September 2026, 18:00 UTC. */
export const eveningMs = Date.UTC(2026, 8, 1, 18);
export const dayMs = 86_400_000;

export function randomBytes(seed: number): (count: number) => Uint8Array {
  const random = seeded(seed);
  return (count) => Uint8Array.from({ length: count }, () => Math.floor(random() * 256));
}

export const testIds = (seed = 1): EventIds => eventIds(randomBytes(seed));

/** Every step depends on all before it: swap two answers, or lose one, and the numbers differ. */
export const testScheduler: Scheduler = {
  next(memory, rating, atMs, critical) {
    const lastMs = Math.max(atMs, memory?.lastMs ?? 0);
    const gapDays = memory ? (lastMs - memory.lastMs) / dayMs : 0;
    const stability = (memory?.stability ?? 1) * (rating === 1 ? 0.4 : 1 + rating / 3) + gapDays / 7;
    const difficulty = Math.min(10, Math.max(1, (memory?.difficulty ?? 5) * 0.9 + (4 - rating) / 3));
    return {
      stability,
      difficulty,
      lastMs,
      dueMs: lastMs + stability * dayMs * (critical ? 0.5 : 1),
      answers: (memory?.answers ?? 0) + 1,
      lapses: (memory?.lapses ?? 0) + (rating === 1 ? 1 : 0),
    };
  },
  retrievability: (memory, atMs) =>
    memory ? Math.exp(-(atMs - memory.lastMs) / dayMs / memory.stability) : 0,
};

/** An answer to the altitude alongside the spot, unless told otherwise. */
export function answer(id: EventId, change: Partial<AnswerEvent> = {}): AnswerEvent {
  return {
    kind: 'answer',
    id,
    atMs: eveningMs,
    deck: 'marram-recovery',
    deckVersion: '1.0.0',
    card: 'value/alongside/altitude',
    cardKind: 'value',
    critical: false,
    mode: 'recall',
    seed: 77,
    performance: 'desired',
    timeliness: 'prompt',
    rating: 3,
    elapsedMs: 2100,
    value: 145,
    signedError: 5,
    headline: '5 ft high',
    expected: '140 ft',
    ...change,
  };
}

export const undo = (id: EventId, of: EventId, atMs = eveningMs): UndoEvent => ({
  kind: 'undo',
  id,
  atMs,
  of,
});

/** A run of answers a minute apart, over a few cards, with every sort of result. */
export function evening(count: number, { seed = 1, startMs = eveningMs, cards = 7 } = {}): AnswerEvent[] {
  const ids = testIds(seed);
  const random = seeded(seed);
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
  return Array.from({ length: count }, (_, i) => {
    const atMs = startMs + i * 60_000;
    const performance = pick(['desired', 'desired', 'adequate', 'outside'] as const);
    const rating = performance === 'desired' ? pick([3, 4] as const) : performance === 'adequate' ? 2 : 1;
    const gate = Math.floor(random() * cards);
    return answer(ids.next(atMs), {
      atMs,
      card: `value/gate-${gate}/altitude`,
      critical: gate % 3 === 0,
      seed: Math.floor(random() * 2 ** 32),
      performance,
      rating,
      elapsedMs: Math.round(random() * 6000),
      headline: `${Math.floor(random() * 60)} ft high`,
      expected: `${gate * 20} ft`,
    });
  });
}

const idOf = fc
  .tuple(fc.integer({ min: eveningMs, max: eveningMs + 1000 * dayMs }), fc.integer())
  .map(([ms, seed]) => testIds(seed).next(ms));
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0);

const anyDrillMark: fc.Arbitrary<DrillMark> = fc.record(
  {
    phase: fc.constantFrom('closing', 'vertical'),
    closeness: fc.constantFrom('wide' as const, 'near' as const, 'edge' as const),
    edge: fc.constantFrom('sink', 'altitude'),
    side: fc.constantFrom('below' as const, 'above' as const),
    twin: fc.boolean(),
  },
  { requiredKeys: ['phase', 'closeness'] },
);

const anyDay = fc.dictionary(fc.constantFrom('wind-speed', 'ship-speed'), number, {
  minKeys: 1,
  noNullPrototype: true,
});

export const anyAnswer: fc.Arbitrary<AnswerEvent> = fc.record(
  {
    kind: fc.constant('answer' as const),
    id: idOf,
    atMs: fc.integer({ min: eveningMs, max: eveningMs + 1000 * dayMs }),
    deck: fc.constantFrom('marram-recovery', 'light-aircraft-circuit'),
    deckVersion: fc.constantFrom('1.0.0', '1.1.0'),
    card: fc.constantFrom('value/alongside/altitude', 'rule/height/high', 'note/ground-effect'),
    cardKind: fc.constantFrom(...knownCardKinds),
    critical: fc.boolean(),
    mode: fc.constantFrom('recall' as const, 'drill' as const),
    seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
    performance: fc.constantFrom('desired' as const, 'adequate' as const, 'outside' as const),
    timeliness: fc.constantFrom('prompt' as const, 'late' as const, 'timed-out' as const),
    rating: fc.constantFrom(1 as const, 2 as const, 3 as const, 4 as const),
    elapsedMs: fc.oneof(fc.nat(100_000), fc.double({ min: 0.001, max: 1e6, noNaN: true })),
    value: number,
    signedError: number,
    drill: anyDrillMark,
    day: anyDay,
    headline: fc.string({ unit: 'binary', maxLength: 60 }),
    expected: fc.string({ unit: 'grapheme', maxLength: 60 }),
    called: fc.string({ unit: 'grapheme', maxLength: 60 }),
    due: fc.string({ unit: 'grapheme', maxLength: 60 }),
  },
  {
    requiredKeys: [
      ...([
        'kind',
        'id',
        'atMs',
        'deck',
        'deckVersion',
        'card',
        'cardKind',
        'critical',
        'mode',
        'seed',
      ] as const),
      ...(['performance', 'timeliness', 'rating', 'elapsedMs', 'headline', 'expected'] as const),
    ],
  },
);

const anyPerformance = fc.constantFrom('desired' as const, 'adequate' as const, 'outside' as const);

/** Of the same cards that the answers are of, so that they meet. */
export const anyPass: fc.Arbitrary<PassEvent> = fc.record({
  kind: fc.constant('pass' as const),
  id: idOf,
  atMs: fc.integer({ min: eveningMs, max: eveningMs + 1000 * dayMs }),
  deck: fc.constantFrom('marram-recovery', 'light-aircraft-circuit'),
  deckVersion: fc.constantFrom('1.0.0', '1.1.0'),
  fromGate: fc.constantFrom('abeam', 'alongside'),
  seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  roughness: fc.constantFrom(0, 1, 1.8),
  pace: fc.constantFrom('compressed' as const, 'real' as const, 'steps' as const),
  end: fc.constantFrom('complete' as const, 'go-around' as const, 'missed-go-around' as const),
  performance: anyPerformance,
  gates: fc.array(
    fc.record({ gate: fc.constantFrom('alongside', 'touchdown'), performance: anyPerformance }),
    {
      maxLength: 3,
    },
  ),
  rules: fc.uniqueArray(
    fc.record({
      card: fc.constantFrom('rule/height/high', 'rule/height/low', 'note/ground-effect'),
      asked: fc.integer({ min: 1, max: 9 }),
      missed: fc.nat(3),
      critical: fc.boolean(),
      expected: fc.string({ unit: 'grapheme', maxLength: 30 }),
    }),
    { selector: ({ card }) => card, maxLength: 3 },
  ),
  gatesMissed: fc.array(
    fc.record({
      gate: fc.constantFrom('alongside', 'touchdown'),
      quantities: fc.subarray(['altitude', 'sink']),
    }),
    { maxLength: 2 },
  ),
  headline: fc.string({ unit: 'grapheme', maxLength: 60 }),
});

/** A record: answers, passes, and undos of some of them, of each other and of events that aren't there; in order of id. */
export const anyRecord: fc.Arbitrary<KeptEvent[]> = fc
  .record({
    answers: fc.array(anyAnswer, { maxLength: 25 }),
    passes: fc.array(anyPass, { maxLength: 6 }),
    undos: fc.array(fc.record({ id: idOf, pick: fc.nat(), stray: idOf }), { maxLength: 15 }),
  })
  .map(({ answers, passes, undos }) => {
    const ids = [...answers, ...passes, ...undos].map(({ id }) => id);
    const taken = new Set<EventId>();
    const events: KeptEvent[] = [...answers, ...passes];
    for (const { id, pick, stray } of undos) events.push(undo(id, ids[pick % (ids.length + 1)] ?? stray));
    return events.filter(({ id }) => !taken.has(id) && taken.add(id));
  });

/** A record, the same in another order with some events twice, and that cut into pieces. */
export const shuffledInPieces = (record: readonly KeptEvent[]): fc.Arbitrary<KeptEvent[][]> =>
  fc
    .tuple(
      fc.shuffledSubarray([...record], { minLength: record.length }),
      fc.subarray([...record]),
      fc.array(fc.nat(Math.max(1, record.length)), { maxLength: 6 }),
    )
    .map(([events, twice, cuts]) => {
      const all = [...events, ...twice];
      const edges = [0, ...cuts.sort((one, other) => one - other), all.length];
      return edges.slice(1).map((edge, i) => all.slice(edges[i]!, edge));
    });

/** An answer of 160 ft, late, where 140 was right; unless told otherwise. */
export function assessed(
  change: Partial<AssessedAnswer> = {},
  card = 'value/alongside/altitude',
): AssessedAnswer {
  return {
    deck: { id: 'marram-recovery', version: '1.0.0' },
    prompt: {
      card: {
        id: card,
        kind: 'value',
        gate: 'alongside',
        group: 'alongside',
        label: 'Alongside the spot · altitude',
        critical: true,
        windowMs: 5000,
        expected: '140 ft',
      },
      seed: 77,
      place: 'Gate 7 of 9 · Alongside the spot',
      title: 'Altitude',
      detail: '',
      ask: {
        form: 'number',
        quantity: 'altitude',
        band: { target: 140, desired: [130, 150], adequate: [110, 170] },
        limit: null,
      },
    },
    assessment: {
      performance: 'adequate',
      timeliness: 'late',
      rating: 2,
      critical: true,
      headline: '20 ft high',
      expected: '140 ft',
      because: null,
      source: null,
      detail: { form: 'number', value: 160, signedError: 20, steps: 2, passedLimit: null },
    },
    mode: 'recall',
    elapsedMs: 2100,
    ...change,
  };
}
