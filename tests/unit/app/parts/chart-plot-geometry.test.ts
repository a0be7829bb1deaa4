import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apart, layoutChart, spreadOver } from '../../../../src/app/parts/chart-plot-geometry.ts';
import { sayExtent, sayReading } from '../../../../src/app/parts/chart-words.ts';
import type { Chart } from '../../../../src/deck/types.ts';
import { along, anyChart, brakeChart, liftChart, share } from '../../day/charts.ts';

const size = { widthPx: 358, heightPx: 260, sizePx: 13 };
const laid = (chart: Chart, at: readonly number[] | null = null) => layoutChart({ chart, at, ...size });

describe('the plot of a chart', () => {
  it('has a line for each value of the second input, labelled with it', () => {
    expect(laid(liftChart).lines.map(({ label }) => label)).toEqual(['−10', '15', '45']);
    expect(laid(brakeChart).lines.map(({ label }) => label)).toEqual(['']);
  });

  it('puts a reading where the axes say', () => {
    const { left, right, top, bottom, reading, yTicks } = laid(brakeChart, [30]);
    expect(reading!.at.x).toBeCloseTo((left + right) / 2, 9);
    const tickAt = (label: string): number => yTicks.find((tick) => tick.label === label)!.px;
    // 250 lies a quarter of the way from 200 to 400.
    expect(reading!.at.y).toBeCloseTo(tickAt('200') + (tickAt('400') - tickAt('200')) / 4, 9);
    expect(reading!.label).toBe('250\u00a0ft');
    expect(reading!.at.y).toBeGreaterThan(top);
    expect(reading!.at.y).toBeLessThan(bottom);
  });

  it('draws a line of the day’s own where none stands for its second input', () => {
    expect(laid(liftChart, [300, 30]).reading!.line).toHaveLength(3);
    expect(laid(liftChart, [300, 15]).reading!.line).toEqual([]);
  });

  it('shows no point outside the chart', () => {
    expect(laid(liftChart, [300, 52]).reading).toBeNull();
    expect(laid(liftChart, [-1, 15]).reading).toBeNull();
  });

  it('writes the value to the step it is called in', () => {
    const layout = layoutChart({ chart: liftChart, at: [310, 30], step: 50, ...size });
    expect(layout.reading!.label).toBe('8,400\u00a0kg');
  });

  it('has room for a chart of one and the same value', () => {
    const flat = { ...brakeChart, values: [5, 5, 5] };
    const { reading, top, bottom } = laid(flat, [30]);
    expect(reading!.at.y).toBeCloseTo((top + bottom) / 2, 9);
  });

  it('keeps all lines, the point and its label inside, whatever the chart', () => {
    fc.assert(
      fc.property(anyChart, share, share, fc.integer({ min: 280, max: 900 }), (chart, p, q, widthPx) => {
        const at = chart.inputs.map((input, index) => along(input.at, index === 0 ? p : q));
        const layout = layoutChart({ chart, at, widthPx, heightPx: 260, sizePx: 13 });
        const points = [...layout.lines.flatMap((line) => line.points), layout.reading!.at];
        for (const { x, y } of points) {
          expect(x).toBeGreaterThanOrEqual(layout.left - 1e-6);
          expect(x).toBeLessThanOrEqual(layout.right + 1e-6);
          expect(y).toBeGreaterThanOrEqual(layout.top - 1e-6);
          expect(y).toBeLessThanOrEqual(layout.bottom + 1e-6);
        }
        expect(layout.reading!.box.x).toBeGreaterThanOrEqual(0);
        expect(layout.reading!.box.y).toBeGreaterThanOrEqual(0);
        expect(layout.reading!.box.y + layout.reading!.box.height).toBeLessThanOrEqual(layout.bottom);
      }),
    );
  });
});

describe('labels beside lines that end close together', () => {
  it('are moved apart, in their order, no further than needed', () => {
    expect(apart([50, 52, 90], 15, 0, 200)).toEqual([50, 65, 90]);
    expect(apart([195, 190], 15, 0, 200)).toEqual([200, 185]);
  });
});

describe('lines of a long list', () => {
  it('are few, with the first and the last', () => {
    const many = Array.from({ length: 40 }, (_, i) => i);
    const drawn = spreadOver(many, 7);
    expect(drawn).toHaveLength(7);
    expect([drawn[0], drawn[6]]).toEqual([0, 39]);
    expect(spreadOver([1, 2, 3], 7)).toEqual([1, 2, 3]);
  });
});

describe('a chart in words', () => {
  it('says from where to where it goes, and which way', () => {
    expect(sayExtent(liftChart)).toBe(
      'From 7,300 to 9,000\u00a0kg, for pressure altitude 0 to 3,000\u00a0ft and temperature −10 to 45\u00a0°C; ' +
        'it falls with pressure altitude and temperature.',
    );
    expect(sayExtent({ ...brakeChart, inputs: [{ label: 'Speed', unit: 'kt', at: [0, 20, 60] }] })).toBe(
      'From 0 to 700\u00a0ft, for speed 0 to 60\u00a0kt.',
    );
  });

  it('says a reading, or why there is none', () => {
    expect(sayReading(liftChart, [300, 30])).toEqual({
      ok: true,
      text: 'At pressure altitude 300\u00a0ft and temperature 30\u00a0°C: 8,425\u00a0kg.',
    });
    expect(sayReading(liftChart, [300, 52])).toEqual({
      ok: false,
      text: 'No value today: temperature 52\u00a0°C; the chart ends at 45\u00a0°C.',
    });
  });
});
