import { describe, expect, it } from 'vitest';
import { callsIn } from '../../../../src/app/state/pass-calls.ts';
import { lengthOfPass, sayClock, sayLength } from '../../../../src/app/state/pass-length.ts';
import { placeAt } from '../../../../src/app/state/pass-place.ts';
import { readingsAt } from '../../../../src/app/state/pass-readings.ts';
import {
  chartedTraces,
  crossedGates,
  missedRules,
  sayHowOften,
} from '../../../../src/app/state/pass-summary.ts';
import { markBetween, markOn } from '../../../../src/app/parts/moving-mark.ts';
import { legsThrough } from '../../../../src/app/parts/flown-path.ts';
import { gateIndexOf } from '../../../../src/deck/lookup.ts';
import { sayError } from '../../../../src/deck/say.ts';
import { advanceToDecision } from '../../../../src/motion/advance.ts';
import { assessPass } from '../../../../src/motion/assess.ts';
import { correct } from '../../../../src/motion/correct.ts';
import { startPass } from '../../../../src/motion/start.ts';
import { stateAt } from '../../../../src/motion/state-at.ts';
import type { DecisionPoint, Pass } from '../../../../src/motion/types.ts';
import { compileRules } from '../../../../src/rules/compile.ts';
import { shippedDeck } from '../../../reference/shipped-deck.ts';

const deck = shippedDeck('marram-recovery');
const procedure = compileRules(deck).procedure!;

function flown(fromGate: string, call: (point: DecisionPoint) => Readonly<Record<string, string>>): Pass {
  let pass = advanceToDecision(startPass(procedure, { fromGate, seed: 5 }));
  while (pass.open) pass = advanceToDecision(correct(pass, call(pass.open)));
  return pass;
}

const byTheRules = flown('turn-in', ({ decision }) => decision.actions);
const doingNothing = flown('turn-in', () => ({}));
const times = (pass: Pass): number[] => pass.samples.map(({ tMs }) => tMs);

describe('the place of a pass on the circuit', () => {
  it('goes from the gate it began at to the last, and at each gate’s crossing is at that gate', () => {
    const { after, share } = placeAt(byTheRules, stateAt(byTheRules, 0));
    expect([after, share]).toEqual([gateIndexOf(deck, 'turn-in'), 0]);
    for (const { gate, tMs } of byTheRules.crossings) {
      const place = placeAt(byTheRules, stateAt(byTheRules, tMs));
      expect(Math.abs(place.after + place.share - gateIndexOf(deck, gate))).toBeLessThan(0.06);
    }
  });

  it('never jumps', () => {
    let before: number | null = null;
    for (const tMs of times(byTheRules)) {
      const { after, share } = placeAt(byTheRules, stateAt(byTheRules, tMs));
      expect(share >= 0 && share <= 1).toBe(true);
      if (before !== null) expect(Math.abs(after + share - before)).toBeLessThan(0.2);
      before = after + share;
    }
  });

  it('is drawn on the leg between its two gates, pointing the way it is flown', () => {
    const legs = legsThrough([
      { x: 0, y: 100, courseDeg: 0 },
      { x: 0, y: 0, courseDeg: 0 },
    ]);
    const mark = markOn(legs, { after: 0, share: 0.5 })!;
    expect([mark.x, mark.y, mark.courseDeg].map(Math.round)).toEqual([0, 50, 0]);
    expect(markOn(legs, { after: 1, share: 0 })).toBeNull();
    expect(markBetween([10, 30], { after: 0, share: 0.25 }, 7)).toEqual({ x: 15, y: 7, courseDeg: 90 });
    expect(markBetween([10, 30], { after: 1, share: 0.5 }, 7)).toMatchObject({ x: 30 });
    expect(markBetween([10, 30], { after: 2, share: 0 }, 7)).toBeNull();
  });
});

describe('the instruments in a pass', () => {
  it('read what is shown, and tell the way it has moved', () => {
    const pass = doingNothing;
    const moment = stateAt(pass, 12_000);
    const before = stateAt(pass, 10_500);
    const [readings] = [readingsAt(pass, moment, moment.state)];
    for (const { quantity, value, trend } of readings) {
      expect(value).toBe(moment.state[quantity]);
      const change = moment.state[quantity]! - before.state[quantity]!;
      if (trend === 'rising') expect(change).toBeGreaterThan(0);
      if (trend === 'falling') expect(change).toBeLessThan(0);
    }
    expect(readings.find(({ quantity }) => quantity === 'turn-to-go')!.trend).toBe('falling');
  });
});

