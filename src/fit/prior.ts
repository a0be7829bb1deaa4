/**
 * What is believed of the parameters before a pilot's record is seen: the usual ones, each give or take
 * how much it differs between learners. And the coordinates in which that belief is a standard normal
 * distribution, so that a fit may move along each of them alike.
 *
 * The spreads of w4 to w20 are those that fsrs-rs holds its own fit with (`PARAMS_STDDEV` of FSRS-6).
 * The four stabilities after a first answer go another way: those spreads are far wider than the values,
 * and would let a few odd answers decide. Here the first counts by its logarithm, and each other by the
 * logarithm of its ratio to the one below, which is never under 1: a better first answer is never worth
 * less. Their spread is an own estimate: a factor of two either way.
 */
import { parameterBounds, usualParameters } from '../memory/scheduler.ts';
import { PARAMETERS } from './memory-states.ts';

const FIRST_STABILITIES = 4;
const FACTOR_SPREAD = Math.LN2;

const spreads: readonly number[] = [
  ...[FACTOR_SPREAD, FACTOR_SPREAD, FACTOR_SPREAD, FACTOR_SPREAD],
  ...[0.57, 0.28, 0.6, 0.12, 0.39, 0.18, 0.33, 0.3, 0.09, 0.16, 0.57, 0.25, 1.03, 0.31, 0.32, 0.14, 0.27],
];

/** The parameters, with each of the four first stabilities as a step in logarithms from the one below. */
function stepped(parameters: readonly number[]): number[] {
  const logs = parameters.slice(0, FIRST_STABILITIES).map(Math.log);
  return [
    ...logs.map((log, i) => (i === 0 ? log : log - logs[i - 1]!)),
    ...parameters.slice(FIRST_STABILITIES),
  ];
}

const usual = stepped(usualParameters);
const greatestFirstStability = parameterBounds[0]![1];

const inSpreads = (value: number, i: number): number => (value - usual[i]!) / spreads[i]!;

/** The range of each coordinate. */
export const bounds: readonly (readonly [least: number, greatest: number])[] = parameterBounds.map(
  ([least, greatest], i) => {
    const [from, to] =
      i >= FIRST_STABILITIES
        ? [least, greatest]
        : [i === 0 ? Math.log(least) : 0, i === 0 ? Math.log(greatest) : Math.log(greatest / least)];
    return [inSpreads(from, i), inSpreads(to, i)];
  },
);

/** The coordinates of parameters; those of the usual ones are all 0. */
export const coordinatesOf = (parameters: readonly number[]): Float64Array =>
  Float64Array.from(stepped(parameters), inSpreads);

/** Writes the 21 parameters at a place. */
export function parametersAt(place: Float64Array, parameters: Float64Array): void {
  let log = 0;
  for (let i = 0; i < PARAMETERS; i++) {
    const value = usual[i]! + place[i]! * spreads[i]!;
    if (i >= FIRST_STABILITIES) parameters[i] = value;
    else parameters[i] = Math.min(Math.exp((log += value)), greatestFirstStability);
  }
}

/** Turns a gradient by parameters into one by coordinates, in place. */
export function gradientAt(parameters: Float64Array, gradient: Float64Array): void {
  // A first stability moves with its own step and all steps below.
  let above = 0;
  for (let i = FIRST_STABILITIES - 1; i >= 0; i--) {
    if (parameters[i]! < greatestFirstStability) above += gradient[i]! * parameters[i]!;
    gradient[i] = above;
  }
  for (let i = 0; i < PARAMETERS; i++) gradient[i]! *= spreads[i]!;
}

/** -ln of the belief in a place, but for a constant: half the square of its distance. Adds its gradient. */
export function addPrior(place: Float64Array, gradient: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < PARAMETERS; i++) {
    sum += (place[i]! * place[i]!) / 2;
    gradient[i]! += place[i]!;
  }
  return sum;
}
