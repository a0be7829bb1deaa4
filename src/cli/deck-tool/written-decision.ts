import type { Decision } from '../../rules/types.ts';

/** A decision as a part of a line of output: the form is a promise to other programs. */
export function writtenDecision(decision: Decision): object {
  return {
    actions: decision.actions,
    overriding: decision.overriding?.action ?? null,
    rules: decision.reasons.map(({ table, rule }) => `${table}/${rule}`),
  };
}
