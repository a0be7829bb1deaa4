/** A gate, and with what values it was crossed. */
import { gateOf, quantityOf } from '../deck/lookup.ts';
import { gradeValue } from '../rules/band.ts';
import { nearestMultiple } from '../rules/steps.ts';
import type { Performance, Procedure, State } from '../rules/types.ts';
import type { Coming, CrossedValue, Crossing } from './types.ts';

/**
 * Grades the gate's values that are worked out there, each in the steps it is called in.
 * @param coming what is still on its way there as the gate is crossed: it is graded as what it comes to.
 */
export function crossingOf(
  { deck }: Procedure,
  phase: string,
  flown: readonly string[],
  gate: string,
  state: State,
  tMs: number,
  coming: readonly Coming[] = [],
): Crossing {
  const values = Object.entries(gateOf(deck, gate).values).flatMap(([id, band]): CrossedValue[] => {
    const value = state[id];
    if (value === undefined || !flown.includes(id)) return [];
    const quantity = quantityOf(deck, id);
    const called = nearestMultiple(value, quantity.step);
    const there = coming.find((one) => one.quantity === id);
    const graded = { quantity: id, value: called, band, grade: gradeValue(called, band, quantity) };
    return [there ? { ...graded, thereMs: there.toMs } : graded];
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
