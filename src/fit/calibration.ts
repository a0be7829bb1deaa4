/**
 * Whether what was foretold came true: of the answers given a chance of about 90 %, were 90 % known?
 *
 * The bins hold equal numbers of answers, not equal ranges of chances: rehearsed when due, most answers
 * have chances near the desired one, and of ten equal ranges most would stand empty.
 */
import type { CardKind } from '../cards/types.ts';
import { logLoss, type Foretold } from './log-loss.ts';
import { wilsonInterval, type Interval } from './wilson.ts';

export const MOST_BINS = 10;
/** Fewer answers than this tell too little to stand alone. Own choice: at 90 % the interval is about 20 points wide. */
export const LEAST_IN_BIN = 30;

export type Prediction = Pick<Foretold, 'predicted' | 'recalled'>;

export interface CalibrationBin {
  readonly count: number;
  /** The least and the greatest chance in it, and the mean. */
  readonly least: number;
  readonly greatest: number;
  readonly predicted: number;
  readonly observed: number;
  /** Of 95 %, for `observed`. */
  readonly interval: Interval;
}

export interface Calibration {
  readonly count: number;
  readonly predicted: number;
  readonly observed: number;
  readonly interval: Interval;
  /** By chance, lowest first. */
  readonly bins: readonly CalibrationBin[];
  /**
   * How far observed and predicted are apart on average, bins weighed by their counts: expected
   * calibration error (Naeini, Cooper & Hauskrecht, AAAI 2015, from memory). Never quite 0, by chance.
   */
  readonly error: number;
  readonly logLoss: number;
}

/** Predicted against observed recall; null without any answer. */
export function calibrate(predictions: readonly Prediction[]): Calibration | null {
  const loss = logLoss(predictions);
  if (loss === null) return null;
  const bins = equalBins(predictions).map(binOf);
  const { count, predicted, observed, interval } = binOf(predictions);
  const apart = bins.reduce((sum, bin) => sum + bin.count * Math.abs(bin.observed - bin.predicted), 0);
  return { count, predicted, observed, interval, bins, error: apart / count, logLoss: loss };
}

/** The same for the cards of each kind that has any. */
export function calibratePerKind(
  predictions: readonly (Prediction & { readonly cardKind: CardKind })[],
): ReadonlyMap<CardKind, Calibration> {
  const groups = new Map<CardKind, Prediction[]>();
  for (const prediction of predictions) {
    const group = groups.get(prediction.cardKind);
    if (group) group.push(prediction);
    else groups.set(prediction.cardKind, [prediction]);
  }
  return new Map([...groups].map(([kind, group]) => [kind, calibrate(group)!]));
}

/** Sorted by chance and cut into like parts; answers with the same chance stay together. */
function equalBins(predictions: readonly Prediction[]): Prediction[][] {
  const sorted = predictions.toSorted((one, other) => one.predicted - other.predicted);
  const wanted = Math.max(1, Math.min(MOST_BINS, Math.floor(sorted.length / LEAST_IN_BIN)));
  const bins: Prediction[][] = [];
  let from = 0;
  for (let bin = 1; bin <= wanted; bin++) {
    let to = Math.round((sorted.length * bin) / wanted);
    while (to > 0 && to < sorted.length && sorted[to]!.predicted === sorted[to - 1]!.predicted) to++;
    if (to > from) bins.push(sorted.slice(from, to));
    from = Math.max(from, to);
  }
  return bins;
}

/** Of at least one answer. */
function binOf(predictions: readonly Prediction[]): CalibrationBin {
  const count = predictions.length;
  let sum = 0;
  let hits = 0;
  let least = Infinity;
  let greatest = -Infinity;
  for (const { predicted, recalled } of predictions) {
    sum += predicted;
    if (recalled) hits++;
    least = Math.min(least, predicted);
    greatest = Math.max(greatest, predicted);
  }
  return {
    count,
    least,
    greatest,
    predicted: sum / count,
    observed: hits / count,
    interval: wilsonInterval(hits, count),
  };
}
