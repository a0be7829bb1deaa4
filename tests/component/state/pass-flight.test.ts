import { beforeEach, describe, expect, it } from 'vitest';
import { PassFlight, type PassFlightSetup } from '../../../src/app/state/pass-flight.svelte.ts';
import { aloud } from '../../../src/app/state/drill-voice.ts';
import { sayFlight } from '../../../src/app/state/pass-voice.ts';
import { targetsOfPass } from '../../../src/app/state/pass-drill.ts';
import { advanceToDecision } from '../../../src/motion/advance.ts';
import { correct } from '../../../src/motion/correct.ts';
import { startPass } from '../../../src/motion/start.ts';
import type { Pass } from '../../../src/motion/types.ts';
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

/** As the rules ask, or leaving all as it is; gives how many points there were. */
function flyOn(flight: PassFlight, byTheRules: boolean): number {
  let calls = 0;
  for (; flight.stage !== 'ended' && calls < 500; calls++) {
    toPoint(flight);
    if (!flight.asked) break;
    if (byTheRules)
      for (const [control, action] of Object.entries(flight.asked.decision.actions))
        flight.choose(control, action);
    if (flight.asked) after(flight, 400);
    flight.call();
  }
  return calls;
}

describe('a pass on the screen', () => {
  it('stands at its first decision point, with what the engine’s point says on its instruments', () => {
    const flight = fly();
    expect(flight.stage).toBe('asking');
    expect(Object.fromEntries(flight.readings.map(({ quantity, value }) => [quantity, value]))).toEqual(
      flight.pass.open!.state,
    );
    expect(flight.cue).toMatch(/^Coming down on the spot, /);
  });

  it('moves four times as fast as the pass between two points, or as fast, as chosen', () => {
    for (const [pace, speed] of [
      ['compressed', 4],
      ['real', 1],
    ] as const) {
      const flight = fly({ pace });
      after(flight, 400);
      flight.call();
      expect(flight.stage).toBe('moving');
      const from = flight.moment.tMs;
      after(flight, 200);
      expect(flight.moment.tMs - from).toBeCloseTo(200 * speed, 6);
      after(flight, 2000 / speed);
      expect(flight.stage).toBe('asking');
      expect(flight.moment.tMs).toBe(flight.pass.nowMs);
    }
  });

  it('counts on the clock alone: one late tick comes to the same as many', () => {
    const [often, once] = [25, 1].map((ticks) => {
      const flight = fly();
      after(flight, 400);
      flight.call();
      for (let i = 0; i < ticks; i++) after(flight, 250 / ticks);
      return flight;
    });
    expect(once!.moment).toEqual(often!.moment);
  });

  it('calls what is set when the window closes', () => {
    const flight = fly();
    flight.choose('power', 'more-power');
    after(flight, 2900);
    expect(flight.stage).toBe('asking');
    expect(flight.remaining).toBeGreaterThan(0);
    after(flight, 200);
    expect(flight.stage).toBe('moving');
    expect(flight.pass.decisions[0]!.chosen).toMatchObject({ power: 'more-power' });
    expect(flight.chosen).toEqual({});
  });

  it.each([
    ['is longer by the factor chosen', { timing: 2 }, 6000],
    ['is none when untimed', { timing: Infinity }, null],
    ['is none step by step', { pace: 'steps' as const }, null],
  ])('has a window that %s', (_, change, windowMs) => {
    const flight = fly(change);
    expect(flight.windowMs).toBe(windowMs ?? Infinity);
    after(flight, 1e7);
    expect(flight.stage).toBe(windowMs === null ? 'asking' : 'moving');
    if (windowMs === null) expect(flight.remaining).toBeNull();
  });

  it('takes no call in the first moment, nor while it moves', () => {
    const flight = fly();
    after(flight, 100);
    flight.call();
    expect(flight.stage).toBe('asking');
    after(flight, 400);
    flight.call();
    flight.call();
    expect(flight.pass.decisions.filter(({ chosen }) => chosen)).toHaveLength(1);
  });

  it('keeps what is set while it moves for the next call', () => {
    const flight = fly();
    after(flight, 400);
    flight.call();
    after(flight, 100);
    flight.choose('power', 'less-power');
    toPoint(flight);
    after(flight, 400);
    flight.call();
    expect(flight.pass.decisions[1]!.chosen).toMatchObject({ power: 'less-power' });
  });

  it('stands still while paused, and goes on from there', () => {
    const flight = fly();
    after(flight, 1000);
    flight.pause();
    after(flight, 60_000);
    flight.choose('power', 'more-power');
    flight.call();
    flight.callAtOnce(flight.calls.atOnce[0]!);
    expect([flight.stage, flight.elapsedMs, flight.chosen]).toEqual(['asking', 1000, {}]);
    flight.resume();
    after(flight, 500);
    expect(flight.elapsedMs).toBe(1500);
  });

  it('goes from point to point without movement when the pilot wants none', () => {
    const flight = fly({ still: () => true });
    after(flight, 400);
    const shown = flight.moment;
    flight.call();
    after(flight, 200);
    expect(flight.moment).toBe(shown);
    after(flight, 400);
    expect(flight.stage).toBe('asking');
    const steps = fly({ still: () => true, pace: 'steps' });
    after(steps, 400);
    steps.call();
    after(steps, 1);
    expect(steps.stage).toBe('asking');
  });

  it('does exactly what the engine does with the same calls', () => {
    const flight = fly();
    flyOn(flight, true);
    let alone: Pass = advanceToDecision(startPass(pilot.training.procedure, flight.setup.start));
    while (alone.open) alone = advanceToDecision(correct(alone, alone.open.decision.actions));
    expect(flight.pass.samples).toEqual(alone.samples);
    expect(flight.pass.ended).toEqual(alone.ended);
    expect(flight.assessment!.decisions.every(({ verdict }) => verdict === 'right')).toBe(true);
  });
});

