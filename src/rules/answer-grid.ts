/**
 * What a phase asks for, along each input, as `decide` says it: for questions about edges, of which a
 * drill asks thousands.
 *
 * Each input's range is cut into pieces within which no rule tells one value from the next. A piece has
 * the rules that hold there, as bits; the rules that fit a state are those common to the pieces of all
 * its values.
 */
import { fieldOf } from './field.ts';
import { clash, inOrderOfPrecedence, mayClash } from './hit-policy.ts';
import { contains, doOverlap, holds } from './intervals.ts';
import { inside } from './sample.ts';
import type { Space } from './space.ts';
import type { Interval, IntervalSet, PhaseRules, Procedure, Rule, State, Table } from './types.ts';

/** One bit for each rule of the phase; those of a table begin with a word of their own. */
type RuleBits = Uint32Array;

export interface GridAxis {
  readonly quantity: string;
  /** What can occur in the phase. */
  readonly range: Interval;
  /** Ascending; those that hold no number of the machine are left out. */
  readonly pieces: readonly Interval[];
  /** The rules that hold in each piece. */
  readonly bits: readonly RuleBits[];
}

interface GridTable {
  readonly table: Table;
  /** The first that fits decides. */
  readonly rules: readonly Rule[];
  readonly firstWord: number;
  readonly words: number;
  /** The number of each rule's action, from 1. */
  readonly numbers: readonly number[];
  /** How many numbers there are, with 0 for no answer. */
  readonly radix: number;
}

/** Where a state lies in the grid. */
export interface Place {
  /** Of each axis the pieces next below and above its value, by their number. */
  readonly below: Int32Array;
  readonly above: Int32Array;
  readonly bits: RuleBits[];
}

/** The first piece with another answer, and the number of that: alike for all that ask for the same. */
export interface Turn {
  readonly piece: Interval;
  readonly answer: number;
}

/** How far the answer of a place reaches along one axis: where another begins. */
export interface Reach {
  readonly below: Turn | null;
  readonly above: Turn | null;
}

export class AnswerGrid {
  /** One for each input that a rule tests. */
  readonly axes: readonly GridAxis[];
  readonly #overriding: readonly GridTable[];
  readonly #base: readonly GridTable[];
  readonly #tables: readonly GridTable[];
  /** Scratch: the rules that fit the other axes of a place, and all of it. */
  readonly #others: RuleBits;
  readonly #fitting: RuleBits;

