/**
 * The values a pilot can read off, quantity by quantity: whole numbers of steps, in runs within which no
 * rule of the phase tells one value from the next.
 */
import { quantityOf } from '../deck/lookup.ts';
import type { Field } from '../rules/field.ts';
import type { Random } from '../rules/random.ts';
import type { Block } from '../rules/space.ts';
import { multipleOf, multiplesIn } from '../rules/steps.ts';
import type { Interval, Procedure } from '../rules/types.ts';

/** Neighbouring values: the `first`th multiple of the step and those that follow. */
export interface Stretch {
  readonly first: number;
  readonly count: number;
}

export interface Run extends Stretch {
  /** The atom of the line's axis that it is a part of; 0 where the line has no axis. */
  readonly atom: number;
  /** The values that no rule tells apart, callable or not. */
  readonly piece: Interval;
}

export interface Line {
  readonly quantity: string;
  readonly step: number;
  /** Where its bits begin in a block; -1 for a quantity that no rule tests. */
  readonly firstWord: number;
  /** Ascending. Together they are every multiple of the step in the phase's range. */
  readonly runs: readonly Run[];
}

const known = new WeakMap<Field, readonly Line[]>();

/** A line for each quantity of the phase, in the order in which it shows them. */
export function linesOf({ deck }: Procedure, field: Field): readonly Line[] {
  const there = known.get(field);
  if (there) return there;
  const lines = [...field.rules.box].map(([quantity, range]): Line => {
    const { step } = quantityOf(deck, quantity);
    const axis = field.space.axes.find((one) => one.quantity === quantity);
    const atoms = axis ? axis.atoms : [[range]];
    const runs = atoms.flatMap((atom, i) =>
      atom.map((piece) => ({ atom: i, piece, ...multiplesIn(piece, step) })),
    );
    return {
      quantity,
      step,
      firstWord: axis?.firstWord ?? -1,
      runs: runs.filter(({ count }) => count > 0).sort((one, other) => one.first - other.first),
    };
  });
  known.set(field, lines);
  return lines;
}

/** Whether a block holds the values of a run. */
export function holdsRun(block: Block, { firstWord }: Line, { atom }: Run): boolean {
  return firstWord < 0 || ((block[firstWord + (atom >> 5)]! >>> (atom & 31)) & 1) === 1;
}

/** Values to draw from. */
export interface Choice {
  readonly stretches: readonly Stretch[];
  readonly total: number;
}

const choiceOf = (stretches: readonly Stretch[]): Choice => ({
  stretches,
  total: stretches.reduce((sum, { count }) => sum + count, 0),
});

/** All values of a line that a block holds. */
export const everyValue = (block: Block, line: Line): Choice =>
  choiceOf(line.runs.filter((run) => holdsRun(block, line, run)));

/**
 * The values of a line that a block holds and that lie well away from every place at which some rule of
 * the phase begins or ends: about the middle half of each run. Runs shorter than a quarter of the
 * longest are left out. The ends of what can occur are no edges.
 */
export function clearValues(block: Block, line: Line): Choice {
  const held = line.runs.filter((run) => holdsRun(block, line, run));
  const longest = Math.max(...held.map(({ count }) => count));
  return choiceOf(
    held
      .filter(({ count }) => 4 * count >= longest)
      .map((run) => {
        const margin = Math.floor((run.count + 1) / 4);
        const below = run === line.runs[0] ? 0 : margin;
        const above = run === line.runs[line.runs.length - 1] ? 0 : margin;
        return { first: run.first + below, count: run.count - below - above };
      }),
  );
}

/** One of the values, each equally likely, in the quantity's unit. */
export function drawValue({ stretches, total }: Choice, step: number, random: Random): number {
  let pick = Math.floor(random() * total);
  for (const { first, count } of stretches) {
    if (pick < count) return multipleOf(step, first + pick);
    pick -= count;
  }
  throw new Error('Nothing to draw from.');
}

/** A product of values to draw from: a choice for each line of the phase. */
export interface Cell {
  readonly lines: readonly Line[];
  readonly choices: readonly Choice[];
}

export function drawState({ lines, choices }: Cell, random: Random): Record<string, number> {
  const state: Record<string, number> = {};
  for (let i = 0; i < lines.length; i++)
    state[lines[i]!.quantity] = drawValue(choices[i]!, lines[i]!.step, random);
  return state;
}
