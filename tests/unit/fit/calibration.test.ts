import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  calibrate,
  calibratePerKind,
  LEAST_IN_BIN,
  MOST_BINS,
  type Prediction,
} from '../../../src/fit/calibration.ts';
import { foretell } from '../../../src/fit/log-loss.ts';
import { pack } from '../../../src/fit/packed.ts';
import { wilsonInterval } from '../../../src/fit/wilson.ts';
import { usualParameters } from '../../../src/memory/scheduler.ts';
import { seeded } from '../../../src/rules/random.ts';
import { quickLearner, recordOf } from './learner.ts';

const anyPrediction = fc.record({
  predicted: fc.oneof(fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.constantFrom(0.5, 0.9)),
  recalled: fc.boolean(),
});

/** Answers of which each is known with the chance that `chance` makes of the one foretold. */
function answered(count: number, seed: number, chance: (predicted: number) => number): Prediction[] {
  const random = seeded(seed);
  return Array.from({ length: count }, () => {
    const predicted = 0.5 + 0.49 * random();
    return { predicted, recalled: random() < chance(predicted) };
  });
}

describe('the interval of a share', () => {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17
  // (1998), table I, score method without continuity correction (from memory).
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('is as published for %i of %i', (hits, count, from, to) => {
    const interval = wilsonInterval(hits, count);
    expect(interval.from).toBeCloseTo(from, 4);
    expect(interval.to).toBeCloseTo(to, 4);
  });

  it('is everything when nothing was asked, and ends at 1 when all was known', () => {
    expect(wilsonInterval(0, 0)).toEqual({ from: 0, to: 1 });
    expect(wilsonInterval(12, 12).to).toBe(1);
  });
});

describe('calibration', () => {
  it('is none without answers', () => {
    expect(calibrate([])).toBeNull();
  });

  it('puts every answer into one bin, in order, none small but by need, and like chances together', () => {
    fc.assert(
      fc.property(fc.array(anyPrediction, { minLength: 1, maxLength: 400 }), (predictions) => {
        const { bins, count, observed, predicted } = calibrate(predictions)!;
        expect(bins.length).toBeLessThanOrEqual(MOST_BINS);
        expect(bins.reduce((sum, bin) => sum + bin.count, 0)).toBe(count);
        expect(bins.reduce((sum, bin) => sum + bin.count * bin.observed, 0) / count).toBeCloseTo(observed, 9);
        expect(bins.reduce((sum, bin) => sum + bin.count * bin.predicted, 0) / count).toBeCloseTo(
          predicted,
          9,
        );
        bins.slice(1).forEach((bin, i) => expect(bin.least).toBeGreaterThan(bins[i]!.greatest));
      }),
    );
  });

  it('has ten equal bins when there are answers enough, and fewer when not', () => {
    const bins = calibrate(answered(1000, 1, (chance) => chance))!.bins;
    expect(bins.map(({ count }) => count)).toEqual(Array.from({ length: 10 }, () => 100));
    expect(calibrate(answered(LEAST_IN_BIN * 3 + 5, 1, (chance) => chance))!.bins).toHaveLength(3);
    expect(calibrate(answered(5, 1, (chance) => chance))!.bins).toHaveLength(1);
  });

  it('finds little wrong with chances that came true, and what is wrong with ones that are too high', () => {
    const right = calibrate(answered(20_000, 2, (chance) => chance))!;
    expect(right.error).toBeLessThan(0.01);
    expect(Math.abs(right.predicted - right.observed)).toBeLessThan(0.01);
    const tooHigh = calibrate(answered(20_000, 2, (chance) => chance - 0.1))!;
    expect(tooHigh.error).toBeCloseTo(0.1, 1);
    for (const { interval, predicted } of tooHigh.bins) expect(interval.to).toBeLessThan(predicted);
  });

  it('holds the true chance in about 95 % of its intervals', () => {
    let held = 0;
    for (let seed = 0; seed < 100; seed++) {
      const { bins } = calibrate(answered(1000, 100 + seed, (chance) => chance))!;
      held += bins.filter(
        ({ interval, predicted }) => interval.from <= predicted && predicted <= interval.to,
      ).length;
    }
    expect(held).toBeGreaterThan(930);
    expect(held).toBeLessThan(980);
  });

  it('tells a learner whom the parameters in use fit from one whom they don’t', () => {
    const record = pack(recordOf(quickLearner, 4000, 1));
    const fitting = calibrate(foretell(record, quickLearner))!;
    const usual = calibrate(foretell(record, usualParameters))!;
    expect(fitting.error).toBeLessThan(0.02);
    expect(usual.error).toBeGreaterThan(2 * fitting.error);
  });

  it('is told for each kind of card apart', () => {
    const values = answered(200, 3, (chance) => chance).map((one) => ({
      ...one,
      cardKind: 'value' as const,
    }));
    const rules = answered(90, 4, () => 0.5).map((one) => ({ ...one, cardKind: 'rule' as const }));
    const perKind = calibratePerKind([...values, ...rules]);
    expect([...perKind.keys()]).toEqual(['value', 'rule']);
    expect(perKind.get('value')).toEqual(calibrate(values));
    expect(perKind.get('rule')).toEqual(calibrate(rules));
  });
});
