/** States from outside, before they are trusted. */
import { quantityOf } from '../deck/lookup.ts';
import { sayRange } from '../deck/say.ts';
import type { Procedure } from './types.ts';

/**
 * What keeps a value read from outside from being a state of the phase, in words; empty when it is one.
 * Every quantity of the phase must be there, as a finite number within the phase's range, and nothing else.
 */
export function checkState(procedure: Procedure, phaseId: string, state: unknown): string[] {
  const rules = procedure.phases.get(phaseId);
  if (!rules) {
    const known = [...procedure.phases.keys()].join(', ') || 'none';
    return [`The deck has no phase “${phaseId}”; it has: ${known}.`];
  }
  if (typeof state !== 'object' || state === null || Array.isArray(state))
    return ['A state is an object of quantities and numbers, such as {"altitude": 140}.'];
  const { state: ranges } = rules.phase;
  const given = new Map<string, unknown>(Object.entries(state));
  const faults = Object.entries(ranges).flatMap(([id, range]) => {
    const value = given.get(id);
    const quantity = quantityOf(procedure.deck, id);
    if (value === undefined) return [`“${id}” is missing: ${quantity.label}, ${sayRange(range, quantity)}.`];
    if (typeof value !== 'number' || !Number.isFinite(value))
      return [
        `“${id}” is ${JSON.stringify(value)}, not a number: ${quantity.label}, ${sayRange(range, quantity)}.`,
      ];
    if (value < range[0] || value > range[1])
      return [
        `“${id}” is ${value}, which can't occur in “${rules.phase.label}”: ${sayRange(range, quantity)}.`,
      ];
    return [];
  });
  const unknown = [...given.keys()].filter((id) => !Object.hasOwn(ranges, id));
  return [
    ...faults,
    ...unknown.map(
      (id) => `“${id}” is not seen in “${rules.phase.label}”; it has: ${Object.keys(ranges).join(', ')}.`,
    ),
  ];
}
