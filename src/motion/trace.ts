/** A quantity over a pass, as a line of a strip chart. */
import { flownPhase } from './phase-motion.ts';
import type { Pass, Trace } from './types.ts';

export function traceOf({ procedure, samples, crossings, held, nowMs }: Pass, quantity: string): Trace {
  const stretches: { tMs: number; value: number }[][] = [];
  let isFlowing = false;
  for (const { tMs, phase, state } of samples) {
    const value = state[quantity];
    const isFlown = flownPhase(procedure, phase)?.flown.includes(quantity) ?? false;
    if (isFlown && value !== undefined) {
      if (!isFlowing) stretches.push([]);
      stretches.at(-1)!.push({ tMs, value });
    }
    isFlowing = isFlown;
  }
  return {
    quantity,
    stretches,
    bands: crossings.flatMap(({ gate, tMs, values }) =>
      values
        .filter((one) => one.quantity === quantity)
        .map(({ band, value, thereMs = tMs }) => ({ gate, tMs, thereMs, value, band })),
    ),
    actions: held
      .filter(
        ({ action, fromMs }) => fromMs < nowMs && affects(procedure.deck.controls ?? [], action, quantity),
      )
      .map((one) => ({ ...one, toMs: Math.min(one.toMs, nowMs) })),
  };

  function affects(
    controls: NonNullable<Pass['procedure']['deck']['controls']>,
    id: string,
    name: string,
  ): boolean {
    const inPhases = [...procedure.phases.keys()].map((phase) =>
      flownPhase(procedure, phase)?.effects.get(id),
    );
    const usual = controls.flatMap(({ actions }) => actions).find((action) => action.id === id)?.effects;
    return [usual, ...inPhases].some((effects) => effects?.[name] !== undefined);
  }
}
