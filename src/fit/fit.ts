/**
 * The memory model fitted to a pilot's own record: the parameters that are likeliest after it, if the
 * usual ones are what is believed before (`prior.ts`). Tried on answers it hasn't seen, the last fifth
 * in time, and only to be taken when it foretells these better than the parameters in use.
 *
 * No optimiser from npm does this in a browser under the app's policy (looked at in November 2026): the
 * builds of fsrs-rs for browsers (`fsrs-browser` 5.2, `@open-spaced-repetition/binding` 0.5) are threaded
 * WebAssembly with shared memory, which asks for `wasm-unsafe-eval` and for isolation headers that static
 * hosts lack; `fmin` 0.0 knows no bounds and `ml-levenberg-marquardt` 5 only least squares.
 */
import { usualParameters } from '../memory/scheduler.ts';
import { foretell, logLoss, lossOf, summedLoss, type Foretold } from './log-loss.ts';
import { PARAMETERS } from './memory-states.ts';
import { minimise, type Minimum } from './minimise.ts';
import { before, foretoldAtMs, pack, type PackedRecord } from './packed.ts';
import { addPrior, bounds, coordinatesOf, gradientAt, parametersAt } from './prior.ts';
import type { CardAnswers, Comparison, Fit, FitOutcome, FitProgress, NoFit } from './types.ts';

/**
 * Fewer answers that can be foretold than this are not fitted. Own choice: a fifth of them is 100, about the
 * least that a better fit shows on. Measured on simulated learners with about this many answers: of 40 unlike
 * the usual, 35 fits were taken, 2 of these for the worse, and log loss fell by 0.014 on average; of 40 just
 * like the usual, whom no fit can help, 13 were taken, and log loss rose by 0.001 on average.
 */
export const LEAST_ANSWERS = 500;

/** The share of the answers, the last in time, that the fit doesn't see and is judged by. */
export const HELD_OUT_SHARE = 0.2;

const TOLERANCE = { gain: 1e-7, calls: 300 };

export interface FitOptions {
  /** The parameters in use, which a fit has to beat; without them, the usual ones. */
  readonly inUse?: readonly number[];
  /** A clock for the seconds told; any zero. */
  readonly nowMs: () => number;
}

/**
 * Fits step by step: each step goes through the record once, and yields how far it got. Whoever drives
 * it may give others a turn between steps, or stop by `return`.
 * @param cards one list of answers for each card, those taken back left out
 */
export function* fitting(
  cards: readonly CardAnswers[],
  { inUse = usualParameters, nowMs }: FitOptions,
): Generator<FitProgress, FitOutcome> {
  const startMs = nowMs();
  const record = pack(cards);
  const timesMs = foretoldAtMs(record);
  if (timesMs.length < LEAST_ANSWERS) return tooFew(timesMs.length);
  const heldOutFromMs = timesMs[Math.floor(timesMs.length * (1 - HELD_OUT_SHARE))]!;
  const fit = yield* fittedTo(before(record, heldOutFromMs));
  const [seenInUse, heldInUse] = splitAt(foretell(record, inUse), heldOutFromMs);
  const [seenFitted, heldFitted] = splitAt(foretell(record, fit.parameters), heldOutFromMs);
  const { gain, gainError } = gainOf(heldInUse, heldFitted);
  return {
    kind: 'fitted',
    better: gain > 0,
    parameters: fit.parameters,
    heldOutFromMs,
    fittedTo: seenFitted.length,
    heldOut: heldFitted.length,
    fittedLoss: compared(seenInUse, seenFitted),
    heldOutLoss: compared(heldInUse, heldFitted),
    gain,
    gainError,
    passes: fit.passes,
    seconds: (nowMs() - startMs) / 1000,
  } satisfies Fit;
}

/** The likeliest parameters after a whole record, and how often it was gone through. */
export function* fittedTo(
  record: PackedRecord,
): Generator<FitProgress, { parameters: readonly number[]; passes: number }> {
  const count = Math.max(1, foretoldAtMs(record).length);
  const loss = summedLoss(record);
  const parameters = new Float64Array(PARAMETERS);
  const search = minimise(
    (place, gradient) => {
      parametersAt(place, parameters);
      const sum = loss(parameters, gradient);
      gradientAt(parameters, gradient);
      return sum + addPrior(place, gradient);
    },
    coordinatesOf(usualParameters),
    bounds,
    TOLERANCE,
  );
  let step: IteratorResult<Minimum, Minimum>;
  while (!(step = search.next()).done) yield { passes: step.value.calls, logLoss: step.value.value / count };
  parametersAt(step.value.place, parameters);
  return { parameters: [...parameters], passes: step.value.calls };
}

export const stopped: NoFit = {
  kind: 'none',
  code: 'stopped',
  message: 'The fit was stopped. The memory model stays as it was.',
  mend: 'It can be started at any time.',
};

function tooFew(answers: number): NoFit {
  const more = LEAST_ANSWERS - answers;
  return {
    kind: 'none',
    code: 'too-few-answers',
    message: `The record holds ${answers} ${answers === 1 ? 'answer' : 'answers'} given at least a day after the last on the same card; a fit takes ${LEAST_ANSWERS}.`,
    mend: `Rehearse on: ${more} more of them, and the memory model can be fitted to you.`,
  };
}

function splitAt(foretold: readonly Foretold[], fromMs: number): [earlier: Foretold[], later: Foretold[]] {
  return [foretold.filter(({ atMs }) => atMs < fromMs), foretold.filter(({ atMs }) => atMs >= fromMs)];
}

const compared = (inUse: readonly Foretold[], fitted: readonly Foretold[]): Comparison => ({
  inUse: logLoss(inUse) ?? 0,
  fitted: logLoss(fitted) ?? 0,
});

/** Mean fall of the loss, answer by answer, and its standard error, as if answers fell independently. */
function gainOf(inUse: readonly Foretold[], fitted: readonly Foretold[]) {
  const gains = inUse.map((answer, i) => lossOf(answer) - lossOf(fitted[i]!));
  const gain = gains.reduce((sum, one) => sum + one, 0) / gains.length;
  const variance = gains.reduce((sum, one) => sum + (one - gain) ** 2, 0) / Math.max(1, gains.length - 1);
  return { gain, gainError: Math.sqrt(variance / gains.length) };
}
