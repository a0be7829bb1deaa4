/** The times of a plan, worked out once: gaps between sessions and chances of recall on the grid. */
import { DAY_MS } from '../../memory/local-day.ts';
import type { CardMemory, Scheduler } from '../../memory/types.ts';
import type { Grid } from './grid.ts';

export interface Sittings {
  readonly count: number;
  readonly atMs: readonly number[];
  readonly eventMs: number;
  /** The different gaps between two sessions, in whole days as the model counts them. */
  readonly gapsDays: readonly number[];
  /** Place in `gapsDays` of the gap between an earlier and a later session. */
  gapBetween(earlier: number, later: number): number;
}

export function sittingsOf(atMs: readonly number[], eventMs: number): Sittings {
  const gapDays = (earlier: number, later: number): number =>
    Math.round((atMs[later]! - atMs[earlier]!) / DAY_MS);
  const gapsDays = new Set<number>();
  for (let later = 1; later < atMs.length; later++)
    for (let earlier = 0; earlier < later; earlier++) gapsDays.add(gapDays(earlier, later));
  const sorted = [...gapsDays].sort((one, other) => one - other);
  const places = atMs.map((_, earlier) => atMs.map((_at, later) => sorted.indexOf(gapDays(earlier, later))));
  return {
    count: atMs.length,
    atMs,
    eventMs,
    gapsDays: sorted,
    gapBetween: (earlier, later) => places[earlier]![later]!,
  };
}

/** A memory in some state at some time; what else is on record of it changes nothing here. */
export function memoryIn(stability: number, difficulty: number, lastMs: number): CardMemory {
  return { stability, difficulty, lastMs, dueMs: lastMs, answers: 1, lapses: 0 };
}

/** Chance of recall at a time for each stability of the grid, last rehearsed at another. */
export function chancesOnGrid(scheduler: Scheduler, grid: Grid, lastMs: number, atMs: number): Float64Array {
  return grid.stabilities.map((stability) =>
    scheduler.retrievability(memoryIn(stability, LEAST_KNOWN, lastMs), atMs),
  );
}

/** Retrievability doesn't depend on difficulty. */
const LEAST_KNOWN = 10;
