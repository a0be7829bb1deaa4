/**
 * Memory states on a grid. Stability on a scale of ratios, fine around the days left until the event,
 * where it decides what is recalled, and coarser away from there; difficulty on a scale of ratios
 * of 11 - difficulty, to which growth is proportional in FSRS-6.
 */

/** What the model's stability is clamped to, in days. */
const LEAST_STABILITY = 1e-3;
const MOST_STABILITY = 36_500;
const LEAST_DIFFICULTY = 1;
const MOST_DIFFICULTY = 10;

export interface GridFineness {
  /** Ratio of neighbouring stabilities near the days left, above 1. */
  readonly stabilityRatio: number;
  /** Number of difficulties, at least 2. */
  readonly difficulties: number;
}

export class Grid {
  /** Ascending, from the least to the greatest that the model gives. */
  readonly stabilities: Float64Array;
  /** Ascending, from 1. */
  readonly difficulties: Float64Array;
  readonly size: number;

  /** @param horizonDays from the first session to the event */
  constructor({ stabilityRatio, difficulties }: GridFineness, horizonDays: number) {
    this.stabilities = stabilityScale(stabilityRatio, Math.max(1, horizonDays));
    this.difficulties = difficultyScale(difficulties);
    this.size = this.stabilities.length * this.difficulties.length;
  }

  /** A state's place in a table: rows of one difficulty. */
  node(stabilityIndex: number, difficultyIndex: number): number {
    return difficultyIndex * this.stabilities.length + stabilityIndex;
  }

  /** The least stability of the grid that is not below the given one. */
  stabilityAtLeast(stability: number): number {
    return firstNotBelow(this.stabilities, stability);
  }

  /** The stability of the grid nearest by ratio. */
  stabilityNearest(stability: number): number {
    const above = firstNotBelow(this.stabilities, stability);
    if (above === 0) return 0;
    const product = this.stabilities[above]! * this.stabilities[above - 1]!;
    return stability * stability < product ? above - 1 : above;
  }

  /** The greatest difficulty of the grid that is not above the given one. */
  difficultyAtMost(difficulty: number): number {
    const above = firstNotBelow(this.difficulties, difficulty);
    return this.difficulties[above] === difficulty ? above : Math.max(0, above - 1);
  }

  difficultyNearest(difficulty: number): number {
    const above = firstNotBelow(this.difficulties, difficulty);
    if (above === 0) return 0;
    return this.difficulties[above]! - difficulty < difficulty - this.difficulties[above - 1]!
      ? above
      : above - 1;
  }
}

/** Steps in the logarithm that widen with the distance from the horizon. */
function stabilityScale(ratio: number, horizonDays: number): Float64Array {
  const step = Math.log(ratio);
  const centre = Math.log(horizonDays);
  const top = Math.log(MOST_STABILITY);
  const scale = [LEAST_STABILITY];
  let at = Math.log(LEAST_STABILITY);
  for (;;) {
    at += step * (1 + Math.abs(at - centre) / 3);
    if (at >= top) break;
    scale.push(Math.exp(at));
  }
  scale.push(MOST_STABILITY);
  return Float64Array.from(scale);
}

function difficultyScale(count: number): Float64Array {
  const scale = new Float64Array(count);
  const ratio = (11 - MOST_DIFFICULTY) / (11 - LEAST_DIFFICULTY);
  for (let i = 0; i < count; i++) scale[i] = 11 - (11 - LEAST_DIFFICULTY) * ratio ** (i / (count - 1));
  // Exactly, whatever the powers round to: every difficulty has one of the grid at or below it.
  scale[0] = LEAST_DIFFICULTY;
  scale[count - 1] = MOST_DIFFICULTY;
  return scale;
}

/** Index of the first value not below the given one; the last when all are. */
function firstNotBelow(ascending: Float64Array, value: number): number {
  let low = 0;
  let high = ascending.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
