/** Whole passes on a shipped deck, flown by policies instead of pilots. */
import { areOpposite, controlOf } from '../../src/deck/lookup.ts';
import { advanceToDecision } from '../../src/motion/advance.ts';
import { assessPass } from '../../src/motion/assess.ts';
import { correct } from '../../src/motion/correct.ts';
import { startPass } from '../../src/motion/start.ts';
import type { DecisionPoint, Pass, PassStart } from '../../src/motion/types.ts';
import { compileRules } from '../../src/rules/compile.ts';
import type { Procedure } from '../../src/rules/types.ts';
import { shippedDeck } from './shipped-deck.ts';

export type Policy = (procedure: Procedure, point: DecisionPoint) => Readonly<Record<string, string>>;

/** Always what the rules ask for. */
export const asDecided: Policy = (_, { decision }) => decision.actions;

export const nothing: Policy = () => ({});

/** The opposite of every correction; go-arounds are neither called nor missed on purpose. */
export const opposite: Policy = ({ deck }, { decision }) =>
  decision.overriding
    ? {}
    : Object.fromEntries(
        decision.reasons.flatMap(({ control: id, action }) => {
          const control = controlOf(deck, id);
          const other = control.actions.find((one) => areOpposite(control, action, one.id));
          return other ? [[id, other.id]] : [];
        }),
      );

export function procedureOf(name: string): Procedure {
  const { procedure } = compileRules(shippedDeck(name));
  if (!procedure) throw new Error(`The rules of “${name}” do not compile.`);
  return procedure;
}

export function flyPass(procedure: Procedure, start: PassStart, policy: Policy): Pass {
  let pass = advanceToDecision(startPass(procedure, start));
  while (pass.open) pass = advanceToDecision(correct(pass, policy(procedure, pass.open)));
  return pass;
}

export interface Shares {
  /** Adequate or better at every gate, flown to the end. */
  readonly adequate: number;
  /** Ended by a go-around that the rules demanded, with every gate before it adequate or better. */
  readonly demanded: number;
  readonly gatesHeld: number;
  /** What went outside, for a test that fails: "seed 7: ninety sink 530". */
  readonly misses: readonly string[];
}

/** @returns shares of passes, 0 to 1, and the mean number of gates held adequate or better. */
export function fly(
  procedure: Procedure,
  fromGate: string,
  seeds: readonly number[],
  policy: Policy,
): Shares {
  let adequate = 0;
  let demanded = 0;
  let gates = 0;
  const misses: string[] = [];
  for (const seed of seeds) {
    const pass = flyPass(procedure, { fromGate, seed }, policy);
    const { performance, crossings } = assessPass(pass);
    gates += crossings.filter((crossing) => crossing.performance !== 'outside').length;
    if (performance === 'outside')
      misses.push(`seed ${seed}: ${pass.ended?.kind ?? 'under way'} ${outsideOf(pass)}`);
    else if (pass.ended?.kind === 'go-around') demanded++;
    else adequate++;
  }
  const count = seeds.length;
  return { adequate: adequate / count, demanded: demanded / count, gatesHeld: gates / count, misses };
}

const outsideOf = ({ crossings }: Pass): string =>
  crossings
    .flatMap(({ gate, values }) =>
      values
        .filter(({ grade }) => grade.performance === 'outside')
        .map(({ quantity, value }) => `${gate} ${quantity} ${value}`),
    )
    .join(', ');

export const seedsTo = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);
