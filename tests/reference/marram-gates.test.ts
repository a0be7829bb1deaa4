/**
 * The gates of the Marram deck and its rules must say the same: who is where a gate wants him is left
 * alone, who is past a limit of a gate never is.
 */
import { describe, expect, test } from 'vitest';
import { phaseOf } from '../../src/deck/lookup.ts';
import { compileRules } from '../../src/rules/compile.ts';
import { decide } from '../../src/rules/decide.ts';
import type { State } from '../../src/rules/types.ts';
import { deck, gate, windOverDeckKt } from './marram-legs.ts';

const procedure = compileRules(deck).procedure!;

/** A gate seen from a phase that begins there, ends there or passes it. */
interface View {
  readonly gate: string;
  readonly phase: string;
  /** What the gate doesn't name, at a value that goes with its targets; or what the phase sees otherwise. */
  readonly others: Readonly<Record<string, readonly number[]>>;
}

const views: readonly View[] = [
  { gate: 'abeam', phase: 'abeam-leg', others: {} },
  { gate: 'turn-in', phase: 'abeam-leg', others: { range: [1.2], sink: [0] } },
  { gate: 'turn-in', phase: 'final-turn', others: { 'turn-to-go': [180], sink: [340] } },
  { gate: 'ninety', phase: 'final-turn', others: { 'turn-to-go': [90] } },
  // Rolling out gives lift back: the turn still comes down 100 ft/min faster than the groove begins with.
  { gate: 'groove', phase: 'final-turn', others: { 'turn-to-go': [0], bank: [10], sink: [330, 380, 430] } },
  { gate: 'groove', phase: 'groove-leg', others: { 'to-go': [5600], lineup: [0] } },
  { gate: 'deceleration', phase: 'groove-leg', others: { aoa: [10] } },
  { gate: 'deceleration', phase: 'early-deceleration', others: {} },
  { gate: 'far-check', phase: 'early-deceleration', others: { lineup: [0] } },
  { gate: 'far-check', phase: 'wing-to-jet', others: { lineup: [0] } },
  { gate: 'near-check', phase: 'wing-to-jet', others: { lineup: [0] } },
  { gate: 'near-check', phase: 'closing', others: { lineup: [0] } },
  { gate: 'alongside', phase: 'closing', others: { 'to-go': [0] } },
  { gate: 'alongside', phase: 'crossing', others: { across: [90], drift: [3] } },
  { gate: 'over-spot', phase: 'crossing', others: { across: [0], sink: [0] } },
  // The way down begins here: from now on no height is kept.
  { gate: 'over-spot', phase: 'vertical', others: { altitude: [130], sink: [200] } },
  { gate: 'touchdown', phase: 'vertical', others: { altitude: [62] } },
];

/** A gate may give airspeed where the phase shows closure, and the other way round. */
function bandIn(gateId: string, quantity: string) {
  const { values } = gate(gateId);
  if (values[quantity]) return { band: values[quantity], add: 0 };
  if (quantity === 'closure' && values.airspeed) return { band: values.airspeed, add: -windOverDeckKt };
  if (quantity === 'airspeed' && values.closure) return { band: values.closure, add: windOverDeckKt };
  return null;
}

/** For each quantity of the phase: where the gate wants it, both ends and the target. */
function choicesIn(view: View): [string, readonly number[]][] {
  return Object.keys(phaseOf(deck, view.phase).state).map((quantity) => {
    const others = view.others[quantity];
    if (others) return [quantity, others];
    const found = bandIn(view.gate, quantity);
    if (!found) throw new Error(`${view.gate} in ${view.phase}: nothing says ${quantity}.`);
    const { target, desired } = found.band;
    return [quantity, [...new Set([target, ...desired])].map((value) => value + found.add)];
  });
}

function statesOf(view: View): State[] {
  let states: Record<string, number>[] = [{}];
  for (const [quantity, values] of choicesIn(view))
    states = states.flatMap((state) => values.map((value) => ({ ...state, [quantity]: value })));
  return states;
}