describe('a pass that is over', () => {
  it('is on record, with rules missed counted on their cards, and can be taken back', () => {
    const flight = fly();
    expect(flyOn(flight, false)).toBeGreaterThan(3);
    const [kept] = pilot.training.passes;
    expect(kept).toMatchObject({ fromGate: 'over-spot', seed: 3, pace: 'compressed' });
    const missed = kept!.rules.filter((rule) => rule.missed > 0);
    expect(missed.length).toBeGreaterThan(0);
    for (const { card } of missed)
      expect(pilot.training.history(card)?.calls.at(-1)).toMatchObject({
        performance: 'outside',
        pass: true,
      });
    const { rules } = targetsOfPass(pilot.training, flight.assessment!);
    expect(new Set(rules.map(({ table, rule }) => `rule/${table}/${rule}`))).toEqual(
      new Set(missed.map(({ card }) => card)),
    );
    flight.takeBack();
    expect(flight.event).toBeNull();
    expect(pilot.training.passes).toEqual([]);
    for (const { card } of missed) expect(pilot.training.history(card)).toBeNull();
  });

  it('takes no key in the first second and a half', () => {
    const flight = fly();
    flyOn(flight, true);
    expect(flight.mayGoOn).toBe(false);
    clockMs += 1600;
    expect(flight.mayGoOn).toBe(true);
  });

  it('adds nothing to what an answer is expected to take', () => {
    const before = pilot.training.secondsFor('rule');
    flyOn(fly(), false);
    expect(pilot.training.secondsFor('rule')).toBe(before);
  });
});

describe('what is heard', () => {
  it('is the state and the seconds at a point, nothing in between, and the half of a long window', () => {
    const flight = fly({ timing: 2 });
    expect(sayFlight(flight)).toBe(`${aloud(flight.cue)}. 6 seconds.`);
    after(flight, 3100);
    expect(sayFlight(flight)).toBe('Half the time left: 3 seconds.');
    flight.call();
    expect(sayFlight(flight)).toBe('');
  });

  it('is the last call too, when the pilot wants to be told', () => {
    const flight = fly({ tells: true });
    const required = flight.asked!.decision.actions;
    const wrong = required['power'] === 'more-power' ? 'less-power' : 'more-power';
    flight.choose('power', wrong);
    after(flight, 400);
    flight.call();
    toPoint(flight);
    expect(sayFlight(flight)).toMatch(/^(Wrong|Partly right)\. Called for: .*power .*, not .*\. Coming down/);
    expect(fly({ tells: false }).told).toBeNull();
  });
});
