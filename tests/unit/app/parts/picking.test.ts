import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceOn, fromScreen, movedBy, onPlate } from '../../../../src/app/parts/plate-geometry.ts';
import { optionIndexForKey, optionKey, picked, takenBack } from '../../../../src/app/parts/sequence.ts';
import { fittingSizePx, textWidthPx } from '../../../../src/app/parts/text-width.ts';
import type { Plate } from '../../../../src/deck/types.ts';

const plate: Plate = { id: 'deck', label: 'Deck', size: [760, 230], unit: 'ft', shapes: [], spots: [] };

describe('the cross on a plate', () => {
  it('moves with the arrow keys, in small steps when asked', () => {
    const [right, fine] = [
      movedBy(plate, [300, 100], 'ArrowRight', false),
      movedBy(plate, [300, 100], 'ArrowUp', true),
    ];
    expect(right![0]).toBeGreaterThan(300);
    expect(right![1]).toBeCloseTo(100, 0);
    expect(100 - fine![1]).toBeGreaterThan(0);
    expect(100 - fine![1]).toBeLessThan(right![0] - 300);
  });

  it('takes no other key for a move', () => {
    expect(movedBy(plate, [300, 100], 'Enter', false)).toBeNull();
    expect(movedBy(plate, [300, 100], 'a', false)).toBeNull();
  });

  it('reaches within a spot of 15 ft by small steps from anywhere', () => {
    const step = movedBy(plate, [300, 100], 'ArrowRight', true)![0] - 300;
    expect(step).toBeLessThan(15);
  });

  it('never leaves the drawing', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true }), fc.double({ noNaN: true }), (x, y) => {
        const [px, py] = onPlate(plate, [x, y]);
        expect(px).toBeGreaterThanOrEqual(0);
        expect(px).toBeLessThanOrEqual(760);
        expect(py).toBeGreaterThanOrEqual(0);
        expect(py).toBeLessThanOrEqual(230);
      }),
    );
  });

  it('follows the pointer over the drawing as it stands on the screen', () => {
    const box = { left: 20, top: 40, width: 380, height: 115 };
    const [x, y] = fromScreen(plate, box, 20 + 190, 40 + 57.5);
    expect(x).toBeCloseTo(380, 0);
    expect(y).toBeCloseTo(115, 0);
    expect(distanceOn([0, 0], [30, 40])).toBe(50);
  });
});

describe('picking in order', () => {
  it('adds at the end, takes out what was picked, closes the gap', () => {
    expect(picked(['a', 'b'], 'c')).toEqual(['a', 'b', 'c']);
    expect(picked(['a', 'b', 'c'], 'b')).toEqual(['a', 'c']);
    expect(takenBack(['a', 'b'])).toEqual(['a']);
    expect(takenBack([])).toEqual([]);
  });

  it('gives each of twenty options a key of its own, which means that option again', () => {
    const keys = Array.from({ length: 20 }, (_, i) => optionKey(i)!);
    expect(new Set(keys).size).toBe(20);
    keys.forEach((key, i) => expect(optionIndexForKey(key, 20)).toBe(i));
    expect(keys.slice(0, 13).join('')).toBe('123456789abcd');
  });

  it('knows a capital letter as the same key, and no key for what is not there', () => {
    expect(optionIndexForKey('A', 12)).toBe(9);
    expect(optionIndexForKey('4', 3)).toBeNull();
    expect(optionIndexForKey('Enter', 20)).toBeNull();
    expect(optionKey(99)).toBeNull();
  });

  it.each(['p', 'u', 'z', '0'])('leaves %s to the page', (key) => {
    expect(optionIndexForKey(key, 99)).toBeNull();
  });
});

describe('the width of a text', () => {
  it('is the sum of B612’s advances', () => {
    expect(textWidthPx('140', 1000)).toBe(3 * 650);
    expect(textWidthPx('140 ft', 1000)).toBe(3 * 650 + 350 + 400 + 400);
  });

  it('is the same for any number of as many digits', () => {
    expect(textWidthPx('1,111', 40)).toBe(textWidthPx('8,888', 40));
  });

  it('decides the largest size that fits, or the smallest of all', () => {
    const width = (px: number): number => textWidthPx('1,250', px);
    expect(fittingSizePx(200, [40, 32, 28], width)).toBe(40);
    expect(fittingSizePx(100, [40, 32, 28], width)).toBe(32);
    expect(fittingSizePx(10, [40, 32, 28], width)).toBe(28);
  });
});
