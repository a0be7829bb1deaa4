import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  legsThrough,
  lengthOf,
  middleOf,
  pathOf,
  sampleLeg,
  turnDeg,
} from '../../../../src/app/parts/flown-path.ts';

const directionDeg = (from: { x: number; y: number }, to: { x: number; y: number }): number =>
  (Math.atan2(to.x - from.x, -(to.y - from.y)) * 180) / Math.PI;

describe('the line flown through the gates', () => {
  it('leaves and meets each gate on the course flown there, unless it slides sideways', () => {
    const waypoint = fc.record({
      x: fc.integer({ min: 0, max: 500 }),
      y: fc.integer({ min: 0, max: 500 }),
      courseDeg: fc.integer({ min: 0, max: 359 }),
    });
    fc.assert(
      fc.property(waypoint, waypoint, (from, to) => {
        const [leg] = legsThrough([from, to]);
        const { control1, control2 } = leg!;
        if (Math.hypot(control1.x - from.x, control1.y - from.y) > 1)
          expect(turnDeg(directionDeg(from, control1), from.courseDeg)).toBeLessThan(0.1);
        if (Math.hypot(to.x - control2.x, to.y - control2.y) > 1)
          expect(turnDeg(directionDeg(control2, to), to.courseDeg)).toBeLessThan(0.1);
      }),
    );
  });

  it('draws a half turn to the left as an arc ahead of both gates', () => {
    const [leg] = legsThrough([
      { x: 200, y: 100, courseDeg: 0 },
      { x: 0, y: 100, courseDeg: 180 },
    ]);
    const arc = sampleLeg(leg!, 20).slice(1, -1);
    expect(arc.every((point) => point.y < 100 && point.x > 0 && point.x < 200)).toBe(true);
    expect(middleOf(leg!).x).toBeCloseTo(100);
    expect(turnDeg(middleOf(leg!).courseDeg, 270)).toBeLessThan(1);
  });

  it('draws a quarter turn inside the corner of the two course lines', () => {
    const [leg] = legsThrough([
      { x: 0, y: 0, courseDeg: 180 },
      { x: 80, y: 60, courseDeg: 90 },
    ]);
    for (const point of sampleLeg(leg!, 20)) {
      expect(point.x).toBeGreaterThanOrEqual(-1e-9);
      expect(point.y).toBeLessThanOrEqual(60 + 1e-9);
    }
    expect(lengthOf(leg!)).toBeGreaterThan(100);
    expect(lengthOf(leg!)).toBeLessThan(140);
  });

  it('draws a sideways slide on one course as a straight line', () => {
    const [leg] = legsThrough([
      { x: 0, y: 50, courseDeg: 0 },
      { x: 30, y: 50, courseDeg: 0 },
    ]);
    expect(lengthOf(leg!)).toBeCloseTo(30);
    expect(sampleLeg(leg!, 8).every((point) => point.y === 50)).toBe(true);
  });

  it('is empty for fewer than two gates', () => {
    expect(pathOf(legsThrough([{ x: 1, y: 2, courseDeg: 0 }]))).toBe('');
    expect(pathOf(legsThrough([]))).toBe('');
  });

  it('is one SVG path with a curve for each leg', () => {
    const legs = legsThrough([
      { x: 0, y: 0, courseDeg: 90 },
      { x: 30, y: 0, courseDeg: 90 },
      { x: 60, y: 0, courseDeg: 90 },
    ]);
    expect(pathOf(legs)).toBe('M0 0C10 0 20 0 30 0C40 0 50 0 60 0');
  });
});
