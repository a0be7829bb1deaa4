/** Plates: spots that lie on the drawing and can be hit. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import type { Plate, Spot } from '../types.ts';
import { ifNotPositive } from './ranges.ts';

export function* checkPlates(parts: DeckParts): Generator<Draft> {
  for (const plate of parts.plates) {
    for (const [index, side] of plate.size.entries())
      yield* ifNotPositive(side, 'A side of the drawing', parts.pathOf(plate, 'size', index));
    for (const shape of plate.shapes)
      if (shape.shape === 'circle')
        yield* ifNotPositive(shape.radius, 'A radius', parts.pathOf(shape, 'radius'));
    if (plate.reference) yield* ifOutside(parts, plate, plate.reference, 'The reference point');
    for (const spot of plate.spots) {
      yield* ifOutside(parts, plate, spot, `The spot ${quoted(spot.label)}`);
      yield* checkCircles(parts, spot);
    }
  }
}

function* ifOutside(
  parts: DeckParts,
  plate: Plate,
  bearer: { readonly at: readonly [number, number] },
  what: string,
): Generator<Draft> {
  const [x, y] = bearer.at;
  const [width, height] = plate.size;
  // A drawing without extent has been told of.
  if (width <= 0 || height <= 0 || (x >= 0 && x <= width && y >= 0 && y <= height)) return;
  yield {
    code: 'outside-plate',
    message: `${what} must lie on the drawing, ${sayFigure(width)} wide and ${sayFigure(height)} high, found ${sayInterval(bearer.at)}; move it or enlarge “size”.`,
    path: parts.pathOf(bearer, 'at'),
  };
}

function* checkCircles(parts: DeckParts, spot: Spot): Generator<Draft> {
  yield* ifNotPositive(spot.desiredWithin, 'The radius of desired', parts.pathOf(spot, 'desiredWithin'));
  yield* ifNotPositive(spot.adequateWithin, 'The radius of adequate', parts.pathOf(spot, 'adequateWithin'));
  if (spot.desiredWithin > spot.adequateWithin)
    yield {
      code: 'band-not-nested',
      message: `Desired must lie inside adequate, within ${sayFigure(spot.adequateWithin)}, found ${sayFigure(spot.desiredWithin)}; narrow desired or widen adequate.`,
      path: parts.pathOf(spot, 'desiredWithin'),
    };
}
