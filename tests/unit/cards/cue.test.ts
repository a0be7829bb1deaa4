import { describe, expect, it, test } from 'vitest';
import { cueOf } from '../../../src/cards/cue.ts';
import { gaugesOf, rateOf } from '../../../src/cards/gauges.ts';
import { phaseOf } from '../../../src/deck/lookup.ts';
import { smallDeck } from './small-deck.ts';

const approach = phaseOf(smallDeck, 'approach');
const arrival = phaseOf(smallDeck, 'arrival');

describe('the cue', () => {
  test.each([
    [180, 60, 100, 'On the approach, 180\u00a0ft, closing fast, sink 100\u00a0ft/min'],
    [1000, 45, -50, 'On the approach, 1,000\u00a0ft, closure 45\u00a0kt, sink −50\u00a0ft/min'],
    [300, 0, 0, 'On the approach, 300\u00a0ft, holding station, sink 0\u00a0ft/min'],
  ])('at %d ft, closure %d, sink %d', (altitude, closure, sink, words) => {
    expect(cueOf(smallDeck, approach, { altitude, closure, sink })).toBe(words);
  });

  it('starts with the phase’s label where it has no cue', () => {
    expect(cueOf(smallDeck, arrival, { altitude: 100, closure: 20 })).toBe(
      'Near to over, 100\u00a0ft, closure 20\u00a0kt',
    );
  });
});

describe('the gauges', () => {
  it('show the phase’s quantities in its order, each over what can occur there', () => {
    expect(gaugesOf(smallDeck, arrival, { altitude: 100, closure: 20 })).toEqual([
      {
        quantity: 'altitude',
        label: 'Altitude',
        unit: 'ft',
        value: 100,
        span: { lo: 50, hi: 300, loOpen: false, hiOpen: false },
        step: 5,
        trend: null,
      },
      {
        quantity: 'closure',
        label: 'Closure',
        unit: 'kt',
        value: 20,
        span: { lo: -10, hi: 60, loOpen: false, hiOpen: false },
        step: 1,
        trend: null,
      },
    ]);
  });

  // Altitude changes by minus a sixtieth of the sink each second; in the 5 s of the window half a step is 2.5 ft,
  // which 30 ft/min just makes.
  test.each([
    [600, 'falling'],
    [40, 'falling'],
    [20, 'steady'],
    [0, 'steady'],
    [-20, 'steady'],
    [-200, 'rising'],
  ])('with %d ft/min of sink the altitude is %s', (sink, trend) => {
    const state = { altitude: 300, closure: 20, sink };
    expect(gaugesOf(smallDeck, approach, state).map((gauge) => gauge.trend)).toEqual([
      trend,
      'falling',
      null,
    ]);
  });

  it('add constant and factors to a rate', () => {
    const phase = {
      ...approach,
      rates: { altitude: { constant: 2, factors: { sink: -0.5, closure: 0.25 } } },
    };
    expect(rateOf(phase, 'altitude', { altitude: 0, sink: 10, closure: 8 })).toBe(-1);
    expect(rateOf(phase, 'sink', { altitude: 0, sink: 10, closure: 8 })).toBeNull();
  });
});
