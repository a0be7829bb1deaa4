import { describe, expect, it } from 'vitest';
import { minimise, type Bounds, type Minimum, type Smooth } from '../../../src/fit/minimise.ts';

const tolerance = { gain: 1e-14, calls: 500 };
const wide: Bounds = [
  [-10, 10],
  [-10, 10],
];

function least(smooth: Smooth, start: readonly number[], bounds = wide, calls = tolerance.calls): Minimum {
  const steps = minimise(smooth, Float64Array.from(start), bounds, { ...tolerance, calls });
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** Rosenbrock's valley (H. Rosenbrock, Computer Journal 3, 1960): least at (1, 1), where it is 0. */
const valley: Smooth = (place, gradient) => {
  const [x, y] = [place[0]!, place[1]!];
  gradient[0] = -400 * x * (y - x * x) - 2 * (1 - x);
  gradient[1] = 200 * (y - x * x);
  return 100 * (y - x * x) ** 2 + (1 - x) ** 2;
};

describe('the least of a function', () => {
  it('is found along a bent valley', () => {
    const { place, calls } = least(valley, [-1.2, 1]);
    expect(place[0]).toBeCloseTo(1, 5);
    expect(place[1]).toBeCloseTo(1, 5);
    expect(calls).toBeLessThan(100);
  });

  it('is found at a bound, when the valley leads out of the box', () => {
    const box: Bounds = [
      [-2, 0.5],
      [-2, 2],
    ];
    const { place } = least(valley, [-1.2, 1], box);
    expect(place[0]).toBe(0.5);
    expect(place[1]).toBeCloseTo(0.25, 6);
  });

  it('leaves a bound again that it started at', () => {
    const bowl: Smooth = (place, gradient) => {
      gradient.set(place.map((x) => 2 * (x - 1)));
      return place.reduce((sum, x) => sum + (x - 1) ** 2, 0);
    };
    const { place } = least(bowl, [10, -10]);
    expect([...place]).toEqual([expect.closeTo(1, 6), expect.closeTo(1, 6)]);
  });

  it('is what it has when its calls are used up, and never worse than the start', () => {
    const start = valley(Float64Array.of(-1.2, 1), new Float64Array(2));
    for (let calls = 1; calls < 30; calls++) {
      const minimum = least(valley, [-1.2, 1], wide, calls);
      expect(minimum.calls).toBeLessThanOrEqual(calls);
      expect(minimum.value).toBeLessThanOrEqual(start);
    }
  });

  it('steps back from where the function has no value', () => {
    const log: Smooth = (place, gradient) => {
      gradient[0] = 1 - 0.01 / place[0]!;
      gradient[1] = 0;
      return place[0]! <= 0 ? NaN : place[0]! - 0.01 * Math.log(place[0]!);
    };
    expect(least(log, [5, 0]).place[0]).toBeCloseTo(0.01, 5);
  });
});
