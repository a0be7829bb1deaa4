import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutBandStrip } from '../../../../src/app/parts/band-geometry.ts';
import { levelFigures, roundStep, shareOf, ticksFor } from '../../../../src/app/parts/gauge-geometry.ts';
import { layoutSpark } from '../../../../src/app/parts/spark-geometry.ts';
import { spread } from '../../../../src/app/parts/spread.ts';
import { textWidthPx } from '../../../../src/app/parts/text-width.ts';
import { quantityOf } from '../../../../src/deck/lookup.ts';
import { sayNumber } from '../../../../src/deck/say.ts';
import type { Band } from '../../../../src/deck/types.ts';
import { shippedDecks } from './shipped-decks.ts';

describe('labels in a row', () => {
  const wishes = fc.array(
    fc.record({ at: fc.double({ min: 0, max: 300, noNaN: true }), width: fc.integer({ min: 5, max: 50 }) }),
    { maxLength: 8 },
  );

  it('never overlap, never leave the row, keep their order', () => {
    fc.assert(
      fc.property(wishes, (unsorted) => {
        const sorted = [...unsorted].sort((a, b) => a.at - b.at);
        const middles = spread(sorted, 0, 300, 6);
        if (middles === null) {
          const needed = sorted.reduce((sum, wish) => sum + wish.width, 0) + 6 * (sorted.length - 1);
          expect(needed).toBeGreaterThan(300);
          return;
        }
        middles.forEach((middle, i) => {
          const { width } = sorted[i]!;
          expect(middle - width / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(middle + width / 2).toBeLessThanOrEqual(300 + 1e-6);
          if (i === 0) return;
          const apart = middle - middles[i - 1]!;
          expect(apart).toBeGreaterThanOrEqual((width + sorted[i - 1]!.width) / 2 + 6 - 1e-6);
        });
      }),
    );
  });

  it('stay where they wish to be when there is room', () => {
    expect(
      spread(
        [
          { at: 40, width: 20 },
          { at: 100, width: 20 },
        ],
        0,
        200,
        6,
      ),
    ).toEqual([40, 100]);
  });

  it('share the move when two wish for one place', () => {
    const middles = spread(
      [
        { at: 100, width: 20 },
        { at: 100, width: 20 },
      ],
      0,
      200,
      6,
    )!;
    expect(middles[0]).toBeCloseTo(87);
    expect(middles[1]).toBeCloseTo(113);
  });
});

const everyBand = shippedDecks.flatMap((deck) =>
  deck.gates.flatMap((gate) =>
    Object.entries(gate.values).map(([id, band]) => ({
      name: `${deck.id}, ${gate.id}, ${id}`,
      band,
      quantity: quantityOf(deck, id),
    })),
  ),
);

describe.each(everyBand)('the band strip of $name', ({ band, quantity }) => {
  const write = (value: number): string => sayNumber(value, quantity.step);
  const strip = (widthPx: number, value: number | null = null) =>
    layoutBandStrip({ band, value, others: [], widthPx, labelSizePx: 13, write });

  it.each([260, 320, 592])('writes every edge at %i px, none over another', (widthPx) => {
    const { labels } = strip(widthPx);
    const edges = [band.target, ...band.desired, ...band.adequate, band.floor, band.ceiling];
    expect(labels).toHaveLength(new Set(edges.filter((edge) => edge !== undefined)).size);
    labels.forEach((label, i) => {
      const half = textWidthPx(label.text, 13) / 2;
      expect(label.x - half).toBeGreaterThanOrEqual(-0.01);
      expect(label.x + half).toBeLessThanOrEqual(widthPx + 0.01);
      for (const other of labels.slice(i + 1))
        if (other.row === label.row)
          expect(Math.abs(other.x - label.x)).toBeGreaterThan(half + textWidthPx(other.text, 13) / 2);
    });
  });

  it('keeps the order of limits, bounds and target', () => {
    const { adequate, desired, targetX, floorX, ceilingX } = strip(320);
    const inOrder = [adequate.from, desired.from, targetX, desired.to, adequate.to];
    inOrder.slice(1).forEach((x, i) => expect(x).toBeGreaterThanOrEqual(inOrder[i]! - 1e-6));
    if (floorX !== null && band.floor! <= band.adequate[0])
      expect(floorX).toBeLessThanOrEqual(adequate.from + 1e-6);
    if (ceilingX !== null && band.ceiling! >= band.adequate[1])
      expect(ceilingX).toBeGreaterThanOrEqual(adequate.to - 1e-9);
  });

  it('keeps the band wide enough to read however far a limit lies', () => {
    const { adequate } = strip(320);
    const exact = band.adequate[0] === band.adequate[1];
    expect(adequate.to - adequate.from).toBeGreaterThanOrEqual(exact ? 8 : 90);
  });
});

describe('a call on the band strip', () => {
  const band: Band = { target: 140, desired: [130, 150], adequate: [115, 170], floor: 115 };
  const strip = (value: number) =>
    layoutBandStrip({ band, value, others: [], widthPx: 320, labelSizePx: 13, write: String });

  it('stands between the bounds it lies between', () => {
    const { call, desired, adequate } = strip(165);
    expect(call!.x).toBeGreaterThan(desired.to);
    expect(call!.x).toBeLessThan(adequate.to);
    expect(call!.beyond).toBeNull();
  });

  it('stands at the strip’s end with an arrow when it is far off, and leaves the band its width', () => {
    const [wild, calm] = [strip(1500), strip(140)];
    expect(wild.call!.beyond).toBe('above');
    expect(wild.call!.x).toBe(310);
    expect(strip(-500).call!.beyond).toBe('below');
    expect(wild.adequate).toEqual(calm.adequate);
  });

  it('has its number inside the picture even at the end', () => {
    const { call } = strip(1500000);
    expect(call!.labelX + textWidthPx(call!.text, 16) / 2).toBeLessThanOrEqual(320);
  });

  it('marks a limit that was brought nearer with a break', () => {
    const far = layoutBandStrip({
      band: { target: 2, desired: [1.9, 2.2], adequate: [1.8, 2.5], ceiling: 4 },
      value: null,
      others: [],
      widthPx: 320,
      labelSizePx: 13,
      write: String,
    });
    expect(far.breaks).toHaveLength(1);
    expect(far.breaks[0]).toBeGreaterThan(far.adequate.to);
    expect(far.breaks[0]).toBeLessThan(far.ceilingX!);
    expect(strip(140).breaks).toEqual([]);
  });

  it('survives a band without width', () => {
    const { call } = layoutBandStrip({
      band: { target: 0, desired: [0, 0], adequate: [0, 0] },
      value: 3,
      others: [1],
      widthPx: 320,
      labelSizePx: 13,
      write: String,
    });
    expect(Number.isFinite(call!.x)).toBe(true);
  });
});

describe('a gauge’s scale', () => {
  it.each([
    [0.3, 0.5],
    [1, 1],
    [1.2, 2],
    [26, 50],
    [311, 500],
    [1000, 1000],
  ])('rounds a step of at least %d up to %d', (least, step) => {
    expect(roundStep(least)).toBeCloseTo(step, 10);
  });

  it('has major ticks at round numbers, far enough apart, all inside the span', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -5000, max: 5000 }),
        fc.integer({ min: 1, max: 20000 }),
        fc.integer({ min: 90, max: 300 }),
        (lo, width, lengthPx) => {
          const ticks = ticksFor(lo, lo + width, lengthPx, 26);
          const majors = ticks.filter((tick) => tick.major);
          for (const tick of ticks) {
            expect(tick.share).toBeGreaterThanOrEqual(0);
            expect(tick.share).toBeLessThanOrEqual(1);
          }
          majors.slice(1).forEach((tick, i) => {
            expect((tick.share - majors[i]!.share) * lengthPx).toBeGreaterThanOrEqual(25.9);
          });
          expect(ticks.length).toBeLessThan(100);
        },
      ),
    );
  });

  it('has figures on a level strip that never touch and stay on it, two of them wherever two have room', () => {
    const widthOf = (value: number): number => 7 * String(value).length;
    fc.assert(
      fc.property(
        fc.integer({ min: -2000, max: 2000 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 30, max: 200 }),
        (lo, width, lengthPx) => {
          const hi = lo + width;
          const figures = levelFigures(lo, hi, lengthPx, 8, widthOf);
          figures.slice(1).forEach(({ value, textPx }, i) => {
            const before = figures[i]!;
            expect(textPx - before.textPx).toBeGreaterThanOrEqual(
              (widthOf(value) + widthOf(before.value)) / 2 + 4.9,
            );
          });
          for (const { value, atPx } of figures)
            expect(atPx).toBeCloseTo(((value - lo) / width) * lengthPx, 6);
          const endsFit = widthOf(lo) + widthOf(hi) + 5 <= lengthPx + 16;
          if (endsFit) expect(figures.length).toBeGreaterThanOrEqual(2);
        },
      ),
      { examples: [[10, 990, 31]] },
    );
  });

  it('holds the pointer inside the strip', () => {
    expect(shareOf(50, 0, 200)).toBe(0.25);
    expect(shareOf(-3, 0, 200)).toBe(0);
    expect(shareOf(300, 0, 200)).toBe(1);
  });

  it('copes with a span of no width', () => {
    expect(ticksFor(5, 5, 100, 26)).toEqual([{ value: 5, share: 0.5, major: true }]);
  });
});

describe('the small picture of the last calls', () => {
  const band: Band = { target: 140, desired: [130, 150], adequate: [115, 165] };

  it('puts higher calls higher, the newest at the right', () => {
    const { points } = layoutSpark([130, 140, 160], band, 112, 32);
    expect(points.map((point) => point.x)).toEqual([5, 56, 107]);
    expect(points[2]!.y).toBeLessThan(points[1]!.y);
    expect(points[1]!.y).toBeLessThan(points[0]!.y);
  });

  it('says which calls lie beyond it', () => {
    expect(layoutSpark([140, 900, 3], band, 112, 32).points.map((point) => point.beyond)).toEqual([0, 1, -1]);
  });

  it('draws no line without calls', () => {
    expect(layoutSpark([], band, 112, 32).line).toBe('');
  });
});
