/**
 * The least of a smooth function within a box: a quasi-Newton method (BFGS) with the step projected onto
 * the box. A coordinate that stands at a bound and wants out is left out of the step, with its row and
 * column of the inverse Hessian: D. Bertsekas, "Projected Newton Methods for Optimization Problems with
 * Simple Constraints", SIAM J. Control and Optimization 20(2), 1982. BFGS and the test of a step's
 * descent: J. Nocedal and S. Wright, "Numerical Optimization", 2nd ed., chapters 3 and 6 (from memory).
 *
 * For a few dozen coordinates: it keeps a full matrix.
 */

/** The function's value at a place; writes its gradient there. */
export type Smooth = (place: Float64Array, gradient: Float64Array) => number;

export type Bounds = readonly (readonly [least: number, greatest: number])[];

export interface Minimum {
  readonly place: Float64Array;
  readonly value: number;
  /** How often the function was asked. */
  readonly calls: number;
}

export interface Tolerance {
  /** It ends when a step gains less than this, as a fraction of the value. */
  readonly gain: number;
  readonly calls: number;
}

/** A step must gain this share of what the slope promises. */
const PROMISED_SHARE = 1e-4;
const SHORTEST_STEP = 1e-10;

/**
 * Comes from `start`, which lies within the bounds, to a place where no step goes lower. After each call
 * of the function it yields the best so far: stop there, and that is what there is.
 */
export function* minimise(
  smooth: Smooth,
  start: Float64Array,
  bounds: Bounds,
  tolerance: Tolerance,
): Generator<Minimum, Minimum> {
  const size = start.length;
  let gradient: Float64Array = new Float64Array(size);
  let place: Float64Array = Float64Array.from(start);
  let value = smooth(place, gradient);
  let calls = 1;
  let inverse = identity(size);
  let fresh = true;
  yield { place, value, calls };

  while (calls < tolerance.calls) {
    const step = descent(inverse, gradient, place, bounds);
    let length = fresh ? Math.min(1, 1 / norm(step)) : 1;
    let next: Float64Array | null = null;
    let nextValue = value;
    const nextGradient: Float64Array = new Float64Array(size);
    while (length > SHORTEST_STEP && calls < tolerance.calls) {
      const tried = projected(place, step, length, bounds);
      nextValue = smooth(tried, nextGradient);
      calls++;
      const promised = product(gradient, tried) - product(gradient, place);
      if (nextValue <= value + PROMISED_SHARE * promised) next = tried;
      yield next ? { place: next, value: nextValue, calls } : { place, value, calls };
      if (next) break;
      length /= Number.isFinite(nextValue) ? 2 : 10;
    }
    if (!next) {
      // With the matrix forgotten, the steepest descent may still go lower.
      if (fresh) break;
      inverse = identity(size);
      fresh = true;
      continue;
    }
    const gained = value - nextValue;
    const moved = difference(next, place);
    const turned = turnedWhere(moved, difference(nextGradient, gradient), next, bounds);
    fresh = !update(inverse, moved, turned, fresh) && fresh;
    place = next;
    value = nextValue;
    gradient = nextGradient;
    if (gained <= tolerance.gain * Math.abs(value)) break;
  }
  return { place, value, calls };
}

/** Minus the inverse Hessian times the gradient, over the coordinates that can move. */
function descent(inverse: Float64Array[], gradient: Float64Array, place: Float64Array, bounds: Bounds) {
  const moves = gradient.map((slope, i) => {
    const [least, greatest] = bounds[i]!;
    const wantsOut = (place[i]! <= least && slope > 0) || (place[i]! >= greatest && slope < 0);
    return wantsOut ? 0 : 1;
  });
  return gradient.map((_, i) => {
    if (moves[i] === 0) return 0;
    let sum = 0;
    for (let j = 0; j < moves.length; j++) if (moves[j] === 1) sum -= inverse[i]![j]! * gradient[j]!;
    return sum;
  });
}

const projected = (place: Float64Array, step: Float64Array, length: number, bounds: Bounds): Float64Array =>
  place.map((value, i) => Math.min(Math.max(value + length * step[i]!, bounds[i]![0]), bounds[i]![1]));

/** The change of the gradient, but for what stood at a bound throughout: it tells nothing of the curvature along the others. */
const turnedWhere = (moved: Float64Array, turned: Float64Array, place: Float64Array, bounds: Bounds) =>
  turned.map((change, i) => (moved[i] === 0 && bounds[i]!.includes(place[i]!) ? 0 : change));

/** The BFGS update, in place; left out, and false, where the slope didn't grow along the step. */
function update(inverse: Float64Array[], moved: Float64Array, turned: Float64Array, fresh: boolean): boolean {
  const size = moved.length;
  const curvature = product(moved, turned);
  if (!(curvature > 1e-10 * norm(moved) * norm(turned))) return false;
  if (fresh) {
    const scale = curvature / product(turned, turned);
    for (let i = 0; i < size; i++) inverse[i]![i] = scale;
  }
  const along = inverse.map((row) => product(row, turned));
  const stretch = (1 + product(Float64Array.from(along), turned) / curvature) / curvature;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      inverse[i]![j]! +=
        stretch * moved[i]! * moved[j]! - (along[i]! * moved[j]! + moved[i]! * along[j]!) / curvature;
  return true;
}

const identity = (size: number): Float64Array[] =>
  Array.from({ length: size }, (_, i) => new Float64Array(size).fill(1, i, i + 1));

function product(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i]! * other[i]!;
  return sum;
}

const norm = (vector: Float64Array): number => Math.sqrt(product(vector, vector));

const difference = (one: Float64Array, other: Float64Array): Float64Array =>
  one.map((value, i) => value - other[i]!);
