import fc from 'fast-check';
import { FSRSAlgorithm } from 'ts-fsrs';
import { describe, expect, it } from 'vitest';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { forecast } from '../../../src/plan/forecast.ts';
import { anyMemory, card, eveningMs, remembered } from '../memory/examples.ts';

const scheduler = createScheduler();
const weights = { critical: 3, other: 1 };
const eventMs = eveningMs + 9 * DAY_MS;

describe('the forecast', () => {
  it('of a card is the forgetting curve of the library', () => {
    const library = new FSRSAlgorithm({});
    fc.assert(
      fc.property(anyMemory, (memory) => {
        const [only] = forecast([card(0, { memory })], eventMs, scheduler, weights).cards;
        const days = Math.max(0, eventMs - memory.lastMs) / DAY_MS;
        expect(only!.chance).toBe(library.forgetting_curve(days, memory.stability));
      }),
    );
  });

  it('of a card never answered is that it is not known', () => {
    expect(forecast([card(0)], eventMs, scheduler, weights).cards[0]!.chance).toBe(0);
  });

  it('brings together what belongs to a gate, and to a checklist', () => {
    const known = remembered({ stability: 9 });
    const cards = [
      card(0, { gate: 'abeam', memory: known, critical: true }),
      card(1, { gate: 'abeam' }),
      card(2, { gate: 'ninety', memory: known, group: 'checklist/landing' }),
      card(3, { gate: null, group: 'order' }),
    ];
    const { gates, checklists, pass } = forecast(cards, eventMs, scheduler, weights);
    expect([...gates.keys()]).toEqual(['abeam', 'ninety']);
    // 0.9 after as many days as the stability; the critical card counts three times.
    expect(gates.get('abeam')!.mean).toBeCloseTo((3 * 0.9) / 4, 6);
    expect(gates.get('abeam')!.allCritical).toBeCloseTo(0.9, 6);
    expect(gates.get('ninety')!.allCritical).toBe(1);
    expect([...checklists.keys()]).toEqual(['landing']);
    expect(checklists.get('landing')).toMatchObject({ cards: 1, critical: 0 });
    expect(pass.cards).toBe(4);
  });

  it('of a clean pass is the product over the critical cards', () => {
    const cards = [5, 9, 30].map((stability, i) =>
      card(i, { critical: true, memory: remembered({ stability }) }),
    );
    const { cards: each, pass } = forecast(
      [...cards, card(3, { memory: remembered({ stability: 1 }) })],
      eventMs,
      scheduler,
      weights,
    );
    expect(pass.critical).toBe(3);
    expect(pass.allCritical).toBeCloseTo(each[0]!.chance * each[1]!.chance * each[2]!.chance, 12);
  });

  it('rises with stability and falls with time', () => {
    const stability = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(stability, stability, (one, other) => {
        const chance = (days: number, atMs: number) =>
          forecast([card(0, { memory: remembered({ stability: days }) })], atMs, scheduler, weights).pass
            .mean;
        expect(chance(Math.max(one, other), eventMs)).toBeGreaterThanOrEqual(
          chance(Math.min(one, other), eventMs),
        );
        expect(chance(one, eventMs)).toBeGreaterThanOrEqual(chance(one, eventMs + DAY_MS));
      }),
    );
  });

  it('of no cards is empty, without a number that is none', () => {
    const { pass, gates } = forecast([], eventMs, scheduler, weights);
    expect(pass).toEqual({ cards: 0, mean: 0, critical: 0, allCritical: 1 });
    expect(gates.size).toBe(0);
  });
});
