/**
 * The states of a rule that stand clear of every edge. Where one stands in the grid of pieces settles how
 * far the answer reaches along each input, so a cell of the grid has its clear values as a product, and
 * what has been found once is drawn from ever after.
 */
import type { AnswerGrid, Place } from '../rules/answer-grid.ts';
import { seeded, type Random } from '../rules/random.ts';
import { multipleOf } from '../rules/steps.ts';
import type { Procedure, State } from '../rules/types.ts';
import { clearShare } from './clearance.ts';
import { groundOf, type Ground } from './crossings.ts';
import { drawState, everyValue, holdsRun, type Cell, type Choice, type Line, type Run } from './lines.ts';
import type { RuleTarget } from './types.ts';

/** Cells looked at; enough to find clear ones, and for thousands of different states. */
const mostCells = 96;
/** Cells from which clearer neighbours are looked for, where none is clear. */
const mostClimbs = 6;
/** A cell is drawn from when it is at least a quarter as clear as the clearest, a value when half as clear as its cell. */
const cellsWithin = 1 / 4;
const valuesWithin = 1 / 2;

export interface ClearStates {
  /** What every state drawn has at least, as `clearanceOf` gives it. */
  readonly clearance: number;
  draw(random: Random): State;
}

const known = new WeakMap<Ground, ClearStates>();

/**
 * The states in which the ground's rule decides and that lie furthest from edges, as far as a search of a
 * few milliseconds finds: all of them clear by `clearShare`, or, where the rule leaves no room for that,
 * as clear as the clearest. Always the same for the same rule.
 */
export function clearStatesOf(ground: Ground): ClearStates {
  let states = known.get(ground);
  if (!states) {
    states = new Search(ground).states();
    known.set(ground, states);
  }
  return states;
}

/** True when the rule of a target has states clear of every edge by `clearShare`. */
export function hasRoom(procedure: Procedure, target: RuleTarget): boolean {
  const ground = groundOf(procedure, target);
  return ground !== null && ground.region.length > 0 && clearStatesOf(ground).clearance >= clearShare;
}

/** A cell of the grid: of each line one run. */
interface Candidate {
  readonly runs: readonly Run[];
  /** Of each line the places between which the answer stays, infinite where it does to the end. */
  readonly between: readonly (readonly [below: number, above: number])[];
  /** Of the clearest state in it. */
  readonly clearance: number;
}

/** A line with the axis it lies on, and which piece of that each of its runs is. */
interface Track {
  readonly line: Line;
  readonly axis: number;
  readonly range: number;
  readonly pieces: ReadonlyMap<Run, number>;
}

class Search {
  readonly #ground: Ground;
  readonly #grid: AnswerGrid;
  readonly #tracks: readonly Track[];

