/** From a flown pass to a drill of just what was missed in it. */
import type { RunTargets } from '../../drill/plan.ts';
import type { RuleTarget } from '../../drill/types.ts';
import type { PassAssessment } from '../../motion/types.ts';
import { targetsIn } from './drill-knowledge.ts';
import type { Training } from './training.svelte.ts';

/** All there is to drill of the rules that were missed, edges and twins included, in each of their phases. */
export function targetsOfPass(training: Training, { rules }: PassAssessment): RunTargets {
  const missed = new Set(
    rules.filter((tally) => tally.missed > 0).map(({ table, rule }) => `${table}/${rule}`),
  );
  const all = targetsIn(training, null);
  const wanted = <T extends RuleTarget>(targets: readonly T[]): T[] =>
    targets.filter(({ table, rule }) => missed.has(`${table}/${rule}`));
  return { rules: wanted(all.rules), edges: wanted(all.edges), twins: wanted(all.twins) };
}
