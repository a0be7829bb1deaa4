/**
 * Corrections that an instructor would not call together, or not there. The trade: in the deceleration
 * the nose is for the closure and comes first; power off never meets the wing's loss of lift; a sink is
 * stopped before the nose goes down; near the stall nothing adds to the load (common practice, no source).
 */
import { describe, test } from 'vitest';
import { deck, windOverDeckKt } from './marram-legs.ts';
import { never } from './marram-states.ts';
import { ftPerSecondPerKt } from './turn-in-wind.ts';

describe('one correction at a time', () => {
  test.each(['early-deceleration', 'wing-to-jet', 'closing'])(
    'fast in %s: nose up, and no power off',
    (phase) => {
      never(phase, ({ state, actions }) => {
        const isPast = state['to-go']! < -20;
        return !isPast && actions.pitch === 'nose-up' && actions.power === 'less-power';
      });
    },
  );

  test.each(['early-deceleration', 'wing-to-jet'])('slow in %s: nose down, and no power off', (phase) => {
    never(phase, ({ actions }) => actions.pitch === 'nose-down' && actions.power === 'less-power');
  });

  test.each([
    ['early-deceleration', 300],
    ['wing-to-jet', 270],
    ['closing', 180],
  ])('in %s the nose stays up while the sink is past %i ft/min', (phase, sink) => {
    never(phase, ({ state, actions }) => {
      const isBehindTheSpot = (state['to-go'] ?? 0) >= -20;
      return isBehindTheSpot && state.sink! > sink && actions.pitch === 'nose-down';
    });
  });

  test('near the stall nothing adds to the load on the wing', () => {
    for (const phase of ['abeam-leg', 'final-turn', 'groove-leg'])
      never(
        phase,
        ({ state, actions }) =>
          state.aoa! > 11 && (actions.pitch !== 'nose-down' || actions.power === 'less-power'),
      );
    never('abeam-leg', ({ state, actions }) => state.aoa! > 11 && actions.nozzle !== 'leave-nozzles');
    never('final-turn', ({ state, actions }) => state.aoa! > 11 && actions.lineup === 'go-left');
  });

  test('no bank is added while the turn falls', () => {
    never('final-turn', ({ state, actions }) => state.sink! > 470 && actions.lineup === 'go-left');
  });
});

describe('power goes with the sink', () => {
  test.each(deck.phases!.map(({ id }) => id))(
    '%s: none is added in a climb, none taken in a fall',
    (phase) => {
      never(phase, ({ state, actions }) => {
        const isBehindThrust = phase === 'wing-to-jet';
        if (state.sink! > 480 && actions.power === 'less-power') return true;
        return !isBehindThrust && state.sink! < -60 && actions.power === 'more-power';
      });
    },
  );

  test('none is taken while thrust is short of what the wing has given up', () => {
    // 121 less 0.57 for each knot, as the deck says beside its rates.
    never('wing-to-jet', ({ state, actions }) => {
      const short = 121 - 0.57 * state.airspeed! - state.thrust!;
      return short > 3 && actions.power === 'less-power';
    });
  });

  test('it is added where thrust is well short, whatever else is seen', () => {
    never('wing-to-jet', ({ state, actions }) => {
      const short = 121 - 0.57 * state.airspeed! - state.thrust!;
      // Above 95 kt the nose is braking too, and some shortness is taken for that.
      return short > (state.airspeed! > 95 ? 9 : 8) && actions.power !== 'more-power';
    });
  });
});

describe('the stop', () => {
  /** Feet to stop from a closure, braking evenly (v² = 2 a s). */
  const stopFt = (closureKt: number, brakingKtS: number) =>
    (closureKt ** 2 / (2 * brakingKtS)) * ftPerSecondPerKt;

  test.each([
    ['early-deceleration', 0, 3.1, 250],
    ['wing-to-jet', windOverDeckKt, 3.1, 150],
    ['closing', 0, 2.6, 40],
  ])('in %s the nose comes up for a closure that would stop beyond the spot', (phase, wind, braking, by) => {
    never(phase, ({ state, actions }) => {
      const closure = state.closure ?? state.airspeed! - wind;
      const toGo = state['to-go']!;
      return closure > 3 && stopFt(closure, braking) > toGo + by && actions.pitch !== 'nose-up';
    });
  });

  test('the nozzles help where the nose alone stops beyond the spot', () => {
    // Nose up adds 1.2 kt a second to what the air takes off.
    never('closing', ({ state, actions }) => {
      const { 'to-go': toGo, closure } = state as { 'to-go': number; closure: number };
      return closure > 15 && stopFt(closure, 3.8) > toGo + 60 && actions.nozzle !== 'nozzles-forward';
    });
  });
});

describe('across the edge', () => {
  test('nobody starts who still moves along the ship, is low, or sinks', () => {
    never('crossing', ({ state, actions }) => {
      const isSettled = Math.abs(state.closure!) <= 4 && state.altitude! >= 120 && state.sink! <= 120;
      return state.across! > 60 && state.drift! >= -2 && !isSettled && actions.lineup === 'go-right';
    });
  });

  test('nobody starts down who still moves over the deck', () => {
    never('vertical', ({ state, actions }) => {
      const isStill = Math.abs(state.drift!) <= 2 && Math.abs(state.closure!) <= 2;
      const isAboutLevel = state.sink! >= -50 && state.sink! < 160;
      return state.altitude! > 66 && isAboutLevel && !isStill && actions.power === 'less-power';
    });
  });
});