describe('the calls of a phase', () => {
  it('leave out the row that holds only what is called at once', () => {
    const { rows, atOnce, keys } = callsIn(procedure, 'final-turn');
    expect(rows.map(({ id }) => id)).toEqual(['pitch', 'power', 'lineup']);
    expect(atOnce.map(({ action, key }) => [action, key])).toEqual([['go-around', 'g']]);
    expect(keys.get('power')).toBeDefined();
  });
});

describe('the length of a pass', () => {
  it('is that of one flown in calm air as the rules say, and longer from an earlier gate', () => {
    const [long, short] = [lengthOfPass(procedure, 'groove'), lengthOfPass(procedure, 'over-spot')];
    expect(long.flownMs).toBeGreaterThan(short.flownMs);
    expect(long.calls).toBeGreaterThan(short.calls);
    expect(short.legs).toBe(1);
    expect(lengthOfPass(procedure, 'groove')).toBe(long);
  });

  it.each([
    [25_000, '25 s', '0:25'],
    [60_000, '1 min', '1:00'],
    [191_400, '3 min 11 s', '3:11'],
  ])('of %i ms is said in words and as a clock', (ms, words, clock) => {
    expect([sayLength(ms), sayClock(ms)]).toEqual([words, clock]);
  });
});

describe('what is said after a pass', () => {
  it('has every gate with its values and errors in words', () => {
    const { crossings } = assessPass(doingNothing);
    const gates = crossedGates(deck, crossings);
    expect(gates.map(({ id }) => id)).toEqual(crossings.map(({ gate }) => gate));
    const [first] = crossings;
    const [value] = first!.values;
    const quantity = deck.quantities.find(({ id }) => id === value!.quantity)!;
    expect(gates[0]!.values[0]!.error).toBe(sayError(value!.grade.signedError, quantity));
  });

  it('has nothing missed when the rules were followed', () => {
    expect(missedRules(byTheRules, assessPass(byTheRules))).toEqual([]);
  });

  it('has each rule missed once, with every call that missed it, critical ones first', () => {
    const assessment = assessPass(doingNothing);
    const missed = missedRules(doingNothing, assessment);
    const faults = assessment.decisions.flatMap((mark) => mark.faults);
    expect(missed.length).toBeGreaterThan(1);
    expect(new Set(missed.map(({ key }) => key)).size).toBe(missed.length);
    expect(missed.flatMap(({ calls }) => calls)).toHaveLength(faults.length);
    const critical = missed.map((rule) => rule.critical);
    expect(critical).toEqual([...critical].sort((one, other) => Number(other) - Number(one)));
    for (const { rule, because, asked, calls } of missed) {
      expect(rule).not.toBe('');
      expect(because).not.toBe('');
      expect(calls.length).toBeLessThanOrEqual(asked);
    }
  });

  it.each([
    [2, 7, 'missed 2 of the 7 times it was due'],
    [2, 2, 'missed both times it was due'],
    [7, 7, 'missed all 7 times it was due'],
    [1, 1, 'due once, and missed'],
    [1, 0, 'once'],
    [3, 0, '3 times'],
  ])('says how often a rule was missed: %i of %i', (missed, asked, words) => {
    expect(sayHowOften(missed, asked)).toBe(words);
  });

  it('says of a go-around that nothing asked for which control it was', () => {
    const pass = flown('over-spot', () => ({ call: 'go-around' }));
    const [call] = missedRules(pass, assessPass(pass)).filter(({ control }) => control === 'Call');
    expect(call).toMatchObject({ required: 'Continue', rule: '', asked: 0 });
  });

  it('charts at most five quantities, the height first, and which way each call moved them', () => {
    const charts = chartedTraces(byTheRules);
    expect(charts.length).toBe(5);
    expect(charts[0]!.quantity).toBe('altitude');
    for (const { actions, raises } of charts) expect(raises).toHaveLength(actions.length);
    const sink = charts.find(({ quantity }) => quantity === 'sink')!;
    const ways = new Set(
      sink.actions.flatMap(({ action }, i) =>
        action.endsWith('-power') ? [`${action} ${sink.raises[i]}`] : [],
      ),
    );
    expect([...ways].every((way) => ['less-power true', 'more-power false'].includes(way))).toBe(true);
  });

  it('has a chart also of a pass that ended before its first gate', () => {
    const pass = flown('over-spot', () => ({ call: 'go-around' }));
    expect(pass.crossings).toEqual([]);
    expect(chartedTraces(pass)[0]!.quantity).toBe('altitude');
  });
});
