/**
 * The Marram deck flown as a whole: its rules, its rates and its errors must fit together, or what a
 * pilot learns from the cards would not bring the aeroplane aboard. The larger figure is in `npm run bench`.
 */
import { describe, expect, test } from 'vitest';
import { canFly } from '../../src/motion/can-fly.ts';
import { asDecided, fly, flyPass, nothing, opposite, procedureOf, seedsTo } from './passes.ts';

const procedure = procedureOf('marram-recovery');
const seeds = seedsTo(300);

describe('a pass of the Marram recovery', () => {
  test('can begin at every gate from abeam to over the spot', () => {
    expect(canFly(procedure)).toEqual({
      fromGates: [
        'abeam',
        'turn-in',
        'groove',
        'deceleration',
        'far-check',
        'near-check',
        'alongside',
        'over-spot',
      ],
      grounded: [],
    });
  });

  test('that always does what the rules ask ends adequate at every gate, from every seed', () => {
    const { adequate, demanded, misses } = fly(procedure, 'abeam', seeds, asDecided);
    expect(misses).toEqual([]);
    expect(demanded).toBeLessThanOrEqual(0.05);
    expect(adequate + demanded).toBe(1);
  }, 30_000);

  test('that does nothing mostly fails, and opposite corrections fail sooner', () => {
    const idle = fly(procedure, 'abeam', seeds, nothing);
    const wrong = fly(procedure, 'abeam', seeds, opposite);
    expect(idle.adequate).toBeLessThan(0.1);
    expect(wrong.adequate).toBeLessThanOrEqual(idle.adequate);
    expect(wrong.gatesHeld).toBeLessThan(0.75 * idle.gatesHeld);
  }, 30_000);

  test('without errors and in still air, left alone, holds the gates as far as the groove', () => {
    const pass = flyPass(procedure, { fromGate: 'abeam', seed: 1, roughness: 0 }, nothing);
    const held = pass.crossings
      .filter(({ performance }) => performance !== 'outside')
      .map(({ gate }) => gate);
    expect(held).toEqual(expect.arrayContaining(['turn-in', 'ninety', 'groove']));
  });

  test('takes more wind over the deck as less closure', () => {
    const closureAtStart = (shipKt: number) => {
      const day = { 'ship-speed': shipKt };
      const pass = flyPass(procedure, { fromGate: 'groove', seed: 1, roughness: 0, day }, asDecided);
      return pass.samples[0]!.state.closure!;
    };
    expect(closureAtStart(12) - closureAtStart(22)).toBeCloseTo(10, 6);
  });

  test.each([['alongside'], ['near-check'], ['groove']])('begun at “%s” comes home too', (fromGate) => {
    expect(fly(procedure, fromGate, seedsTo(60), asDecided).misses).toEqual([]);
  });
});
