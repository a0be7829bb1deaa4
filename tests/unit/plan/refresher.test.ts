import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { pickRefresher, toReadOnceMore } from '../../../src/plan/refresher.ts';
import type { PlanCard } from '../../../src/plan/types.ts';
import { eveningMs, remembered } from '../memory/examples.ts';
import { randomTask, scheduler } from './instances.ts';

const morningMs = eveningMs + DAY_MS / 2;
const pick = (cards: readonly PlanCard[], minutes: number) =>
  pickRefresher(cards, minutes, eveningMs, morningMs, scheduler);
const cardsOf = (count: number, seed: number) => randomTask(count, 1, 1, seed).cards;

/** All subsets. */
function mostGain(items: readonly { gain: number; seconds: number }[], seconds: number): number {
  let most = 0;
  for (let subset = 0; subset < 1 << items.length; subset++) {
    const chosen = items.filter((_, i) => subset & (1 << i));
    if (chosen.reduce((sum, item) => sum + item.seconds, 0) > seconds) continue;
    most = Math.max(
      most,
      chosen.reduce((sum, item) => sum + item.gain, 0),
    );
  }
  return most;
}

describe('a refresher', () => {
  it('gains within 1 % of what the best of all choices does', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const cards = cardsOf(11, seed);
      const all = pick(cards, 1000).items;
      const minutes = 0.3 + (seed % 5) * 0.3;
      const best = mostGain(all, minutes * 60);
      expect(pick(cards, minutes).gain).toBeGreaterThanOrEqual(0.99 * best);
      expect(pick(cards, minutes).gain).toBeLessThanOrEqual(best + 1e-9);
    }
  });

  it('keeps within its minutes and asks in the order given, each card once', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.integer({ min: 1, max: 1e6 }),
        (count, minutes, seed) => {
          const cards = cardsOf(count, seed);
          const { items, seconds } = pick(cards, minutes);
          expect(seconds).toBeLessThanOrEqual(minutes * 60 + 1e-9);
          const places = items.map(({ id }) => cards.findIndex((card) => card.id === id));
          expect(places).toEqual([...new Set(places)].sort((one, other) => one - other));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('prefers the critical one of two cards alike, and two quick ones to a slow one', () => {
    const memory = remembered({ stability: 0.5, lastMs: eveningMs - 3 * DAY_MS });
    const plain: PlanCard = { id: 'plain', memory, seconds: 7, weight: 1 };
    const critical: PlanCard = { ...plain, id: 'critical', weight: 3 };
    const slow: PlanCard = { ...plain, id: 'slow', seconds: 14 };
    const ids = (cards: readonly PlanCard[], minutes: number) =>
      pick(cards, minutes).items.map(({ id }) => id);
    expect(ids([plain, critical], 0.18)).toEqual(['critical']);
    expect(ids([slow, plain, { ...plain, id: 'another' }], 0.35)).toEqual(['plain', 'another']);
  });

  it('is empty without minutes or cards', () => {
    expect(pick(cardsOf(5, 1), 0).items).toEqual([]);
    expect(pick([], 10)).toEqual({ items: [], seconds: 0, gain: 0 });
  });
});

describe('what to read once more', () => {
  const known = (id: string, stability: number, weight = 1): PlanCard => ({
    id,
    memory: remembered({ stability }),
    seconds: 7,
    weight,
  });
  const cards = [known('sure', 400), known('doubtful', 0.3), known('missed', 400), known('critical', 0.3, 3)];

  it('is what was missed and what is in doubt, in the order of the procedure', () => {
    expect(toReadOnceMore(cards, new Set(['missed']), morningMs, scheduler)).toEqual([
      'doubtful',
      'missed',
      'critical',
    ]);
  });

  it('when there is too much of it, begins with what was missed, then with what counts most', () => {
    expect(toReadOnceMore(cards, new Set(['missed']), morningMs, scheduler, 2)).toEqual([
      'missed',
      'critical',
    ]);
  });
});
