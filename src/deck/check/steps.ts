/** Values that nobody can call or read off exactly: they lie between two steps of their quantity. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import type { DeckParts } from '../parts.ts';
import { sayFigure } from '../quoting.ts';
import { decimalsOf, sayList } from '../say.ts';
import type { Quantity } from '../types.ts';

export function* checkSteps(parts: DeckParts): Generator<Draft> {
  const judge = function* (id: string, value: number | undefined, path: DocumentPath): Generator<Draft> {
    const quantity = parts.known.quantity.get(id);
    if (quantity && !parts.isBroken(quantity) && value !== undefined) yield* ifOffStep(value, quantity, path);
  };
  for (const gate of parts.gates)
    for (const [id, band] of Object.entries(gate.values)) {
      yield* judge(id, band.target, parts.pathOf(band, 'target'));
      for (const key of ['desired', 'adequate'] as const)
        for (const [end, value] of band[key].entries()) yield* judge(id, value, parts.pathOf(band, key, end));
      for (const key of ['floor', 'ceiling'] as const) yield* judge(id, band[key], parts.pathOf(band, key));
    }
  for (const phase of parts.phases)
    for (const [id, limit] of Object.entries(phase.limits ?? {}))
      for (const key of ['floor', 'ceiling'] as const) yield* judge(id, limit[key], parts.pathOf(limit, key));
  for (const setting of parts.day)
    yield* judge(setting.quantity, setting.default, parts.pathOf(setting, 'default'));
}

/** A step of 0.1 is no exact binary number: a millionth of a step is no difference. */
const tolerance = 1e-6;

function* ifOffStep(value: number, { step, label }: Quantity, path: DocumentPath): Generator<Draft> {
  if (!(step > 0)) return;
  const steps = value / step;
  if (Math.abs(steps - Math.round(steps)) < tolerance) return;
  const decimals = decimalsOf(step);
  const near = [Math.floor(steps), Math.ceil(steps)].map((count) =>
    sayFigure(Number((count * step).toFixed(decimals))),
  );
  yield {
    code: 'off-step',
    severity: 'warning',
    message: `${label} is called in steps of ${sayFigure(step)}, found ${sayFigure(value)} between two of them; write ${sayList(near, 'or')}, or make the step of the quantity finer.`,
    path,
  };
}
