/**
 * Below about 60 kt the wing carries little, and power must come up before the height goes (common practice,
 * no source). Model of the wing: lift goes with the square of the airspeed at one angle of attack
 * (`src/motion/lift.ts`). Of the rest: the Marram deck's own motion between its far and near check, where the
 * engine answers late and a want of thrust turns into sink.
 */
import { describe, expect, test } from 'vitest';
import { phaseOf } from '../../src/deck/lookup.ts';
import { shareLostPerSecond, wingShare } from '../../src/motion/lift.ts';
import { valueOfSum } from '../../src/motion/sum.ts';
import { deck, gate, target, windOverDeckKt } from './marram-legs.ts';
import { publishedValue } from './published-values.ts';
import { bandOf } from './shipped-deck.ts';

/** At 10 units the Quillon's wing carries all of it at 165 kt: an invented number. */
const wingborneKt = 165;
const phase = phaseOf(deck, 'wing-to-jet');
const brakingKtS = -phase.rates!.airspeed!.constant!;
/** What the deck says of its engine: "the engine needs two seconds to answer". */
const lagS = 2;

describe('the wing while the aeroplane slows down', () => {
  const slowKt = publishedValue('wing-carries-little-below').value;

  test('carries less than a seventh at 60 kt, and a quarter of that at 30', () => {
    expect(wingShare(slowKt, wingborneKt)).toBeLessThan(1 / 7);
    expect(wingShare(slowKt / 2, wingborneKt)).toBeCloseTo(wingShare(slowKt, wingborneKt) / 4, 12);
  });

  test('carries all of it from its own speed on, and nothing at a stand', () => {
    expect(wingShare(wingborneKt, wingborneKt)).toBe(1);
    expect(wingShare(200, wingborneKt)).toBe(1);
    expect(wingShare(0, wingborneKt)).toBe(0);
    expect(wingShare(-5, wingborneKt)).toBe(0);
  });

  test('gives up its share at the rate that the braking makes (fine steps)', () => {
    const step = 0.001;
    for (const kt of [150, 120, 90, 60, 30]) {
      const lost = wingShare(kt, wingborneKt) - wingShare(kt - brakingKtS * step, wingborneKt);
      expect(shareLostPerSecond(kt, wingborneKt, brakingKtS)).toBeCloseTo(lost / step, 5);
    }
    expect(shareLostPerSecond(170, wingborneKt, brakingKtS)).toBe(0);
  });

  test('has by 60 kt given up most of what it will: the fastest loss lies before, so power comes before', () => {
    const at = (kt: number) => shareLostPerSecond(kt, wingborneKt, brakingKtS);
    expect(at(90)).toBeGreaterThan(1.4 * at(slowKt));
    expect(1 - wingShare(slowKt, wingborneKt)).toBeGreaterThan(0.85);
  });

  test('is what the thrust fed in on Marram makes up for, within 2 % of the weight from 90 to 60 kt', () => {
    const { constant, factors } = phase.pass!.entry!.thrust!;
    for (let kt = 60; kt <= 90; kt += 5) {
      const fed = constant! + factors!.airspeed! * kt;
      expect(Math.abs(fed - 100 * (1 - wingShare(kt, wingborneKt)))).toBeLessThan(2);
    }
  });
});

/** Who feeds in the thrust: ahead of the loss; not at all; or two seconds after the sink has shown. */
type Hands = 'ahead' | 'never' | 'when the sink shows';

/** From the far check to the near check by the deck's rates, in fine steps. */
function flyToNearCheck(hands: Hands): { altitude: number; sink: number } {
  const step = 0.01;
  let state: Record<string, number> = {
    altitude: target('far-check', 'altitude'),
    airspeed: target('far-check', 'closure') + windOverDeckKt,
    thrust: target('far-check', 'thrust'),
    sink: target('far-check', 'sink'),
    'to-go': target('far-check', 'to-go'),
    'wind-over-deck': windOverDeckKt,
  };
  const shows = bandOf(gate('near-check'), 'sink').adequate[1];
  let shownFor = 0;
  while (state['to-go']! > target('near-check', 'to-go')) {
    if (shownFor > 0 || state.sink! > shows) shownFor += step;
    const isFed = hands === 'ahead' || (hands === 'when the sink shows' && shownFor > lagS);
    const next = { ...state };
    for (const [quantity, rate] of Object.entries(phase.rates!)) {
      const before = state[quantity];
      if (before === undefined || (quantity === 'thrust' && !isFed)) continue;
      next[quantity] = before + valueOfSum(rate, state)! * step;
    }
    state = next;
  }
  return { altitude: state.altitude!, sink: state.sink! };
}

describe('from the far check to the near check on Marram', () => {
  const sink = bandOf(gate('near-check'), 'sink');
  const altitude = bandOf(gate('near-check'), 'altitude');
  const mostSink = phaseOf(deck, 'closing').limits!.sink!.ceiling!;

  test('power that comes ahead of the loss keeps sink and height', () => {
    const arrived = flyToNearCheck('ahead');
    expect(arrived.sink).toBeLessThan(sink.adequate[1]);
    expect(arrived.sink).toBeGreaterThan(sink.adequate[0]);
    expect(arrived.altitude).toBeGreaterThan(altitude.desired[0]);
    expect(arrived.altitude).toBeLessThan(altitude.desired[1]);
  });

  test('power that never comes arrives with a sink past the limit of what follows', () => {
    expect(flyToNearCheck('never').sink).toBeGreaterThan(mostSink);
  });

  test('power that waits for the sink to show is too late by the engine’s two seconds', () => {
    const late = flyToNearCheck('when the sink shows');
    const ahead = flyToNearCheck('ahead');
    expect(late.sink).toBeGreaterThan(mostSink);
    expect(late.altitude).toBeLessThan(altitude.desired[0]);
    expect(ahead.altitude - late.altitude).toBeGreaterThan(10);
    expect(late.sink).toBeLessThan(flyToNearCheck('never').sink);
  });
});
