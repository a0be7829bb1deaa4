/** The light aeroplane's final, flown from the end of the final turn to touchdown. */
import { describe, expect, test } from 'vitest';
import { canFly } from '../../src/motion/can-fly.ts';
import { asDecided, fly, nothing, opposite, procedureOf, seedsTo } from './passes.ts';

const procedure = procedureOf('light-aircraft-circuit');
const seeds = seedsTo(300);

describe('a pass down the final', () => {
  test('can begin where the final turn is complete and at the threshold; other phases say why not', () => {
    const { fromGates, grounded } = canFly(procedure);
    expect(fromGates).toEqual(['final', 'threshold']);
    expect(grounded.map(({ phase }) => phase)).toEqual(['downwind-leg', 'final-turn']);
    for (const { why } of grounded) expect(why).toMatch(/\.$/);
  });

  test('that always does what the rules ask ends adequate at every gate, from every seed', () => {
    const { misses, demanded } = fly(procedure, 'final', seeds, asDecided);
    expect(misses).toEqual([]);
    expect(demanded).toBeLessThanOrEqual(0.05);
  }, 30_000);

  test('that does nothing mostly fails, and opposite corrections fail more often', () => {
    const idle = fly(procedure, 'final', seeds, nothing);
    const wrong = fly(procedure, 'final', seeds, opposite);
    expect(idle.adequate).toBeLessThan(0.5);
    expect(wrong.adequate).toBeLessThan(idle.adequate);
  }, 30_000);
});
