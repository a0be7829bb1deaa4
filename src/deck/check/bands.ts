/** Bands: target in desired in adequate in the quantity's range, limits outside of adequate. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { sayFigure, sayInterval } from '../quoting.ts';
import type { Band, Gate, Quantity } from '../types.ts';
import { ifUpsideDown, isOrdered, lies, liesWithin } from './ranges.ts';
import { ifUnknown } from './unknown-name.ts';

export function* checkBands(parts: DeckParts): Generator<Draft> {
  for (const gate of parts.gates)
    for (const [id, band] of Object.entries(gate.values)) {
      yield* ifUnknown(parts, 'quantity', id, parts.pathOf(gate, 'values', id), true);
      yield* checkBand(parts, band);
      yield* checkRange(parts, band, parts.known.quantity.get(id));
    }
}

function* checkBand(parts: DeckParts, band: Gate['values'][string]): Generator<Draft> {
  const { target, desired, adequate, floor, ceiling } = band;
  yield* ifUpsideDown(desired, parts.pathOf(band, 'desired'));
  yield* ifUpsideDown(adequate, parts.pathOf(band, 'adequate'));
  if (isOrdered(desired) && !lies(target, desired))
    yield {
      code: 'band-not-nested',
      message: `The target must lie inside desired ${sayInterval(desired)}, found ${sayFigure(target)}; move the target or widen desired.`,
      path: parts.pathOf(band, 'target'),
    };
  if (!isOrdered(adequate)) return;
  if (isOrdered(desired) && !liesWithin(desired, adequate))
    yield {
      code: 'band-not-nested',
      message: `Desired must lie inside adequate ${sayInterval(adequate)}, found ${sayInterval(desired)}; narrow desired or widen adequate.`,
      path: parts.pathOf(band, 'desired'),
    };
  if (floor !== undefined && floor > adequate[0])
    yield {
      code: 'limit-inside-band',
      message: `A floor must not lie above the lower end of adequate, ${sayFigure(adequate[0])}, found ${sayFigure(floor)}; lower the floor or raise that end.`,
      path: parts.pathOf(band, 'floor'),
    };
  if (ceiling !== undefined && ceiling < adequate[1])
    yield {
      code: 'limit-inside-band',
      message: `A ceiling must not lie below the upper end of adequate, ${sayFigure(adequate[1])}, found ${sayFigure(ceiling)}; raise the ceiling or lower that end.`,
      path: parts.pathOf(band, 'ceiling'),
    };
}

function* checkRange(parts: DeckParts, band: Band, quantity: Quantity | undefined): Generator<Draft> {
  if (!quantity || !isOrdered(quantity.range)) return;
  const { range } = quantity;
  if (isOrdered(band.adequate) && !liesWithin(band.adequate, range))
    yield {
      code: 'band-outside-range',
      message: `Adequate must lie inside the quantity’s range ${sayInterval(range)}, found ${sayInterval(band.adequate)}; narrow adequate or widen the range.`,
      path: parts.pathOf(band, 'adequate'),
    };
  for (const key of ['floor', 'ceiling'] as const) yield* ifLimitOutside(parts, band, key, range);
}

/** For bands and for the limits of phases. */
export function* ifLimitOutside(
  parts: DeckParts,
  bearer: { readonly floor?: number | undefined; readonly ceiling?: number | undefined },
  key: 'floor' | 'ceiling',
  range: readonly [number, number],
): Generator<Draft> {
  const limit = bearer[key];
  if (limit !== undefined && !lies(limit, range))
    yield {
      code: 'limit-outside-range',
      message: `A ${key} must lie inside the quantity’s range ${sayInterval(range)}, found ${sayFigure(limit)}; move it or widen the range.`,
      path: parts.pathOf(bearer, key),
    };
}
