/** A phase made ready to be flown: which quantities move, by what, and when it ends. */
import { controlOf, quantityOf } from '../deck/lookup.ts';
import type { Deck, Moment, PassPlan, Phase } from '../deck/types.ts';
import type { PhaseRules, Procedure, State } from '../rules/types.ts';
import type { HeldAction } from './types.ts';
import { valueOfSum } from './sum.ts';

export interface FlownPhase {
  readonly rules: PhaseRules;
  readonly phase: Phase;
  readonly plan: PassPlan;
  /** Quantities that are worked out here: those shown, then those flown unseen. */
  readonly flown: readonly string[];
  /** Action -> quantity -> effect per second, of this phase. */
  readonly effects: ReadonlyMap<string, Readonly<Record<string, number>>>;
  readonly ranges: ReadonlyMap<string, readonly [number, number]>;
  readonly steps: ReadonlyMap<string, number>;
}

const ready = new WeakMap<PhaseRules, FlownPhase>();

/** Null when the deck doesn't say how the phase is flown. */
export function flownPhase({ deck, phases }: Procedure, id: string): FlownPhase | null {
  const rules = phases.get(id);
  const plan = rules?.phase.pass;
  if (!rules || !plan) return null;
  const known = ready.get(rules);
  if (known) return known;
  const { phase } = rules;
  const flown = [...new Set([...Object.keys(phase.state), ...Object.keys(plan.entry ?? {})])];
  const quantities = flown.map((name) => quantityOf(deck, name));
  const made: FlownPhase = {
    rules,
    phase,
    plan,
    flown,
    effects: effectsIn(deck, phase, plan),
    ranges: new Map(quantities.map(({ id: name, range }) => [name, range])),
    steps: new Map(quantities.map(({ id: name, step }) => [name, step])),
  };
  ready.set(rules, made);
  return made;
}

/** The phase that begins where another ends, when it can be flown. */
export function phaseFrom(procedure: Procedure, gate: string): FlownPhase | null {
  for (const { phase } of procedure.phases.values())
    if (phase.from === gate) {
      const flown = flownPhase(procedure, phase.id);
      if (flown) return flown;
    }
  return null;
}

function effectsIn(deck: Deck, phase: Phase, plan: PassPlan): FlownPhase['effects'] {
  const effects = new Map<string, Readonly<Record<string, number>>>();
  for (const control of phase.controls)
    for (const action of controlOf(deck, control).actions) {
      const here = plan.effects?.[action.id] ?? action.effects;
      if (here) effects.set(action.id, here);
    }
  return effects;
}

/** What each flown quantity changes by in a second: by itself, by the actions that work, by restless air. */
export function ratesIn(
  { phase, plan, flown, effects }: FlownPhase,
  state: State,
  actions: readonly HeldAction[],
  airOf: (quantity: string) => number,
): Record<string, number> {
  const rates: Record<string, number> = {};
  for (const id of flown) {
    const own = phase.rates?.[id];
    let rate = own ? (valueOfSum(own, state) ?? 0) : 0;
    for (const { action } of actions) rate += effects.get(action)?.[id] ?? 0;
    const gust = plan.gusts?.[id];
    if (gust !== undefined) rate += gust * airOf(id);
    rates[id] = rate;
  }
  return rates;
}

/** True when the moment lies between two states, or in the second. */
export function isAt(moment: Moment, before: State, after: State, secondsIn: number): boolean {
  switch (moment.kind) {
    case 'after':
      return secondsIn >= moment.seconds;
    case 'falling':
      return (
        (before[moment.quantity] ?? NaN) > moment.value && (after[moment.quantity] ?? NaN) <= moment.value
      );
    case 'rising':
      return (
        (before[moment.quantity] ?? NaN) < moment.value && (after[moment.quantity] ?? NaN) >= moment.value
      );
  }
}
