import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foretell, logLoss, summedLoss } from '../../../src/fit/log-loss.ts';
import { pack } from '../../../src/fit/packed.ts';
import { addPrior, bounds, coordinatesOf, gradientAt, parametersAt } from '../../../src/fit/prior.ts';
import type { CardAnswers } from '../../../src/fit/types.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler, parameterBounds, usualParameters } from '../../../src/memory/scheduler.ts';
import type { CardMemory } from '../../../src/memory/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import { quickLearner, recordOf, someParameters } from './learner.ts';

/** The chances that the scheduler itself, and so ts-fsrs, gave to each answer that it could foretell. */
function bySchedulerOf(cards: readonly CardAnswers[], parameters: readonly number[]): number[] {
  const scheduler = createScheduler({ parameters });
  return cards.flatMap((answers) => {
    let memory: CardMemory | null = null;
    return answers.flatMap(({ atMs, rating }) => {
      const gapDays = memory === null ? 0 : Math.round((atMs - memory.lastMs) / DAY_MS);
      const chance = memory && scheduler.retrievability(memory, memory.lastMs + gapDays * DAY_MS);
      memory = scheduler.next(memory, rating, atMs, false);
      return gapDays > 0 ? [chance!] : [];
    });
  });
}

describe('the model of a fit', () => {
  it('gives each answer the chance that the scheduler gives it, under any parameters', () => {
    const random = seeded(1);
    for (let learner = 0; learner < 10; learner++) {
      const parameters = learner === 0 ? usualParameters : someParameters(random);
      const cards = recordOf(parameters, 400, learner);
      const foretold = foretell(pack(cards), parameters);
      const theirs = bySchedulerOf(cards, parameters);
      expect(foretold).toHaveLength(theirs.length);
      foretold.forEach(({ predicted }, i) => expect(Math.abs(predicted - theirs[i]!)).toBeLessThan(2e-6));
    }
  });

  it('foretells neither a first answer nor one on the same day', () => {
    const noon = Date.UTC(2026, 4, 1, 12);
    const card: CardAnswers = [
      { atMs: noon, rating: 1 },
      { atMs: noon + 60_000, rating: 3 },
      { atMs: noon + 2 * DAY_MS, rating: 3 },
    ];
    const foretold = foretell(pack([card, [{ atMs: noon, rating: 3 }], []]), usualParameters);
    expect(foretold.map(({ card: place, answer }) => [place, answer])).toEqual([[0, 2]]);
  });

  it('lets no time pass when a clock runs backwards', () => {
    const noon = Date.UTC(2026, 4, 1, 12);
    const { gapDays, atMs } = pack([
      [
        { atMs: noon, rating: 3 },
        { atMs: noon - 9 * DAY_MS, rating: 3 },
        { atMs: noon, rating: 3 },
      ],
    ]);
    expect([...gapDays]).toEqual([0, 0, 9]);
    expect([...atMs]).toEqual([noon, noon, noon]);
  });

  it('has no log loss when there is nothing to foretell', () => {
    expect(logLoss([])).toBeNull();
  });
});

/** Mean of the slopes to both sides, by a small step. */
function byDifference(at: (x: number) => number, x: number, step: number): number {
  return (at(x + step) - at(x - step)) / (2 * step);
}

describe('the gradient of log loss', () => {
  it('is what a small step along each parameter changes', () => {
    const random = seeded(2);
    for (let learner = 0; learner < 6; learner++) {
      const parameters = learner === 0 ? quickLearner : someParameters(random);
      const loss = summedLoss(pack(recordOf(quickLearner, 600, 20 + learner)));
      const gradient = new Float64Array(21);
      const unused = new Float64Array(21);
      loss(Float64Array.from(parameters), gradient);
      parameters.forEach((value, i) => {
        const along = (x: number) => loss(Float64Array.from(parameters.with(i, x)), unused);
        const slope = byDifference(along, value, 1e-6);
        expect(Math.abs(gradient[i]! - slope), `by w${i}`).toBeLessThan(1e-4 * Math.max(1, Math.abs(slope)));
      });
    }
  });

  it('is so along the coordinates of a fit too, with what was believed before', () => {
    const loss = summedLoss(pack(recordOf(quickLearner, 600, 3)));
    const parameters = new Float64Array(21);
    const unused = new Float64Array(21);
    const at = (place: Float64Array, gradient: Float64Array): number => {
      parametersAt(place, parameters);
      const sum = loss(parameters, gradient);
      gradientAt(parameters, gradient);
      return sum + addPrior(place, gradient);
    };
    const place = coordinatesOf(quickLearner);
    const gradient = new Float64Array(21);
    at(place, gradient);
    place.forEach((value, i) => {
      const slope = byDifference((x) => at(place.with(i, x), unused), value, 1e-6);
      expect(Math.abs(gradient[i]! - slope), `by ${i}`).toBeLessThan(1e-4 * Math.max(1, Math.abs(slope)));
    });
  });
});

describe('the coordinates of a fit', () => {
  it('are 0 for the usual parameters, and lead back to any others', () => {
    expect([...coordinatesOf(usualParameters)].every((value) => Math.abs(value) < 1e-12)).toBe(true);
    const back = new Float64Array(21);
    parametersAt(coordinatesOf(quickLearner), back);
    quickLearner.forEach((value, i) => expect(back[i]).toBeCloseTo(value, 12));
  });

  it('give within their bounds only parameters that the memory model takes, a better first answer never worth less', () => {
    const place = fc.tuple(
      ...bounds.map(([min, max]) => fc.double({ min, max, noNaN: true })),
    ) as fc.Arbitrary<number[]>;
    fc.assert(
      fc.property(place, (values) => {
        const parameters = new Float64Array(21);
        parametersAt(Float64Array.from(values), parameters);
        parameters.forEach((value, i) => {
          const [least, greatest] = parameterBounds[i]!;
          expect(value).toBeGreaterThanOrEqual(least - 1e-9);
          expect(value).toBeLessThanOrEqual(greatest + 1e-9);
        });
        for (const i of [1, 2, 3])
          expect(parameters[i]!).toBeGreaterThanOrEqual(parameters[i - 1]! * (1 - 1e-12));
      }),
    );
  });
});