  constructor(rules: PhaseRules, space: Space) {
    let words = 0;
    const prepare = (table: Table, numbers: Map<string, number>): GridTable => {
      const ordered = inOrderOfPrecedence(table);
      const firstWord = words;
      words += Math.ceil(ordered.length / 32);
      const named = ordered.map(({ then }) => {
        const action = `${table.control} ${then}`;
        if (!numbers.has(action)) numbers.set(action, numbers.size + 1);
        return numbers.get(action)!;
      });
      return {
        table,
        rules: ordered,
        firstWord,
        words: words - firstWord,
        numbers: named,
        radix: numbers.size + 1,
      };
    };
    // An overriding action is the whole answer, whichever table calls for it.
    const calls = new Map<string, number>();
    this.#overriding = rules.overriding.map((table) => prepare(table, calls));
    this.#base = rules.base.map((table) => prepare(table, new Map()));
    this.#others = new Uint32Array(words);
    this.#fitting = new Uint32Array(words);
    this.#tables = [...this.#overriding, ...this.#base];
    this.axes = axesOf(space, this.#tables, words);
  }

  /** @param state also one outside of what can occur, or without some of its values. */
  placeOf(state: State): Place {
    const { length } = this.axes;
    const place: Place = { below: new Int32Array(length), above: new Int32Array(length), bits: [] };
    for (let a = 0; a < length; a++) {
      const { quantity, pieces, bits } = this.axes[a]!;
      const value = state[quantity] ?? NaN;
      const piece = pieceAt(pieces, value);
      place.below[a] = piece - 1;
      if (piece < pieces.length && holds(pieces[piece]!, value)) {
        place.above[a] = piece + 1;
        place.bits.push(bits[piece]!);
      } else {
        place.above[a] = piece;
        place.bits.push(
          bitsWhere(this.#tables, this.#others.length, quantity, (set) => contains(set, value)),
        );
      }
    }
    return place;
  }

  /** How far the answer of a place reaches along an axis, given by its number, while the others stay. */
  reach(place: Place, axis: number): Reach {
    this.#fitOthers(place, axis);
    const here = this.#answerWith(place.bits[axis]!);
    return {
      below: this.#turn(axis, here, place.below[axis]!, -1),
      above: this.#turn(axis, here, place.above[axis]!, 1),
    };
  }

  #turn(axis: number, here: number, from: number, way: 1 | -1): Turn | null {
    const { pieces, bits } = this.axes[axis]!;
    for (let i = from; i >= 0 && i < pieces.length; i += way) {
      const answer = this.#answerWith(bits[i]!);
      if (answer !== here) return { piece: pieces[i]!, answer };
    }
    return null;
  }

  /** The rule that decides a table's control in a place, or, for an overriding table, everything. */
  deciderOf(place: Place, table: Table): Rule | null {
    this.#fitOthers(place, 0);
    this.#fit(place.bits[0]);
    for (const one of this.#overriding) {
      const winner = winnerIn(one, this.#fitting);
      if (winner >= 0) return one.table === table ? one.rules[winner]! : null;
    }
    const own = this.#base.find((one) => one.table === table);
    return own?.rules[winnerIn(own, this.#fitting)] ?? null;
  }

  #fitOthers({ bits }: Place, but: number): void {
    const others = this.#others;
    others.fill(-1);
    for (let a = 0; a < bits.length; a++) {
      if (a === but) continue;
      const some = bits[a]!;
      for (let w = 0; w < others.length; w++) others[w]! &= some[w]!;
    }
  }

  #fit(bits: RuleBits | undefined): void {
    const fitting = this.#fitting;
    for (let w = 0; w < fitting.length; w++) fitting[w] = this.#others[w]! & (bits?.[w] ?? -1);
  }

  /** The answer as a number, alike for answers that ask for the same; overriding ones are below 0. */
  #answerWith(bits: RuleBits): number {
    this.#fit(bits);
    for (const table of this.#overriding) {
      const winner = winnerIn(table, this.#fitting);
      if (winner >= 0) return -table.numbers[winner]!;
    }
    let answer = 0;
    for (const table of this.#base) {
      const winner = winnerIn(table, this.#fitting);
      answer = answer * table.radix + (table.numbers[winner] ?? 0);
    }
    return answer;
  }
}

function axesOf(space: Space, tables: readonly GridTable[], words: number): GridAxis[] {
  return space.axes.map(({ quantity, range, atoms }) => {
    const pieces = atoms.flatMap((atom) => {
      // No condition cuts through an atom: what holds for its first piece holds for all of it.
      const bits = bitsWhere(tables, words, quantity, (set) =>
        set.some((piece) => doOverlap(piece, atom[0]!)),
      );
      return atom.flatMap((piece) => (inside(piece) === null ? [] : [{ piece, bits }]));
    });
    pieces.sort((one, other) => one.piece.lo - other.piece.lo || one.piece.hi - other.piece.hi);
    return {
      quantity,
      range,
      pieces: pieces.map(({ piece }) => piece),
      bits: pieces.map(({ bits }) => bits),
    };
  });
}

/** The rules that don't test a quantity, or whose condition on it is as asked. */
function bitsWhere(
  tables: readonly GridTable[],
  words: number,
  quantity: string,
  holdsThere: (set: IntervalSet) => boolean,
): RuleBits {
  const bits = new Uint32Array(words);
  for (const { rules, firstWord } of tables)
    rules.forEach(({ when }, i) => {
      const set = when.get(quantity);
      if (!set || holdsThere(set)) bits[firstWord + (i >> 5)]! |= 1 << (i & 31);
    });
  return bits;
}

/** The number of the piece that holds a value, or of the first above it. */
function pieceAt(pieces: readonly Interval[], value: number): number {
  let from = 0;
  let to = pieces.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    const { hi, hiOpen } = pieces[middle]!;
    if (hiOpen ? hi <= value : hi < value) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** The rule that decides, by its place in the table; -1 where none fits, or policy is broken. */
function winnerIn({ table, rules, firstWord, words }: GridTable, fitting: RuleBits): number {
  let winner = -1;
  for (let w = firstWord; w < firstWord + words; w++)
    for (let left = fitting[w]!; left !== 0; left &= left - 1) {
      const rule = 32 * (w - firstWord) + 31 - Math.clz32(left & -left);
      if (winner < 0) winner = rule;
      else if (clash(table, rules[winner]!, rules[rule]!)) return -1;
      if (!mayClash(table)) return winner;
    }
  return winner;
}

const known = new WeakMap<PhaseRules, AnswerGrid>();

/** Made once for a phase. */
export function answerGridOf(procedure: Procedure, rules: PhaseRules): AnswerGrid {
  let grid = known.get(rules);
  if (!grid) {
    grid = new AnswerGrid(rules, fieldOf(procedure, rules).space);
    known.set(rules, grid);
  }
  return grid;
}
