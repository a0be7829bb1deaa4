import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CardKind } from '../../../src/cards/types.ts';
import { isDue } from '../../../src/memory/due.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { buildSession, type SessionInput } from '../../../src/memory/session.ts';
import type { CardMemory, SessionCard, SessionPlan } from '../../../src/memory/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { anyMemory, card, dayInGreenwich, eveningMs, kinds, remembered } from './examples.ts';

const scheduler = createScheduler();
const secondsOf: Partial<Record<CardKind, number>> = { checklist: 40, order: 30, note: 12 };

function build(cards: readonly SessionCard[], change: Partial<SessionInput> = {}): SessionPlan {
  return buildSession({
    cards,
    nowMs: eveningMs,
    minutes: 10,
    secondsFor: (kind) => secondsOf[kind] ?? 8,
    dayAt: dayInGreenwich,
    scheduler,
    ...change,
  });
}

const idsOf = (plan: SessionPlan): string[] => plan.items.map(({ id }) => id);
const due = (days = 9) => remembered({ lastMs: eveningMs - days * DAY_MS });

const anyCards = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...kinds),
      group: fc.constantFrom('gate a', 'gate b', 'list', 'phase'),
      critical: fc.boolean(),
      memory: fc.option(anyMemory),
    }),
    { maxLength: 60 },
  )
  .map((changes) => changes.map((change, order) => card(order, change)));
const anyMinutes = fc.double({ min: 0, max: 30, noNaN: true });

describe('rules drilled before their gate was met', () => {
  const drilled = (order: number, gate: string) => card(order, { kind: 'rule', gate, memory: due() });
  const value = (order: number, gate: string, memory: CardMemory | null) =>
    card(order, { kind: 'value', gate, memory });
  const planned = (cards: readonly SessionCard[]) => build(cards).items.map(({ id, why }) => `${id} ${why}`);

  it('wait until another card of the gate has been answered', () => {
    const rule = drilled(1, 'groove');
    expect(planned([value(0, 'groove', null), rule])).toEqual(['card 0 new']);
    const met = value(0, 'groove', remembered({ lastMs: eveningMs }));
    expect(planned([met, rule])).toEqual(['card 1 due']);
  });

  it('are not held up by a gate that has no other cards, nor rules without a gate', () => {
    expect(planned([drilled(0, 'groove')])).toEqual(['card 0 due']);
    expect(planned([card(0, { kind: 'rule', memory: due() })])).toEqual(['card 0 due']);
  });

  it('are not met by rules of the same gate alone', () => {
    expect(planned([value(0, 'groove', null), drilled(1, 'groove'), drilled(2, 'groove')])).toEqual([
      'card 0 new',
    ]);
  });
});

describe('the first session', () => {
  const cards = Array.from({ length: 30 }, (_, order) =>
    card(order, { group: order < 8 ? 'gate 1' : 'gate 2' }),
  );

  it('follows the procedure', () => {
    const plan = build([...cards].reverse());
    expect(idsOf(plan)).toEqual(cards.slice(0, plan.items.length).map(({ id }) => id));
    expect(plan.items.every(({ why }) => why === 'new')).toBe(true);
    expect(plan.items.length).toBeGreaterThan(10);
    expect(plan.leftOver).toEqual({ due: 0, fresh: 30 - plan.items.length });
  });

  it.each([0, -3, 0.01, Number.NaN])('has one card at least, in %d minutes', (minutes) => {
    expect(idsOf(build(cards, { minutes }))).toEqual(['card 0']);
  });

  it('has no more new cards than are wanted', () => {
    expect(idsOf(build(cards, { newPerSession: 4 }))).toEqual(['card 0', 'card 1', 'card 2', 'card 3']);
    expect(build(cards, { newPerSession: 4 }).leftOver.fresh).toBe(26);
  });
});

