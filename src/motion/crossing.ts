/** A gate, and with what values it was crossed. */
import { gateOf, quantityOf } from '../deck/lookup.ts';
import { gradeValue } from '../rules/band.ts';
import { nearestMultiple } from '../rules/steps.ts';
import type { Performance, Procedure, State } from '../rules/types.ts';
import type { CrossedValue, Crossing } from './types.ts';

/** Grades the gate's values that are worked out there, each in the steps it is called in. */
export function crossingOf(
  { deck }: Procedure,
  phase: string,
  flown: readonly string[],
  gate: string,
  state: State,
  tMs: number,
): Crossing {
  const values = Object.entries(gateOf(deck, gate).values).flatMap(([id, band]): CrossedValue[] => {
    const value = state[id];
    if (value === undefined || !flown.includes(id)) return [];
    const quantity = quantityOf(deck, id);
    const called = nearestMultiple(value, quantity.step);
    return [{ quantity: id, value: called, band, grade: gradeValue(called, band, quantity) }];
  });
  return {
    gate,
    tMs,
    phase,
    values,
    performance: worst(values.map(({ grade }) => grade.performance)),
  };
}

const order: readonly Performance[] = ['desired', 'adequate', 'outside'];

/** Null of none. */
export function worst(performances: readonly Performance[]): Performance | null {
  const places = performances.map((performance) => order.indexOf(performance));
  return order[Math.max(...places)] ?? null;
}
