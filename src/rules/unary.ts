/**
 * FEEL numeric unary tests (OMG DMN 1.5, chapter 10.3; grammar from memory): `-`, `140`, `< 140`,
 * `>= 140`, `= 140`, `!= 140`, `[100..140]`, `(100..140]`, `]100..140[`, several joined by commas, and
 * `not(…)` around the whole. Numbers are literals: no names, sums or units.
 */
import { complement, interval, intersect, nothing, union } from './intervals.ts';
import type { Interval, IntervalSet } from './types.ts';
import { complaintAbout, type UnaryProblem } from './unary-mends.ts';

export type ParsedUnary =
  | {
      readonly ok: true;
      readonly set: IntervalSet;
      /** What is valid but most likely not meant: a comma between two digits. */
      readonly doubt: UnaryProblem | null;
    }
  | { readonly ok: false; readonly problem: UnaryProblem };

/** Longer texts are refused unread. The schema allows an author 200 characters. */
export const longestUnary = 1000;

/**
 * Reads a unary test.
 * @param domain what can occur at all; the set is cut to it, and `-` and `not(…)` mean all and the rest
 * of it. A test wholly outside gives the empty set.
 */
export function parseUnary(text: string, domain: Interval): ParsedUnary {
  if (text.length > longestUnary)
    return fail({
      column: longestUnary + 1,
      message: `A condition has at most ${longestUnary} characters, but this has ${text.length}: split it into several rules.`,
    });
  const reader = new Reader(text);
  const all = [domain];
  const set = reader.test(all);
  if (set === null) return fail(complaintAbout(text, reader.at, reader.itemStart));
  return { ok: true, set: intersect(set, all), doubt: doubtfulComma(text) };
}

const fail = (problem: UnaryProblem): ParsedUnary => ({ ok: false, problem });

function doubtfulComma(text: string): UnaryProblem | null {
  const found = /\d+,\d+/.exec(text);
  if (!found) return null;
  const [one, other] = found[0].split(',');
  return {
    column: found.index + one!.length + 1,
    message: `A comma parts two tests, so “${found[0]}” is read as ${one} or ${other}: write ${one}.${other} for a decimal fraction, ${one}${other} for one large number, or “${one}, ${other}” with a space for two values.`,
  };
}

const numberPattern = /-?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const operators = ['<=', '>=', '!=', '<', '>', '='] as const;
type Operator = (typeof operators)[number];

/** Recursive descent without recursion deeper than `not(list)`; null where the text is no unary test. */
class Reader {
  readonly #text: string;
  /** Where reading stopped: after a failure the offending place. */
  at = 0;
  /** Where the test being read begins, for complaints that look at the whole of it. */
  itemStart = 0;

  constructor(text: string) {
    this.#text = text;
  }

  test(all: IntervalSet): IntervalSet | null {
    this.#space();
    this.itemStart = this.at;
    if (this.#text.slice(this.at).trim() === '-') return all;
    const negated = /^not\s*\(/.test(this.#text.slice(this.at, this.at + longestUnary));
    const set = negated ? this.#negated(all) : this.#list();
    this.#space();
    return this.at === this.#text.length ? set : null;
  }

  #negated(all: IntervalSet): IntervalSet | null {
    this.#take('not');
    this.#space();
    this.#take('(');
    const inner = this.#list();
    if (inner === null || !this.#take(')')) return null;
    return all.flatMap((domain) => complement(inner, domain));
  }

  #list(): IntervalSet | null {
    let set: IntervalSet = nothing;
    do {
      this.#space();
      this.itemStart = this.at;
      const item = '[(]'.includes(this.#text.charAt(this.at) || ' ') ? this.#interval() : this.#comparison();
      if (item === null) return null;
      set = union(set, item);
      this.#space();
    } while (this.#take(','));
    return set;
  }

  #comparison(): IntervalSet | null {
    const operator = operators.find((candidate) => this.#take(candidate)) ?? '=';
    this.#space();
    const value = this.#number();
    return value === null ? null : compared(operator, value);
  }

  #interval(): IntervalSet | null {
    const start = this.at;
    const open = this.#takeOneOf('[(]');
    if (open === null) return null;
    this.#space();
    const lo = this.#number();
    this.#space();
    if (lo === null || !this.#take('..')) return null;
    this.#space();
    const hi = this.#number();
    this.#space();
    if (hi === null) return null;
    const close = this.#takeOneOf('])[');
    if (close === null) return null;
    const piece = interval(lo, hi, open !== '[', close !== ']');
    if (lo < hi || (lo === hi && open === '[' && close === ']')) return [piece];
    this.at = start;
    return null;
  }

  #number(): number | null {
    numberPattern.lastIndex = this.at;
    const found = numberPattern.exec(this.#text);
    const value = found ? Number(found[0]) : NaN;
    if (!found || !Number.isFinite(value)) return null;
    this.at += found[0].length;
    return value + 0;
  }

  #space(): void {
    while (/\s/.test(this.#text.charAt(this.at))) this.at++;
  }

  #take(word: string): boolean {
    if (!this.#text.startsWith(word, this.at)) return false;
    this.at += word.length;
    return true;
  }

  #takeOneOf(characters: string): string | null {
    const found = this.#text.charAt(this.at);
    return found !== '' && characters.includes(found) && this.#take(found) ? found : null;
  }
}

const everything = interval(-Infinity, Infinity);

function compared(operator: Operator, value: number): IntervalSet {
  switch (operator) {
    case '<':
      return [interval(-Infinity, value, false, true)];
    case '<=':
      return [interval(-Infinity, value)];
    case '>':
      return [interval(value, Infinity, true)];
    case '>=':
      return [interval(value, Infinity)];
    case '=':
      return [interval(value, value)];
    case '!=':
      return complement([interval(value, value)], everything);
  }
}
