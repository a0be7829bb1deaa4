/**
 * FSRS-6 over a packed record: the formulas of the scheduler, on plain numbers. Gone through some
 * hundred times by a fit, so nothing is made on the way. tests/reference/fit.test.ts compares it with
 * ts-fsrs, which rounds to 8 decimals, and with fsrs-rs.
 *
 * Formulas: open-spaced-repetition, "The Algorithm", FSRS-6. w are its parameters from 0 to 20, s the
 * stability in days, d the difficulty, r the chance of recall, g the rating.
 */
import type { PackedRecord } from './packed.ts';

export const PARAMETERS = 21;
export const LEAST_STABILITY = 0.001;
export const GREATEST_STABILITY = 36_500;
export const LEAST_DIFFICULTY = 1;
export const GREATEST_DIFFICULTY = 10;

type Parameters = ArrayLike<number>;

const clamped = (value: number, least: number, greatest: number): number =>
  Math.min(Math.max(value, least), greatest);

/** The factor of the forgetting curve: with it, recall after `stability` days is 90 %. */
export const curveFactor = (decay: number): number => Math.exp(-Math.log(0.9) / decay) - 1;

/** Chance of recall after `gapDays`: (1 + F t / s)^-w20. */
export const recallChance = (stability: number, gapDays: number, factor: number, decay: number): number =>
  Math.pow(1 + (factor * gapDays) / stability, -decay);

/** Difficulty after a first answer, before it is held to 1..10: w4 - e^((g - 1) w5) + 1. */
export const firstDifficulty = (w: Parameters, g: number): number => w[4]! - Math.exp((g - 1) * w[5]!) + 1;

/** Difficulty after a later answer, before it is held to 1..10: drawn to that of a first answer rated 4. */
export function laterDifficulty(w: Parameters, d: number, g: number): number {
  const moved = d - (w[6]! * (g - 3) * (10 - d)) / 9;
  return w[7]! * firstDifficulty(w, 4) + (1 - w[7]!) * moved;
}

/** By what an answer on the same day multiplies stability: s^-w19 e^(w17 (g - 3 + w18)). */
export const sameDayGain = (w: Parameters, s: number, g: number): number =>
  Math.pow(s, -w[19]!) * Math.exp(w[17]! * (g - 3 + w[18]!));

/** Stability after an answer that was known, before it is held to its range. */
export function recalledStability(w: Parameters, s: number, d: number, r: number, g: number): number {
  const byRating = g === 2 ? w[15]! : g === 4 ? w[16]! : 1;
  const growth = Math.exp(w[8]!) * (11 - d) * Math.pow(s, -w[9]!) * (Math.exp(w[10]! * (1 - r)) - 1);
  return s * (1 + growth * byRating);
}

/** Stability after one that was not, before it is held to its range and below what it was. */
export const forgottenStability = (w: Parameters, s: number, d: number, r: number): number =>
  w[11]! * Math.pow(d, -w[12]!) * (Math.pow(s + 1, w[13]!) - 1) * Math.exp(w[14]! * (1 - r));

function nextStability(w: Parameters, s: number, d: number, r: number, gapDays: number, g: number): number {
  if (gapDays === 0) {
    const gain = sameDayGain(w, s, g);
    return clamped(s * (g > 1 ? Math.max(gain, 1) : gain), LEAST_STABILITY, GREATEST_STABILITY);
  }
  if (g > 1) return clamped(recalledStability(w, s, d, r, g), LEAST_STABILITY, GREATEST_STABILITY);
  const lost = clamped(forgottenStability(w, s, d, r), LEAST_STABILITY, GREATEST_STABILITY);
  return Math.min(Math.max(s * Math.exp(-w[17]! * w[18]!), LEAST_STABILITY), lost);
}

/** Room for the memory before each answer of one card. The first answer has none before it. */
export interface Trace {
  readonly stability: Float64Array;
  readonly difficulty: Float64Array;
  readonly recall: Float64Array;
}

export const traceFor = ({ longest }: PackedRecord): Trace => ({
  stability: new Float64Array(longest),
  difficulty: new Float64Array(longest),
  recall: new Float64Array(longest),
});

/** Goes through one card's answers, from index `from` up to `to`, and writes what was remembered before each. */
export function traceCard(record: PackedRecord, from: number, to: number, w: Parameters, trace: Trace): void {
  const { gapDays, ratings } = record;
  const decay = w[20]!;
  const factor = curveFactor(decay);
  let g = ratings[from]!;
  let s = w[g - 1]!;
  let d = clamped(firstDifficulty(w, g), LEAST_DIFFICULTY, GREATEST_DIFFICULTY);
  for (let at = from + 1; at < to; at++) {
    const days = gapDays[at]!;
    const r = days === 0 ? 1 : recallChance(s, days, factor, decay);
    trace.stability[at - from] = s;
    trace.difficulty[at - from] = d;
    trace.recall[at - from] = r;
    if (at + 1 === to) return;
    g = ratings[at]!;
    s = nextStability(w, s, d, r, days, g);
    d = clamped(laterDifficulty(w, d, g), LEAST_DIFFICULTY, GREATEST_DIFFICULTY);
  }
}
