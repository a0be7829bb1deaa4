/** What the record knows of a deck's drills: which rules and edges are weak, and how much has been drilled. */
import { coverage, edgeMissesIn, factsIn, twinTimesIn } from '../../drill/coverage.ts';
import { targetsOf } from '../../drill/targets.ts';
import type { RunTargets } from '../../drill/plan.ts';
import type { Coverage, DrillFact, Weakness } from '../../drill/types.ts';
import { metGates } from '../../memory/met.ts';
import type { Training } from './training.svelte.ts';

const factsOf = (training: Training): DrillFact[] =>
  factsIn(
    training.cards
      .filter(({ kind }) => kind === 'rule')
      .map(({ id }) => [id, training.history(id)?.calls ?? []] as const),
  );

export function weaknessOf(training: Training): Weakness {
  const facts = factsOf(training);
  const met = metGates(
    training.cards.map((card) => ({ ...card, memory: training.history(card.id)?.memory ?? null })),
  );
  return {
    recall: (card) => training.recallNow(card),
    edgeMisses: edgeMissesIn(facts),
    twinTimes: twinTimesIn(facts),
    met: (gate) => met(gate),
  };
}

export const coverageOf = (training: Training): Coverage =>
  coverage(targetsOf(training.procedure), factsOf(training));

/** All there is to drill in a phase, or in the whole deck. */
export function targetsIn(training: Training, phase: string | null): RunTargets {
  const all = targetsOf(training.procedure);
  if (phase === null) return all;
  const inPhase = <T extends { readonly phase: string }>(targets: readonly T[]): T[] =>
    targets.filter((target) => target.phase === phase);
  return { rules: inPhase(all.rules), edges: inPhase(all.edges), twins: inPhase(all.twins) };
}