/** The target of each; of what is given as several values, the middle one. */
const targetsOf = (view: View): Record<string, number> =>
  Object.fromEntries(
    choicesIn(view).map(([quantity, values]) => [
      quantity,
      view.others[quantity] ? values[Math.floor(values.length / 2)]! : values[0]!,
    ]),
  );

const neutral = (phase: string) => Object.fromEntries(procedure.phases.get(phase)!.neutral);
const actionsOf = (phase: string, state: State) => decide(procedure, phase, state).actions;

describe('inside the desired bands of a gate', () => {
  test.each(views)('nothing is corrected: $gate, seen in $phase', (view) => {
    const states = statesOf(view);
    expect(states.length).toBeGreaterThan(2);
    for (const state of states)
      expect({ state, actions: actionsOf(view.phase, state) }).toEqual({
        state,
        actions: neutral(view.phase),
      });
  });

  test('every gate that a phase begins or ends at is looked at from it', () => {
    const joints = deck.phases!.flatMap(({ id, from, to }) => [`${from} ${id}`, `${to} ${id}`]);
    expect(new Set(views.map((view) => `${view.gate} ${view.phase}`))).toEqual(
      new Set([...joints, 'ninety final-turn']),
    );
  });
});

/** A state with one quantity put one step past an end of a band, the rest on target. */
function past(view: View, quantity: string, end: number, direction: 1 | -1): State {
  const { step } = deck.quantities.find(({ id }) => id === quantity)!;
  return { ...targetsOf(view), [quantity]: Number((end + direction * step).toFixed(3)) };
}

describe('past a floor or ceiling of a gate', () => {
  const limits = views.flatMap((view) =>
    Object.keys(phaseOf(deck, view.phase).state).flatMap((quantity) => {
      const found = view.others[quantity] ? null : bandIn(view.gate, quantity);
      const ends = [
        ['floor', found?.band.floor, -1],
        ['ceiling', found?.band.ceiling, 1],
      ] as const;
      return ends.flatMap(([limit, value, direction]) =>
        value === undefined ? [] : [{ view, quantity, limit, at: value + found!.add, direction }],
      );
    }),
  );

  test.each(limits)('something is called: $view.gate $quantity $limit in $view.phase', (limit) => {
    const state = past(limit.view, limit.quantity, limit.at, limit.direction);
    expect({ state, actions: actionsOf(limit.view.phase, state) }).not.toEqual({
      state,
      actions: neutral(limit.view.phase),
    });
  });

  test('every limit of a gate that a phase shows is looked at', () => {
    const seen = new Set(limits.map(({ view, quantity, limit }) => `${view.gate} ${quantity} ${limit}`));
    // Flown before the first phase, or not shown in a phase.
    const unseen = ['break load-factor', 'downwind airspeed', 'touchdown pitch'];
    for (const { id, values } of deck.gates)
      for (const [quantity, band] of Object.entries(values)) {
        if (unseen.includes(`${id} ${quantity}`)) continue;
        if (band.floor !== undefined) expect(seen, id).toContain(`${id} ${quantity} floor`);
        if (band.ceiling !== undefined) expect(seen, id).toContain(`${id} ${quantity} ceiling`);
      }
  });
});

describe('past the adequate band of a gate', () => {
  // The distance is what the gate is found by; more thrust than needed shows as too little sink.
  const free = ['to-go', 'thrust'];
  const ends = views.flatMap((view) =>
    Object.keys(phaseOf(deck, view.phase).state).flatMap((quantity) => {
      const found = view.others[quantity] || free.includes(quantity) ? null : bandIn(view.gate, quantity);
      if (!found) return [];
      const [lo, hi] = found.band.adequate;
      return [
        { view, quantity, at: lo + found.add, direction: -1 as const },
        { view, quantity, at: hi + found.add, direction: 1 as const },
      ];
    }),
  );

  test.each(ends)('something is called: $view.gate $quantity past $at in $view.phase', (end) => {
    const state = past(end.view, end.quantity, end.at, end.direction);
    expect({ state, actions: actionsOf(end.view.phase, state) }).not.toEqual({
      state,
      actions: neutral(end.view.phase),
    });
  });
});
