/** What the targets of a procedure are, found by trying states: slow, and by another path than the sampler's. */
import { quantityOf, tableOf } from '../../../src/deck/lookup.ts';
import type { RuleTarget, Side, Targets } from '../../../src/drill/types.ts';
import type { Random } from '../../../src/rules/random.ts';
import type { PhaseRules, Procedure, State } from '../../../src/rules/types.ts';
import { answerOn, plainDecide } from './plain-decide.ts';

export const nameOf = ({ phase, table, rule }: RuleTarget): string => `${phase} ${table}/${rule}`;

export interface Claims {
  readonly rules: ReadonlySet<string>;
  readonly inputs: ReadonlySet<string>;
  readonly edges: ReadonlySet<string>;
}

export const claimsOf = ({ rules, inputs, edges }: Targets): Claims => ({
  rules: new Set(rules.map(nameOf)),
  inputs: new Set(inputs.map((input) => `${nameOf(input)} ${input.quantity}`)),
  edges: new Set(edges.map((edge) => `${nameOf(edge)} ${edge.quantity} ${edge.side}`)),
});

export class Seen implements Claims {
  readonly rules = new Set<string>();
  readonly inputs = new Set<string>();
  readonly edges = new Set<string>();
  readonly #procedure: Procedure;

  constructor(procedure: Procedure) {
    this.#procedure = procedure;
  }

  /** Takes note of who decides in a state, and of whom a change of one input takes it from. */
  note(phase: string, state: State, quantity: string, value: number): void {
    const { deck } = this.#procedure;
    const here = plainDecide(deck, phase, state);
    const there = plainDecide(deck, phase, { ...state, [quantity]: value });
    const side: Side = value < state[quantity]! ? 'below' : 'above';
    for (const rule of here.rules) {
      const name = `${phase} ${rule}`;
      this.rules.add(name);
      const { control } = tableOf(deck, rule.split('/')[0]!);
      const [before, after] = [answerOn(control, here), answerOn(control, there)];
      // From an overriding action to none at all is a change; from an answer to a gap is none to drill.
      if (before === after || (after === null && !here.overriding)) continue;
      this.inputs.add(`${name} ${quantity}`);
      if (Math.abs(value - state[quantity]!) < 1.5 * quantityOf(deck, quantity).step)
        this.edges.add(`${name} ${quantity} ${side}`);
    }
  }
}

/** Every value of a quantity in the phase that can be read off. */
export function valuesOf({ deck }: Procedure, { box }: PhaseRules, quantity: string): number[] {
  const { step } = quantityOf(deck, quantity);
  const { lo, hi } = box.get(quantity)!;
  const values: number[] = [];
  for (let count = Math.ceil(lo / step - 1e-9); count * step <= hi + 1e-9; count++)
    values.push(Number((count * step).toFixed(6)) + 0);
  return values;
}

export const pickFrom = <T>(items: readonly T[], random: Random): T =>
  items[Math.floor(random() * items.length)]!;

/** States at random, each with a change of one input, in the phases in turn. */
export function bruteForce(procedure: Procedure, count: number, random: Random): Seen {
  const seen = new Seen(procedure);
  const phases = [...procedure.phases.values()].map((rules) => ({
    id: rules.phase.id,
    values: [...rules.box.keys()].map((id) => [id, valuesOf(procedure, rules, id)] as const),
  }));
  for (let i = 0; i < count; i++) {
    const { id, values } = phases[i % phases.length]!;
    const state = Object.fromEntries(values.map(([quantity, all]) => [quantity, pickFrom(all, random)]));
    const [quantity, all] = pickFrom(values, random);
    // Half of the changes by a single step, so that edges are met.
    const beside = all[all.indexOf(state[quantity]!) + (random() < 0.5 ? 1 : -1)];
    const value = random() < 0.5 ? pickFrom(all, random) : beside;
    if (value !== undefined) seen.note(id, state, quantity, value);
  }
  return seen;
}

export const notAmong = (some: ReadonlySet<string>, all: ReadonlySet<string>): string[] =>
  [...some].filter((name) => !all.has(name)).sort();
