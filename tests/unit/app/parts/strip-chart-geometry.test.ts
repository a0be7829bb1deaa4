import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fittingLabels,
  layoutStrip,
  timeScale,
  timeTicks,
} from '../../../../src/app/parts/strip-chart-geometry.ts';
import type { Band } from '../../../../src/deck/types.ts';

const band: Band = { target: 140, desired: [130, 150], adequate: [115, 170], floor: 115 };
const time = timeScale(60_000, 340, 40, 10);
const trace = {
  quantity: 'altitude',
  stretches: [
    [0, 1, 2, 3].map((second) => ({ tMs: second * 1000, value: 200 - second * 10 })),
    [40, 50, 60].map((second) => ({ tMs: second * 1000, value: 150 })),
  ],
  bands: [{ gate: 'alongside', tMs: 45_000, thereMs: 45_000, value: 140, band }],
  actions: [
    { control: 'power', action: 'more-power', fromMs: 30_000, toMs: 31_000 },
    { control: 'power', action: 'less-power', fromMs: 50_000, toMs: 51_000 },
  ],
  raises: [true, false],
};
const layout = layoutStrip({ trace, time, topPx: 10, bottomPx: 90 });

describe('a time scale', () => {
  it('runs from the numbers of the scale to the edge, and holds what is beyond inside', () => {
    expect([time.xOf(0), time.xOf(30_000), time.xOf(60_000), time.xOf(90_000)]).toEqual([40, 185, 330, 330]);
  });

  it('has ticks at round times, far enough apart for their labels', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 900_000 }),
        fc.integer({ min: 200, max: 1000 }),
        (endMs, widthPx) => {
          const scale = timeScale(endMs, widthPx, 30, 10);
          const xs = timeTicks(endMs, scale, 50).map(scale.xOf);
          expect(xs[0]).toBe(30);
          xs.slice(1).forEach((x, i) => expect(x - xs[i]!).toBeGreaterThanOrEqual(49.9));
        },
      ),
    );
  });
});

describe('labels on one line', () => {
  it('never touch, and the first and last come before those between', () => {
    const xs = fc
      .array(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 14 })
      .map((all) => all.sort((one, other) => one - other));
    fc.assert(
      fc.property(xs, (places) => {
        const shown = fittingLabels(places, 20);
        const written = places.filter((_, i) => shown[i]);
        expect(shown[0]).toBe(true);
        written.slice(1).forEach((x, i) => expect(x - written[i]!).toBeGreaterThanOrEqual(20));
        if (places.at(-1)! - places[0]! >= 20) expect(shown.at(-1)).toBe(true);
      }),
    );
  });
});

describe('a strip of a chart', () => {
  it('draws a line for each stretch, and none across the gap', () => {
    expect(layout.line.match(/M/g)).toHaveLength(2);
    expect(layout.line.startsWith('M40.0 ')).toBe(true);
  });

  it('puts a gate’s band at its time, the desired stretch inside the adequate one', () => {
    const [drawn] = layout.bands;
    expect(drawn!.x).toBe(time.xOf(45_000));
    expect(drawn!.desired.y).toBeGreaterThan(drawn!.adequate.y);
    expect(drawn!.desired.y + drawn!.desired.heightPx).toBeLessThan(
      drawn!.adequate.y + drawn!.adequate.heightPx,
    );
    expect(drawn!.floorY).toBeCloseTo(drawn!.adequate.y + drawn!.adequate.heightPx, 6);
    expect(drawn!.ceilingY).toBeNull();
  });

  it('puts the band and the value graded where what comes in with the gate is there', () => {
    const [late] = layoutStrip({
      trace: { ...trace, bands: [{ ...trace.bands[0]!, thereMs: 48_000 }] },
      time,
      topPx: 10,
      bottomPx: 90,
    }).bands;
    expect([late!.gateX, late!.x]).toEqual([time.xOf(45_000), time.xOf(48_000)]);
    expect(late!.y).toBeCloseTo(late!.targetY, 9);
  });

  it('does not blow up a line that hardly moved', () => {
    const points = [0, 1, 2].map((i) => ({ tMs: i * 1000, value: 140 + i / 100 }));
    const flat = { ...trace, stretches: [points], bands: [] };
    const { lo, hi } = layoutStrip({ trace: flat, time, topPx: 10, bottomPx: 90, step: 5 });
    expect(hi - lo).toBeCloseTo(40, 6);
  });

  it('has room for all that was flown and for all bands', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1 }), (values) => {
        const points = values.map((value, i) => ({ tMs: i * 100, value }));
        const { lo, hi } = layoutStrip({
          trace: { ...trace, stretches: [points] },
          time,
          topPx: 10,
          bottomPx: 90,
        });
        expect(lo).toBeLessThan(Math.min(...values, 115));
        expect(hi).toBeGreaterThan(Math.max(...values, 170));
      }),
    );
  });

  it('marks where the pilot raised and lowered it', () => {
    expect(layout.actions).toEqual([
      { x: time.xOf(30_000), raises: true },
      { x: time.xOf(50_000), raises: false },
    ]);
  });

  it('has a few round numbers within the plot', () => {
    expect(layout.ticks.map(({ value }) => value)).toEqual([150, 200]);
    for (const { y } of layout.ticks) expect(y >= 10 && y <= 90).toBe(true);
  });

  it('is empty, not broken, for a quantity that was never flown', () => {
    const nothing = { ...trace, stretches: [], bands: [], actions: [], raises: [] };
    expect(layoutStrip({ trace: nothing, time, topPx: 10, bottomPx: 90 })).toMatchObject({
      line: '',
      bands: [],
      actions: [],
      lo: -0.08,
      hi: 1.08,
    });
  });
});
