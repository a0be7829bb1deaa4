/** Two numbers that say from where to where. */
import type { Draft } from '../draft.ts';
import type { DocumentPath } from '../findings.ts';
import { sayFigure, sayInterval } from '../quoting.ts';

export type Ends = readonly [number, number];

export const lies = (value: number, [from, to]: Ends): boolean => from <= value && value <= to;
export const liesWithin = ([from, to]: Ends, [outerFrom, outerTo]: Ends): boolean =>
  outerFrom <= from && to <= outerTo;
export const isOrdered = ([from, to]: Ends): boolean => from <= to;

/** A range in which something can vary: its ends differ. */
export function* ifNoRange(ends: Ends, path: DocumentPath): Generator<Draft> {
  const [from, to] = ends;
  if (from < to) return;
  const mend = from > to ? `write ${sayInterval([to, from])}` : 'lower the first or raise the second number';
  yield {
    code: 'range-upside-down',
    message: `A range goes from its lower to its higher end, found ${sayInterval(ends)}; ${mend}.`,
    path,
  };
}

/** The stretch of a band may be a single value. */
export function* ifUpsideDown(ends: Ends, path: DocumentPath): Generator<Draft> {
  if (!isOrdered(ends)) yield* ifNoRange(ends, path);
}

export function* ifNotPositive(value: number, what: string, path: DocumentPath): Generator<Draft> {
  if (value <= 0)
    yield {
      code: 'not-positive',
      message: `${what} must be more than 0, found ${sayFigure(value)}; write a positive number.`,
      path,
    };
}
