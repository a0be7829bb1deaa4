/** What drawing scenarios costs, and how the sampler's claims stand against random states. */
import { drawScenario } from '../../src/drill/scenario.ts';
import { targetsOf } from '../../src/drill/targets.ts';
import { drawTwin } from '../../src/drill/twin.ts';
import { seeded } from '../../src/rules/random.ts';
import type { Procedure } from '../../src/rules/types.ts';
import { bruteForce, claimsOf, notAmong } from '../unit/drill/brute-force.ts';
import { measure, type Measured } from './measure.ts';

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly spread?: number;
}

const perSecond = (name: string, { seconds, spread }: Measured): Figure => ({
  name: `${name} drawn`,
  value: 1 / seconds,
  unit: '1/s',
  spread,
});

/** @param fresh gives the procedure compiled anew, with nothing worked out yet. */
export function drillFigures(fresh: () => Procedure): Figure[] {
  const procedures = Array.from({ length: 4 }, fresh);
  const found = measure((call) => targetsOf(procedures[call]!), 3, 1);
  const first = measure(
    (call) => {
      const one = procedures[call]!;
      for (const target of targetsOf(one).rules) drawScenario(one, target, 'wide', seeded(1));
    },
    3,
    1,
  );
  const procedure = fresh();
  const { rules, twins } = targetsOf(procedure);
  const random = seeded(1);
  const calls = 50_000;
  return [
    { name: 'drill targets found', value: found.seconds * 1e3, unit: 'ms', spread: found.spread },
    {
      name: `first wide scenario of a rule, mean of ${rules.length}`,
      value: (first.seconds / rules.length) * 1e3,
      unit: 'ms',
      spread: first.spread,
    },
    ...(['wide', 'near', 'edge'] as const).map((closeness) =>
      perSecond(
        `scenarios, ${closeness}`,
        measure((call) => drawScenario(procedure, rules[call % rules.length]!, closeness, random), 4, calls),
      ),
    ),
    perSecond(
      'twin pairs',
      measure((call) => drawTwin(procedure, twins[call % twins.length]!, random), 4, calls),
    ),
  ];
}

/** Random states decided from the deck's text: what they show that the targets don't have must be nothing. */
export function bruteForceFigures(procedure: Procedure, states: number): Figure[] {
  const claims = claimsOf(targetsOf(procedure));
  const seen = bruteForce(procedure, states, seeded(11));
  return (['rules', 'inputs', 'edges'] as const).flatMap((kind) => [
    {
      name: `${kind} shown by ${states} random states of ${procedure.deck.id}, of ${claims[kind].size}`,
      value: seen[kind].size,
      unit: kind,
    },
    {
      name: `${kind} shown by them that the targets lack`,
      value: notAmong(seen[kind], claims[kind]).length,
      unit: kind,
    },
  ]);
}
