/**
 * Where a rehearsal leads on the grid, from each of its states, after each gap.
 *
 * Two roundings. `nearest` stands for the states around a state of the grid, and serves to find a
 * good plan. `optimistic` serves to prove a bound. There, a state of the grid (s, d) stands for all
 * states with a stability of at most s and a difficulty of at least d, and leads to one that stands for
 * all that these lead to. That takes no more than these properties of FSRS-6, which hold for all
 * parameters it admits (w9, w10, w12, w14, w19 >= 0; w13, w19 < 1; w6 <= 4; w7 < 1):
 *
 * 1. Stability after a rehearsal, divided by the stability before, does not rise with stability. For a
 *    recall it is 1 + e^w8 (11 - D) S^-w9 (e^(w10 (1 - R)) - 1), and R rises with S; for a miss,
 *    w11 D^-w12 (((S + 1)^w13 - 1) / S) e^(w14 (1 - R)), whose bracket falls for w13 < 1, or less by a cap
 *    that is proportional to S; on the same day, S^-w19 times a constant, or 1. A miss is followed by a same-day recall,
 *    S max(1, c S^-w19): it rises with S, by no greater a ratio than S does.
 *    So between two stabilities a < b of the grid it is at most (b / a) times the one after a.
 * 2. It does not rise with difficulty: 11 - D and D^-w12.
 * 3. Difficulty afterwards rises with difficulty before, and depends on nothing else but the answer.
 *
 * Difficulty creeps downwards by a little with each recall (w7, mean reversion). Rounded down each time it
 * would lose a whole step of the grid each time. Instead, a difficulty of the grid counts as that
 * minus as many recalls as there are sessions: then a recall leaves it in its place. Where that creep
 * is large, difficulty is rounded down like the rest.
 */
import { DAY_MS } from '../../memory/local-day.ts';
import type { CardMemory, Scheduler } from '../../memory/types.ts';
import { rehearse } from '../rehearsal.ts';
import type { Grid } from './grid.ts';
import { memoryIn, type Sittings } from './sittings.ts';

export type Rounding = 'nearest' | 'optimistic';

export interface Transitions {
  readonly grid: Grid;
  readonly rounding: Rounding;
  /** For each gap and state the state after a recall. */
  readonly recalled: readonly Int32Array[];
  /** The same after a miss and learning it again. */
  readonly relearned: readonly Int32Array[];
  /** The state of the grid that stands for a memory. */
  nodeOf(stability: number, difficulty: number): number;
}

/** The library rounds to eight decimals, at stabilities from 0.001 on. */
const ROUNDING_OF_LIBRARY = 1 + 1e-5;
/** More creep than this, as a share of 11 - difficulty, and difficulty is rounded instead. */
const MOST_CREEP = 0.15;

export function transitionsOn(
  grid: Grid,
  rounding: Rounding,
  scheduler: Scheduler,
  sittings: Sittings,
): Transitions {
  const optimistic = rounding === 'optimistic';
  const difficulty = difficultySteps(grid, optimistic, scheduler, sittings.count);
  const recalled: Int32Array[] = [];
  const relearned: Int32Array[] = [];
  for (const gapDays of sittings.gapsDays) {
    const atMs = sittings.atMs[0]! + gapDays * DAY_MS;
    const onRecall = new Int32Array(grid.size);
    const onMiss = new Int32Array(grid.size);
    for (let row = 0; row < grid.difficulties.length; row++) {
      let mostRecalled = 0;
      let mostRelearned = 0;
      for (let i = 0; i < grid.stabilities.length; i++) {
        const from = optimistic && i > 0 ? i - 1 : i;
        const ratio = optimistic ? (grid.stabilities[i]! / grid.stabilities[from]!) * ROUNDING_OF_LIBRARY : 1;
        const memory = memoryIn(grid.stabilities[from]!, difficulty.values[row]!, sittings.atMs[0]!);
        const after = rehearse(scheduler, memory, atMs);
        mostRecalled = optimistic
          ? Math.max(mostRecalled, after.recalled.stability * ratio)
          : after.recalled.stability;
        mostRelearned = optimistic
          ? Math.max(mostRelearned, after.relearned.stability * ratio)
          : after.relearned.stability;
        const node = grid.node(i, row);
        onRecall[node] = grid.node(stabilityIndex(grid, optimistic, mostRecalled), difficulty.recalled[row]!);
        onMiss[node] = grid.node(stabilityIndex(grid, optimistic, mostRelearned), difficulty.relearned[row]!);
      }
    }
    recalled.push(onRecall);
    relearned.push(onMiss);
  }
  return {
    grid,
    rounding,
    recalled,
    relearned,
    nodeOf: (stability, ofDifficulty) =>
      grid.node(
        stabilityIndex(grid, optimistic, stability),
        optimistic ? grid.difficultyAtMost(ofDifficulty) : grid.difficultyNearest(ofDifficulty),
      ),
  };
}

const stabilityIndex = (grid: Grid, optimistic: boolean, stability: number): number =>
  optimistic ? grid.stabilityAtLeast(stability) : grid.stabilityNearest(stability);

interface DifficultySteps {
  /** What each difficulty of the grid counts as in the model's formulas. */
  readonly values: Float64Array;
  /** Its place on the grid after a recall, and after a miss. */
  readonly recalled: Uint16Array;
  readonly relearned: Uint16Array;
}

function difficultySteps(
  grid: Grid,
  optimistic: boolean,
  scheduler: Scheduler,
  sessions: number,
): DifficultySteps {
  const after = (difficulty: number): { readonly recalled: CardMemory; readonly relearned: CardMemory } =>
    rehearse(scheduler, memoryIn(1, difficulty, 0), DAY_MS);
  const place = (difficulty: number): number =>
    optimistic ? grid.difficultyAtMost(difficulty) : grid.difficultyNearest(difficulty);

  const crept = grid.difficulties.map((start) => {
    let difficulty = start;
    for (let i = 0; i < sessions; i++)
      difficulty = Math.min(difficulty, after(difficulty).recalled.difficulty);
    return difficulty;
  });
  const creeps = crept.every((value, row) => 11 - value <= (11 - grid.difficulties[row]!) * (1 + MOST_CREEP));
  const inPlace = optimistic && creeps;
  const values = inPlace ? crept : grid.difficulties;
  const rows = [...values.keys()];
  return {
    values,
    recalled: Uint16Array.from(rows, (row) =>
      inPlace ? row : place(after(values[row]!).recalled.difficulty),
    ),
    relearned: Uint16Array.from(rows, (row) => place(after(values[row]!).relearned.difficulty)),
  };
}
