/**
 * The gradient of one card's summed log loss by the 21 parameters: the chain rule from the last answer
 * back to the first, over the formulas of `memory-states.ts`. Where a value was held to its range, what
 * lies before has no say in it.
 */
import {
  curveFactor,
  firstDifficulty,
  forgottenStability,
  GREATEST_DIFFICULTY,
  GREATEST_STABILITY,
  laterDifficulty,
  LEAST_DIFFICULTY,
  LEAST_STABILITY,
  sameDayGain,
  type Trace,
} from './memory-states.ts';
import type { PackedRecord } from './packed.ts';

/** What a change of the memory before an answer would change of the loss of all that follow. */
interface Slope {
  byStability: number;
  byDifficulty: number;
  byRecall: number;
}

const free = (value: number, least: number, greatest: number): boolean => value > least && value < greatest;
const freeStability = (s: number): boolean => free(s, LEAST_STABILITY, GREATEST_STABILITY);
const freeDifficulty = (d: number): boolean => free(d, LEAST_DIFFICULTY, GREATEST_DIFFICULTY);

/** Adds one card's part to `gradient`. The trace is that of `traceCard` for the same card and parameters. */
export function addCardGradient(
  record: PackedRecord,
  from: number,
  to: number,
  w: Float64Array,
  trace: Trace,
  gradient: Float64Array,
): void {
  const { gapDays, ratings } = record;
  const decay = w[20]!;
  const factor = curveFactor(decay);
  const factorByDecay = ((factor + 1) * Math.log(0.9)) / (decay * decay);
  // Of the memory after the answer at hand, which is that before the next one.
  let byStability = 0;
  let byDifficulty = 0;
  for (let at = to - 1; at > from; at--) {
    const s = trace.stability[at - from]!;
    const d = trace.difficulty[at - from]!;
    const r = trace.recall[at - from]!;
    const days = gapDays[at]!;
    const g = ratings[at]!;
    const slope: Slope = { byStability: 0, byDifficulty: 0, byRecall: 0 };
    if (byStability !== 0) {
      if (days === 0) addSameDay(w, s, g, byStability, slope, gradient);
      else if (g > 1) addRecalled(w, s, d, r, g, byStability, slope, gradient);
      else addForgotten(w, s, d, r, byStability, slope, gradient);
    }
    if (byDifficulty !== 0) addDifficulty(w, d, g, byDifficulty, slope, gradient);
    if (days > 0) {
      const byRecall = slope.byRecall + (g > 1 ? -1 / r : 1 / (1 - r));
      const base = 1 + (factor * days) / s;
      slope.byStability += (byRecall * decay * r * factor * days) / (base * s * s);
      gradient[20]! -= byRecall * r * (Math.log(base) + (decay * days * factorByDecay) / (base * s));
    }
    ({ byStability, byDifficulty } = slope);
  }
  const g = ratings[from]!;
  gradient[g - 1]! += byStability;
  if (!freeDifficulty(firstDifficulty(w, g))) return;
  gradient[4]! += byDifficulty;
  gradient[5]! -= byDifficulty * (g - 1) * Math.exp((g - 1) * w[5]!);
}

function addSameDay(w: Float64Array, s: number, g: number, by: number, slope: Slope, gradient: Float64Array) {
  const gain = sameDayGain(w, s, g);
  if (g > 1 && gain < 1) {
    slope.byStability += by;
    return;
  }
  if (!freeStability(s * gain)) return;
  slope.byStability += by * (1 - w[19]!) * gain;
  gradient[17]! += by * s * gain * (g - 3 + w[18]!);
  gradient[18]! += by * s * gain * w[17]!;
  gradient[19]! -= by * s * gain * Math.log(s);
}

function addRecalled(
  w: Float64Array,
  s: number,
  d: number,
  r: number,
  g: number,
  by: number,
  slope: Slope,
  gradient: Float64Array,
): void {
  const byRating = g === 2 ? w[15]! : g === 4 ? w[16]! : 1;
  const perSurprise = Math.exp(w[8]!) * (11 - d) * Math.pow(s, -w[9]!);
  const grown = Math.exp(w[10]! * (1 - r));
  const growth = perSurprise * (grown - 1);
  if (!freeStability(s * (1 + growth * byRating))) return;
  slope.byStability += by * (1 + growth * byRating * (1 - w[9]!));
  slope.byDifficulty -= (by * s * growth * byRating) / (11 - d);
  slope.byRecall -= by * s * perSurprise * byRating * grown * w[10]!;
  gradient[8]! += by * s * growth * byRating;
  gradient[9]! -= by * s * growth * byRating * Math.log(s);
  gradient[10]! += by * s * perSurprise * byRating * grown * (1 - r);
  if (g === 2) gradient[15]! += by * s * growth;
  if (g === 4) gradient[16]! += by * s * growth;
}

function addForgotten(
  w: Float64Array,
  s: number,
  d: number,
  r: number,
  by: number,
  slope: Slope,
  gradient: Float64Array,
): void {
  const lost = forgottenStability(w, s, d, r);
  const most = s * Math.exp(-w[17]! * w[18]!);
  const held = Math.min(Math.max(lost, LEAST_STABILITY), GREATEST_STABILITY);
  if (Math.max(most, LEAST_STABILITY) < held) {
    if (most <= LEAST_STABILITY) return;
    slope.byStability += (by * most) / s;
    gradient[17]! -= by * most * w[18]!;
    gradient[18]! -= by * most * w[17]!;
    return;
  }
  if (!freeStability(lost)) return;
  const power = Math.pow(s + 1, w[13]!);
  const perPower = lost / (power - 1);
  slope.byStability += (by * perPower * w[13]! * power) / (s + 1);
  slope.byDifficulty -= (by * lost * w[12]!) / d;
  slope.byRecall -= by * lost * w[14]!;
  gradient[11]! += (by * lost) / w[11]!;
  gradient[12]! -= by * lost * Math.log(d);
  gradient[13]! += by * perPower * power * Math.log(s + 1);
  gradient[14]! += by * lost * (1 - r);
}

function addDifficulty(
  w: Float64Array,
  d: number,
  g: number,
  by: number,
  slope: Slope,
  gradient: Float64Array,
): void {
  if (!freeDifficulty(laterDifficulty(w, d, g))) return;
  const moved = d - (w[6]! * (g - 3) * (10 - d)) / 9;
  const byMoved = by * (1 - w[7]!);
  slope.byDifficulty += byMoved * (1 + (w[6]! * (g - 3)) / 9);
  gradient[4]! += by * w[7]!;
  gradient[5]! -= by * w[7]! * 3 * Math.exp(3 * w[5]!);
  gradient[6]! -= (byMoved * (g - 3) * (10 - d)) / 9;
  gradient[7]! += by * (firstDifficulty(w, 4) - moved);
}
