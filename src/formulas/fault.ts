/** What is wrong with a formula. */
import type { DeckCode } from '../deck/codes.ts';
import type { MathNode } from './expression-parser.ts';

export interface Faulty {
  readonly ok: false;
  readonly code: DeckCode;
  /** The rule and what was found. */
  readonly why: string;
  readonly mend: string;
  /** How far into the text, where that is known. */
  readonly into?: number;
  /** The name in the text that it is about. */
  readonly name?: string;
  /** Comes of another fault, which is told of by itself. */
  readonly follows?: true;
}

/** Thrown on the way out of a tree, caught by `compileFormula`: it leaves this folder as a value. */
export class FormulaFault extends Error {
  readonly faulty: Faulty;

  constructor(faulty: Omit<Faulty, 'ok'>) {
    super(faulty.why);
    this.faulty = { ok: false, ...faulty };
  }
}

/** A part of a node of the library's tree, which its own types leave out. */
export const partOf = <T = MathNode & string>(node: MathNode, key: string): T =>
  (node as unknown as Readonly<Record<string, T>>)[key]!;