  constructor(ground: Ground) {
    this.#ground = ground;
    this.#grid = ground.grid;
    this.#tracks = ground.lines.map((line): Track => {
      const axis = this.#grid.axes.findIndex(({ quantity }) => quantity === line.quantity);
      if (axis < 0) return { line, axis, range: 0, pieces: new Map() };
      const { pieces, range } = this.#grid.axes[axis]!;
      return {
        line,
        axis,
        range: range.hi - range.lo,
        pieces: new Map(line.runs.map((run) => [run, pieces.indexOf(run.piece)])),
      };
    });
  }

  states(): ClearStates {
    const random = seeded(1);
    const found = Array.from({ length: mostCells }, () => this.#candidate(this.#someRuns(random)));
    const clearestFirst = (some: readonly Candidate[]) =>
      some.toSorted((one, other) => other.clearance - one.clearance);
    let candidates = clearestFirst(found);
    if (candidates[0]!.clearance < clearShare)
      candidates = clearestFirst([
        ...candidates,
        ...candidates.slice(0, mostClimbs).map((one) => this.#climbed(one)),
      ]);
    const best = candidates[0]!.clearance;
    const least = Math.min(best, Math.max(clearShare, best * cellsWithin));
    const cells = candidates
      .filter(({ clearance }) => clearance >= least)
      .map((one) => this.#cellOf(one, Math.max(least, one.clearance * valuesWithin)));
    return {
      clearance: least,
      draw: (random) => drawState(cells[Math.floor(random() * cells.length)]!, random),
    };
  }

  /** Runs of the rule's region, by their length. */
  #someRuns(random: Random): Run[] {
    const { region } = this.#ground;
    const block = region[Math.floor(random() * region.length)]!;
    return this.#tracks.map(({ line }) => {
      const held = line.runs.filter((run) => holdsRun(block, line, run));
      let rest = random() * held.reduce((sum, { count }) => sum + count, 0);
      return held.find(({ count }) => (rest -= count) < 0) ?? held[0]!;
    });
  }

  /** As long as one is clearer: the clearest of the cells that differ in one line and are the rule's too. */
  #climbed(from: Candidate): Candidate {
    let at = from;
    for (;;) {
      const neighbours = this.#tracks.flatMap(({ line, axis }, t) =>
        axis < 0
          ? []
          : line.runs
              .map((run) => at.runs.with(t, run))
              .filter((runs) => this.#isDecided(runs))
              .map((runs) => this.#candidate(runs)),
      );
      const best = neighbours.reduce((one, other) => (other.clearance > one.clearance ? other : one), at);
      if (best === at) return at;
      at = best;
    }
  }

  #isDecided(runs: readonly Run[]): boolean {
    const { table, rule } = this.#ground;
    return this.#grid.deciderOf(this.#placeOf(runs), table) === rule;
  }

  #placeOf(runs: readonly Run[]): Place {
    const { axes } = this.#grid;
    const place: Place = {
      below: new Int32Array(axes.length),
      above: new Int32Array(axes.length),
      bits: new Array<Uint32Array>(axes.length),
    };
    for (const [t, { axis, pieces }] of this.#tracks.entries()) {
      if (axis < 0) continue;
      const piece = pieces.get(runs[t]!)!;
      place.below[axis] = piece - 1;
      place.above[axis] = piece + 1;
      place.bits[axis] = axes[axis]!.bits[piece]!;
    }
    return place;
  }

  #candidate(runs: readonly Run[]): Candidate {
    const place = this.#placeOf(runs);
    let clearance = Infinity;
    const between = this.#tracks.map(({ line, axis, range }, t): readonly [number, number] => {
      if (axis < 0) return [-Infinity, Infinity];
      const { lo, hi } = this.#grid.axes[axis]!.range;
      const { below, above } = this.#grid.reach(place, axis);
      // The ends of what can occur are no edges.
      const ends = [
        below && below.piece.hi > lo ? below.piece.hi : -Infinity,
        above && above.piece.lo < hi ? above.piece.lo : Infinity,
      ] as const;
      const value = multipleOf(line.step, clearestIn(runs[t]!, ends, line.step));
      clearance = Math.min(clearance, shareAt(value, ends, range));
      return ends;
    });
    return { runs, between, clearance };
  }

  /** The values of a candidate that are at least so clear. */
  #cellOf({ runs, between }: Candidate, least: number): Cell {
    const choices = this.#tracks.map(({ line, axis, range }, t): Choice => {
      if (axis < 0) return everyValue(this.#ground.region[0]!, line);
      const ends = between[t]!;
      const run = runs[t]!;
      const isClear = (count: number): boolean => shareAt(multipleOf(line.step, count), ends, range) >= least;
      const middle = clearestIn(run, ends, line.step);
      const first = furthest(middle, run.first, isClear);
      const last = furthest(middle, run.first + run.count - 1, isClear);
      return { stretches: [{ first, count: last - first + 1 }], total: last - first + 1 };
    });
    return { lines: this.#ground.lines, choices };
  }
}

/** Distance of a value to the nearer end, as a share of the range. */
const shareAt = (value: number, [below, above]: readonly [number, number], range: number): number =>
  Math.min(value - below, above - value) / range;

/** The value of a run, in steps, that lies furthest from two ends. */
function clearestIn({ first, count }: Run, [below, above]: readonly [number, number], step: number): number {
  const last = first + count - 1;
  if (below === -Infinity) return above === Infinity ? first + (count >> 1) : first;
  if (above === Infinity) return last;
  return Math.min(Math.max(Math.round((below + above) / 2 / step), first), last);
}

/** From a count for which something holds the furthest towards another for which it still does. */
function furthest(from: number, to: number, holdsFor: (count: number) => boolean): number {
  if (holdsFor(to)) return to;
  let inside = from;
  let outside = to;
  while (Math.abs(outside - inside) > 1) {
    const middle = (inside + outside) >> 1;
    if (holdsFor(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}
