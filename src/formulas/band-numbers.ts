/** The formulas inside bands, compiled. */
import type { BandNumber, ComputedNumber } from '../deck/computed.ts';
import type { Draft } from '../deck/draft.ts';
import type { DeckParts } from '../deck/parts.ts';
import { quoted } from '../deck/quoting.ts';
import type { AuthoredBand, AuthoredGate, Quantity } from '../deck/types.ts';
import { compileFormula, type Typed } from './compile.ts';
import { draftOf, draftOfUnits } from './drafts.ts';
import { FormulaFault } from './fault.ts';
import { areAlike, unitOf } from './formula-units.ts';
import { brought } from './same-kind.ts';
import { namesIn, type Scope } from './scope.ts';

/** Every number of a band that is a formula, with its place in the band. */
export function formulasIn(band: AuthoredBand): { readonly number: BandNumber; readonly text: string }[] {
  const found: { number: BandNumber; text: string }[] = [];
  const look = (value: number | string | undefined, number: BandNumber): void => {
    if (typeof value === 'string') found.push({ number, text: value });
  };
  look(band.target, ['target']);
  for (const key of ['desired', 'adequate'] as const)
    for (const end of [0, 1] as const) look(band[key][end], [key, end]);
  look(band.floor, ['floor']);
  look(band.ceiling, ['ceiling']);
  return found;
}

/** @returns only bands all of whose formulas are sound. */
export function compileNumbers(parts: DeckParts, scope: Scope, drafts: Draft[]): ComputedNumber[] {
  return parts.authoredGates.flatMap((gate) => {
    const targets = new Targets(parts, scope, gate);
    return Object.entries(gate.values).flatMap(([id, band]) => {
      const quantity = parts.known.quantity.get(id);
      if (!quantity || parts.isBroken(quantity)) return [];
      const formulas = formulasIn(band);
      const numbers = formulas.flatMap(({ number, text }): ComputedNumber[] => {
        const made = targets.compile(quantity, text, number);
        if (made && 'expression' in made)
          return [
            {
              gate: gate.id,
              quantity: id,
              number,
              text,
              expression: brought(made, unitOf(quantity.unit)),
            },
          ];
        if (made) drafts.push({ ...made, path: parts.pathOf(band, ...number) });
        return [];
      });
      return numbers.length === formulas.length ? numbers : [];
    });
  });
}

/** In a band’s formula, a quantity that is flown stands for its target at the same gate. */
class Targets {
  readonly #parts: DeckParts;
  readonly #scope: Scope;
  readonly #gate: AuthoredGate;
  /** Targets being worked out, to see a circle. */
  readonly #open = new Set<string>();

  constructor(parts: DeckParts, scope: Scope, gate: AuthoredGate) {
    this.#parts = parts;
    this.#scope = scope;
    this.#gate = gate;
  }

  /** A draft without its path; null where it only follows from another. */
  compile(quantity: Quantity, text: string, [key]: BandNumber): Typed | Omit<Draft, 'path'> | null {
    if (key === 'target') this.#open.add(quantity.id);
    const names = namesIn(this.#scope, text, (beside) => this.#targetOf(beside));
    const compiled = compileFormula(text, names);
    this.#open.delete(quantity.id);
    if (!compiled.ok) return compiled.follows ? null : draftOf(compiled, []);
    if (areAlike(compiled.unit, unitOf(quantity.unit))) return compiled;
    return draftOfUnits(quantity, compiled, []);
  }

  #targetOf(quantity: Quantity): Typed | null {
    const { values } = this.#gate;
    const target = Object.hasOwn(values, quantity.id) ? values[quantity.id]!.target : undefined;
    if (target === undefined || this.#parts.isBroken(quantity)) return null;
    const unit = unitOf(quantity.unit);
    if (typeof target === 'number')
      return { expression: { kind: 'number', value: target, unit: quantity.unit }, unit };
    if (this.#open.has(quantity.id))
      throw new FormulaFault({
        code: 'formula-circle',
        why: `A formula must not need its own result, the target of ${quoted(quantity.id)} needs itself here`,
        mend: 'take one of the names out of a formula',
      });
    const made = this.compile(quantity, target, ['target']);
    // What is wrong with it is told of where it stands.
    if (!made || !('expression' in made))
      throw new FormulaFault({
        code: 'formula-name',
        why: `The target of ${quoted(quantity.id)} at this gate has a faulty formula itself`,
        mend: 'mend that one first',
        follows: true,
      });
    return { expression: brought(made, unit), unit };
  }
}
