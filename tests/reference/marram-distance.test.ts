/**
 * Limits and answers of the Marram deck that have to follow the distance: a pass is never broken off far
 * out for what is let go near the ship, and who is low is not let down further (common practice, no source).
 */
import { describe, expect, test } from 'vitest';
import { controlOf, phaseOf } from '../../src/deck/lookup.ts';
import { decide } from '../../src/rules/decide.ts';
import { deck, gate, target } from './marram-legs.ts';
import { never, procedure } from './marram-states.ts';
import { ftPerSecondPerKt } from './turn-in-wind.ts';

describe('when a pass is broken off', () => {
  const isCalled = (phase: string, state: Record<string, number>) =>
    decide(procedure, phase, state).actions.call === 'go-around';

  /** The least value of which, and of everything above, a go-around is called; past the range if there is none. */
  function limitOf(phase: string, quantity: string, fixed: Record<string, number>): number {
    const { hi } = procedure.phases.get(phase)!.box.get(quantity)!;
    let limit = Infinity;
    for (let value = hi; value >= 0 && isCalled(phase, { ...fixed, [quantity]: value }); value--)
      limit = value;
    return limit;
  }

  /** From far to near, each limit no wider than the one before. */
  function expectToTighten(limits: readonly number[]) {
    expect(limits.some(Number.isFinite)).toBe(true);
    for (const [i, limit] of limits.entries()) expect(limit).toBeLessThanOrEqual(limits[i - 1] ?? Infinity);
  }

  test('the line-up allowed right of the line only shrinks from the far check to the spot', () => {
    const inTransition = { altitude: 215, airspeed: 78, thrust: 77, sink: 190 };
    const inClosing = { altitude: 160, closure: 20, sink: 60 };
    expectToTighten([
      ...[2000, 1500, 1300, 1200, 900, 650].map((toGo) =>
        limitOf('wing-to-jet', 'lineup', { ...inTransition, 'to-go': toGo, airspeed: toGo < 800 ? 62 : 78 }),
      ),
      ...[650, 450, 400, 350, 200, 50].map((toGo) =>
        limitOf('closing', 'lineup', { ...inClosing, 'to-go': toGo, closure: toGo < 100 ? 4 : 20 }),
      ),
    ]);
  });

  test('far out more of it is allowed than near, and it only shrinks on the way in', () => {
    const inGroove = { altitude: 330, sink: 270, aoa: 10 };
    const slowing = { altitude: 280, closure: 85, sink: 230 };
    const limits = [
      ...[5600, 5000, 4800, 4200].map((toGo) =>
        limitOf('groove-leg', 'lineup', { ...inGroove, 'to-go': toGo }),
      ),
      ...[3900, 3200, 3000, 2700].map((toGo) =>
        limitOf('early-deceleration', 'lineup', { ...slowing, 'to-go': toGo }),
      ),
      limitOf('wing-to-jet', 'lineup', { altitude: 240, airspeed: 90, thrust: 70, sink: 220, 'to-go': 2000 }),
    ];
    expectToTighten(limits);
    expect(limits[0]).toBeGreaterThan(2 * limits.at(-1)!);
  });

  test.each([
    ['early-deceleration', { altitude: 260, sink: 220, lineup: 0 }, [3100, 2800, 2600, 2300, 2250, 2000]],
    ['closing', { altitude: 160, sink: 60, lineup: 0 }, [650, 400, 390, 250, 240, 150, 100, 39, 0]],
  ])('the closure allowed in %s only shrinks with the distance', (phase, fixed, distances) => {
    expectToTighten(distances.map((toGo) => limitOf(phase, 'closure', { ...fixed, 'to-go': toGo })));
  });

  test('the slide allowed across the deck only shrinks towards the line', () => {
    const fixed = { altitude: 132, sink: 15, closure: 0 };
    expectToTighten(
      [90, 55, 50, 26, 25, 6, 5, 0].map((across) => limitOf('crossing', 'drift', { ...fixed, across })),
    );
  });

  test('a slide that is not called off stops before the far edge of the deck', () => {
    // A second for stick and roll, then left bank and the air against the slide; the deck is 100 ft wide.
    const goLeft = controlOf(deck, 'lineup').actions.find(({ id }) => id === 'go-left')!;
    const air = phaseOf(deck, 'crossing').rates!.drift!.factors!.drift!;
    never('crossing', ({ state }) => {
      const { across, drift } = state as { across: number; drift: number };
      const brakingKtS = -goLeft.effects!.drift! - (air * drift) / 2;
      const runFt = (drift + drift ** 2 / (2 * brakingKtS)) * ftPerSecondPerKt;
      return drift > 0 && across >= 0 && runFt > across + 50;
    });
  });

  test('nobody goes on over the deck who slides along it', () => {
    never('crossing', ({ state }) => state.across! <= 60 && Math.abs(state.closure!) > 6);
  });
});

describe('low', () => {
  test('nobody low or falling goes on towards the edge', () => {
    never('crossing', ({ state, actions }) => {
      const isSettled = state.altitude! >= 120 && state.sink! <= 120;
      return state.across! > 50 && state.drift! >= 2 && !isSettled && actions.lineup !== 'go-left';
    });
  });

  test('on the approach line no power is taken well under the height that the gates give the distance', () => {
    const gatesOn: readonly [string, string, string][] = [
      ['groove-leg', 'groove', 'deceleration'],
      ['early-deceleration', 'deceleration', 'far-check'],
      ['wing-to-jet', 'far-check', 'near-check'],
    ];
    for (const [phase, from, to] of gatesOn) {
      const [far, near] = [gate(from), gate(to)];
      const slope =
        (target(from, 'altitude') - target(to, 'altitude')) / (near.position.aheadFt - far.position.aheadFt);
      never(phase, ({ state, actions }) => {
        const wanted = target(to, 'altitude') + (state['to-go']! + near.position.aheadFt) * slope;
        const isClimbing = state.sink! < 0;
        return !isClimbing && state.altitude! < wanted - 30 && actions.power === 'less-power';
      });
    }
  });

  test('nobody comes down on the deck while he slides over it', () => {
    never('vertical', ({ state, actions }) => {
      const isSliding = Math.abs(state.drift!) > 3 || Math.abs(state.closure!) > 3;
      if (state.altitude! <= 66 || !isSliding) return false;
      if (state.sink! > 150) return actions.power !== 'more-power';
      return state.sink! >= -50 && actions.power === 'less-power';
    });
  });
});
