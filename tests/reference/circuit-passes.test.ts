/** The light aeroplane's circuit, flown from midfield downwind and from later gates to touchdown. */
import { describe, expect, test } from 'vitest';
import { canFly } from '../../src/motion/can-fly.ts';
import { asDecided, fly, nothing, opposite, procedureOf, seedsTo } from './passes.ts';

const procedure = procedureOf('light-aircraft-circuit');
const seeds = seedsTo(300);

describe('a pass of the circuit', () => {
  test('can begin at every gate from midfield downwind to the threshold', () => {
    expect(canFly(procedure)).toEqual({
      fromGates: ['downwind', 'abeam', 'base-turn', 'base', 'final', 'threshold'],
      grounded: [],
    });
  });

  test.each([
    ['downwind', 7],
    ['final', 3],
  ])(
    'from “%s” that always does what the rules ask ends adequate, from every seed',
    (from, gates) => {
      const { misses, adequate, gatesHeld } = fly(procedure, from, seeds, asDecided);
      expect(misses).toEqual([]);
      expect(adequate).toBe(1);
      expect(gatesHeld).toBe(gates);
    },
    60_000,
  );

  test.each(['abeam', 'base-turn', 'base'])(
    'begun at “%s” comes home too',
    (from) => {
      expect(fly(procedure, from, seedsTo(60), asDecided).misses).toEqual([]);
    },
    30_000,
  );

  test.each([
    ['downwind', 0.1],
    ['final', 0.5],
  ])(
    'from “%s” that does nothing mostly fails, and opposite corrections fail sooner',
    (from, most) => {
      const idle = fly(procedure, from, seeds, nothing);
      const wrong = fly(procedure, from, seeds, opposite);
      expect(idle.adequate).toBeLessThan(most);
      expect(wrong.adequate).toBeLessThanOrEqual(idle.adequate);
      expect(wrong.gatesHeld).toBeLessThan(0.75 * idle.gatesHeld);
    },
    60_000,
  );
});