describe('a session', () => {
  it('fits the minutes, repeats included, unless a single card is longer', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        const plan = build(cards, { minutes });
        if (plan.items.length > 1) expect(plan.seconds).toBeLessThanOrEqual(minutes * 60);
        const kindOf = new Map(cards.map(({ id, kind }) => [id, kind]));
        const expected = plan.items.reduce(
          (sum, { id, showings }) => sum + showings * (secondsOf[kindOf.get(id)!] ?? 8),
          0,
        );
        expect(plan.seconds).toBeCloseTo(expected, 6);
      }),
    );
  });

  it('loses and doubles no card: each is in it, left over, or not due', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        const { items, leftOver } = build(cards, { minutes });
        expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
        const today = dayInGreenwich(eveningMs);
        const dueCards = cards.filter(({ memory }) => memory !== null && isDue(memory, today));
        const count = (why: 'due' | 'new') => items.filter((item) => item.why === why).length;
        expect(count('due') + leftOver.due).toBe(dueCards.length);
        expect(count('new') + leftOver.fresh).toBe(cards.filter(({ memory }) => memory === null).length);
      }),
    );
  });

  it('is never empty while something is due or new', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        const { items, leftOver, nextDueMs } = build(cards, { minutes });
        if (items.length === 0) expect(leftOver).toEqual({ due: 0, fresh: 0 });
        else expect(nextDueMs).toBeNull();
      }),
    );
  });

  it('has new cards only when no due one is left over', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        const { items, leftOver } = build(cards, { minutes });
        if (leftOver.due > 0) expect(items.some(({ why }) => why === 'new')).toBe(false);
      }),
    );
  });

  it('brings in new cards as the procedure goes, none passed over', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        const fresh = build(cards, { minutes }).items.filter(({ why }) => why === 'new');
        const procedure = cards.filter(({ memory }) => memory === null).map(({ id }) => id);
        expect(fresh.map(({ id }) => id)).toEqual(procedure.slice(0, fresh.length));
      }),
    );
  });

  it('does not depend on the order in which cards are given', () => {
    fc.assert(
      fc.property(anyCards, anyMinutes, (cards, minutes) => {
        expect(build([...cards].reverse(), { minutes })).toEqual(build(cards, { minutes }));
      }),
    );
  });
});

describe('when there is more due than time', () => {
  const chosen = (cards: readonly SessionCard[], minutes: number) => idsOf(build(cards, { minutes })).sort();

  it('critical cards come first', () => {
    const cards = Array.from({ length: 20 }, (_, order) =>
      card(order, { memory: due(), critical: order >= 15 }),
    );
    expect(chosen(cards, 0.9)).toEqual(['card 15', 'card 16', 'card 17', 'card 18', 'card 19']);
  });

  it('of two alike, the one that is more forgotten comes first', () => {
    expect(chosen([card(0, { memory: due(6) }), card(1, { memory: due(40) })], 0)).toEqual(['card 1']);
  });

  it('of two equally remembered, the one that takes less time comes first', () => {
    const cards = [card(0, { kind: 'checklist', memory: due() }), card(1, { memory: due() })];
    expect(chosen(cards, 0)).toEqual(['card 1']);
  });

  it('a card that is too long for the rest makes room for one that fits', () => {
    const cards = [
      card(0, { memory: due(60) }),
      card(1, { kind: 'checklist', critical: true, memory: due(60) }),
      card(2, { kind: 'checklist', critical: true, memory: due(60) }),
    ];
    expect(chosen(cards, 1.2)).toEqual(['card 0', 'card 1']);
    expect(build(cards, { minutes: 1.2 }).leftOver).toEqual({ due: 1, fresh: 0 });
  });

  it('a new card waits, though it would fit where a due one is too long', () => {
    const cards = [
      card(0, { memory: due() }),
      card(1, { kind: 'checklist', memory: due() }),
      card(2, { kind: 'value' }),
    ];
    expect(chosen(cards, 0.75)).toEqual(['card 0']);
    expect(chosen(cards.toSpliced(1, 1), 0.75)).toEqual(['card 0', 'card 2']);
  });

  it('of two that are the same in all of this, the earlier of the procedure comes first', () => {
    expect(chosen([card(1, { memory: due() }), card(0, { memory: due() })], 0)).toEqual(['card 0']);
  });
});

describe('with a source of chance', () => {
  it('rehearsals change places, and the cards stay the same', () => {
    const cards = Array.from({ length: 12 }, (_, order) =>
      card(order, { kind: kinds[order % 9]!, memory: due() }),
    );
    const orders = new Set<string>();
    for (let seed = 0; seed < 10; seed++) {
      const ids = idsOf(build(cards, { random: seeded(seed) }));
      expect([...ids].sort()).toEqual(idsOf(build(cards)).sort());
      orders.add(ids.join());
    }
    expect(orders.size).toBeGreaterThan(5);
  });
});

describe('when nothing is left to do', () => {
  it('the next time is told', () => {
    const plan = build([
      card(0, { memory: remembered() }),
      card(1, { memory: remembered({ dueMs: eveningMs + 2 * DAY_MS }) }),
    ]);
    expect(plan).toEqual({
      items: [],
      seconds: 0,
      leftOver: { due: 0, fresh: 0 },
      nextDueMs: Date.UTC(2026, 8, 3, 4),
    });
  });

  it('of no cards at all, there is no next time', () => {
    expect(build([]).nextDueMs).toBeNull();
  });
});
