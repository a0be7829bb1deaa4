import { describe, expect, it, test } from 'vitest';
import { cueOf, readCue } from '../../../src/cards/cue.ts';
import { gaugesOf, rateOf } from '../../../src/cards/gauges.ts';
import { phaseOf } from '../../../src/deck/lookup.ts';
import { decide } from '../../../src/rules/decide.ts';
import { contains } from '../../../src/rules/intervals.ts';
import { seeded } from '../../../src/rules/random.ts';
import { sample } from '../../../src/rules/sample.ts';
import { isSettled } from '../../../src/rules/settled.ts';
import type { PhaseRules, Procedure, State } from '../../../src/rules/types.ts';
import { quantityOf } from '../../../src/deck/lookup.ts';
import { changed, shipped, small } from './procedures.ts';
import { smallDeck } from './small-deck.ts';

const approach = phaseOf(smallDeck, 'approach');
const arrival = phaseOf(smallDeck, 'arrival');

describe('the cue', () => {
  test.each([
    [180, 60, 100, 'On the approach, 180\u00a0ft, closing fast, sink 100\u00a0ft/min'],
    [1000, 45, -50, 'On the approach, 1,000\u00a0ft, closure 45\u00a0kt, sink −50\u00a0ft/min'],
    [300, 0, 0, 'On the approach, 300\u00a0ft, holding station, sink 0\u00a0ft/min'],
  ])('at %d ft, closure %d, sink %d', (altitude, closure, sink, words) => {
    expect(cueOf(small, approach, { altitude, closure, sink })).toBe(words);
  });

  it('starts with the phase’s label where it has no cue', () => {
    expect(cueOf(small, arrival, { altitude: 100, closure: 20 })).toBe(
      'Near to over, 100\u00a0ft, closure 20\u00a0kt',
    );
  });
});

describe('a word that fits states with other required actions', () => {
  // “Closing fast” begins at 20 here, and the rule asks for the nose at more than 40.
  const vague = changed({
    quantities: smallDeck.quantities.map((quantity) =>
      quantity.id === 'closure'
        ? {
            ...quantity,
            words: [
              { when: '> 20', say: 'closing fast' },
              { when: '(1..20]', say: 'creeping in' },
            ],
          }
        : quantity,
    ),
  });

  test.each([
    [50, 'closure 50\u00a0kt'],
    [30, 'closure 30\u00a0kt'],
    [12, 'closure 12\u00a0kt'],
  ])('gives place to name and number: %d kt', (closure, words) => {
    const state = { altitude: 180, closure, sink: 100 };
    expect(cueOf(vague, approach, state)).toBe(
      `On the approach, 180\u00a0ft, ${words}, sink 100\u00a0ft/min`,
    );
  });

  it('is the only one that does', () => {
    const state = { altitude: 180, closure: 60, sink: 100 };
    expect(cueOf(small, approach, state)).toContain('closing fast, sink');
  });
});

describe('a cue of some of the quantities', () => {
  it('says those, in the phase’s order', () => {
    const state = { altitude: 180, closure: 60, sink: 100 };
    expect(cueOf(small, approach, state, ['sink', 'altitude'])).toBe(
      'On the approach, 180\u00a0ft, sink 100\u00a0ft/min',
    );
  });
});

describe('reading a cue', () => {
  test.each([
    '',
    'On the approach, 180 ft and so on',
    'In the groove, 180\u00a0ft',
    'On the approach, nothing known',
  ])('gives nothing for what is none: “%s”', (cue) => {
    expect(readCue(small, approach, cue)).toBeNull();
  });
});

const anyState = ({ deck }: Procedure, { box }: PhaseRules, random: () => number): State =>
  Object.fromEntries(
    [...box].map(([id, range]) => [id, sample([range], quantityOf(deck, id).step, random)!]),
  );

describe.each(shipped)('the cues of %s', (_, procedure) => {
  const phases = [...procedure.phases.values()];

  it('read back to values among which the state is, and which all require the same', () => {
    const random = seeded(20);
    for (const rules of phases)
      for (let i = 0; i < 150; i++) {
        const state = anyState(procedure, rules, random);
        const cue = cueOf(procedure, rules.phase, state);
        const box = readCue(procedure, rules.phase, cue);
        expect(box, cue).not.toBeNull();
        expect([...box!.keys()], cue).toEqual([...rules.box.keys()]);
        for (const [id, set] of box!) expect(contains(set, state[id]!), `${cue}: ${id}`).toBe(true);
        expect(isSettled(procedure, rules.phase.id, state, box!), cue).toBe(true);
        // The same by trying: no state that fits the words asks for something else.
        const { actions } = decide(procedure, rules.phase.id, state);
        for (let k = 0; k < 5; k++) {
          const alike = Object.fromEntries(
            [...box!].map(([id, set]) => [id, sample(set, quantityOf(procedure.deck, id).step, random)!]),
          );
          expect(decide(procedure, rules.phase.id, alike).actions, cue).toEqual(actions);
        }
      }
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
