import { beforeEach, describe, expect, it } from 'vitest';
import { PassFlight, type PassFlightSetup } from '../../../src/app/state/pass-flight.svelte.ts';
import { pilotOf, type Pilot } from './drilling.ts';

let pilot: Pilot;
let clockMs: number;

beforeEach(async () => {
  pilot = await pilotOf('marram-recovery');
  clockMs = 1000;
});

/** From over the spot: the shortest pass. */
function fly(change: Partial<PassFlightSetup> = {}): PassFlight {
  return new PassFlight({
    training: pilot.training,
    start: { fromGate: 'over-spot', seed: 3 },
    pace: 'compressed',
    timing: 1,
    tells: false,
    monotonicMs: () => clockMs,
    still: () => false,
    ...change,
  });
}

function after(flight: PassFlight, ms: number): void {
  clockMs += ms;
  flight.tick();
}

/** To the next point or the end. */
function toPoint(flight: PassFlight): void {
  for (let i = 0; i < 1000 && flight.stage === 'moving'; i++) after(flight, 50);
}

describe('going around', () => {
  it('has one key, no row, and ends the pass from a decision point', () => {
    const flight = fly({ start: { fromGate: 'alongside', seed: 1 } });
    expect(flight.calls.atOnce).toEqual([
      { control: 'call', action: 'go-around', label: 'Go around', key: 'g' },
    ]);
    expect(flight.calls.rows.map(({ id }) => id)).not.toContain('call');
    flight.choose('call', 'go-around');
    expect(flight.stage).toBe('ended');
    expect(flight.assessment!.ended).toMatchObject({ kind: 'go-around' });
    expect(pilot.training.passes).toHaveLength(1);
  });

  it('while it moves, ends the pass where it is shown to be', () => {
    const flight = fly({ start: { fromGate: 'alongside', seed: 1 }, pace: 'real' });
    for (let i = 0; i < 60; i++) {
      for (const [control, action] of Object.entries(flight.asked!.decision.actions))
        flight.choose(control, action);
      after(flight, 400);
      flight.call();
      if (flight.pass.nowMs - flight.moment.tMs > 3500) break;
      toPoint(flight);
    }
    const from = flight.moment.tMs;
    expect(flight.pass.nowMs - from).toBeGreaterThan(3500);
    after(flight, 500);
    flight.callAtOnce(flight.calls.atOnce[0]!);
    expect(flight.assessment!.ended!.kind).toBe('go-around');
    const lateMs = flight.assessment!.ended!.tMs - from;
    expect(lateMs).toBeGreaterThan(300);
    expect(lateMs).toBeLessThanOrEqual(600);
  });

  it('ends it at once also while what a phase brings comes in, and counts that as come', () => {
    const flight = fly({ start: { fromGate: 'abeam', seed: 1, roughness: 0 }, pace: 'real' });
    for (let i = 0; i < 60 && flight.moment.phase === 'abeam-leg'; i++) {
      for (let k = 0; k < 1000 && flight.stage === 'moving' && flight.moment.phase === 'abeam-leg'; k++)
        after(flight, 50);
      if (!flight.asked) break;
      for (const [control, action] of Object.entries(flight.asked.decision.actions))
        flight.choose(control, action);
      after(flight, 400);
      flight.call();
    }
    expect([flight.stage, flight.moment.phase]).toEqual(['moving', 'final-turn']);
    after(flight, 500);
    const { tMs, state } = flight.moment;
    flight.callAtOnce(flight.calls.atOnce[0]!);
    const { ended, decisions } = flight.assessment!;
    expect(Math.abs(ended!.tMs - tMs)).toBeLessThanOrEqual(100);
    const { point } = decisions.at(-1)!;
    expect(point.why).toBe('called');
    expect(point.state.sink!).toBeGreaterThan(state.sink! + 100);
  });

  it('works while it moves too, and ends the pass once', () => {
    const flight = fly();
    after(flight, 400);
    flight.call();
    after(flight, 50);
    flight.callAtOnce(flight.calls.atOnce[0]!);
    expect(flight.stage).toBe('ended');
    flight.callAtOnce(flight.calls.atOnce[0]!);
    expect(pilot.training.passes).toHaveLength(1);
  });
});
