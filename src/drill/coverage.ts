/** How much of what there is to drill has been drilled, from what the record keeps. */
import type { CardId } from '../cards/types.ts';
import type { Performance } from '../rules/types.ts';
import { cardOf } from './targets.ts';
import type {
  Covered,
  Coverage,
  DrillFact,
  DrillMark,
  EdgeTarget,
  InputTarget,
  PlanItem,
  RuleTarget,
  Scenario,
  Targets,
} from './types.ts';

/** What an answer to a scenario puts on record besides its grade. */
export function markOf(item: PlanItem, { phase, closeness, edge }: Scenario): DrillMark {
  return {
    phase,
    closeness,
    ...(edge ? { edge: edge.quantity, side: edge.side } : {}),
    ...(item.kind === 'twin' ? { twin: true } : {}),
  };
}

/** One answer of a card's history, as the record gives it. */
export interface DrilledCall {
  readonly performance: Performance;
  readonly drill?: DrillMark;
}

/** The drilled scenarios in the histories of cards, each history oldest first. Answers without a mark are none. */
export function factsIn(
  histories: Iterable<readonly [card: CardId, calls: readonly DrilledCall[]]>,
): DrillFact[] {
  const facts: DrillFact[] = [];
  for (const [card, calls] of histories)
    for (const { performance, drill } of calls)
      if (drill) facts.push({ ...drill, card, desired: performance === 'desired' });
  return facts;
}

const ruleKey = (target: RuleTarget): string => `${target.phase} ${cardOf(target)}`;
const inputKey = (target: InputTarget): string => `${ruleKey(target)} ${target.quantity}`;
const edgeKey = (target: EdgeTarget): string => `${inputKey(target)} ${target.side}`;
const keyIn = ({ phase, card }: DrillFact): string => `${phase} ${card}`;

/**
 * Rules drilled in a phase; inputs at (or near) whose edge the rule was drilled there; twin pairs of
 * which the rule's own state was drilled: out of all. Facts of what a deck no longer holds don't count.
 */
export function coverage(
  targets: Pick<Targets, 'rules' | 'inputs' | 'twins'>,
  facts: readonly DrillFact[],
): Coverage {
  const rules = new Set(facts.map(keyIn));
  const inputs = new Set(facts.map((fact) => `${keyIn(fact)} ${fact.edge ?? ''}`));
  const twins = new Set(twinFacts(facts).map((fact) => `${keyIn(fact)} ${fact.edge ?? ''}`));
  return {
    rules: covered(targets.rules, (target) => rules.has(ruleKey(target))),
    inputs: covered(targets.inputs, (target) => inputs.has(inputKey(target))),
    twins: covered(targets.twins, (target) => twins.has(inputKey(target))),
  };
}

const twinFacts = (facts: readonly DrillFact[]) => facts.filter(({ twin }) => twin === true);

function covered<T>(targets: readonly T[], isDrilled: (target: T) => boolean): Covered {
  return { drilled: targets.filter(isDrilled).length, of: targets.length };
}

/** For `Weakness`: misses at each edge since it was last answered desired. */
export function edgeMissesIn(facts: readonly DrillFact[]): (target: EdgeTarget) => number {
  const misses = new Map<string, number>();
  for (const fact of facts) {
    if (!fact.edge || !fact.side) continue;
    const key = `${keyIn(fact)} ${fact.edge} ${fact.side}`;
    misses.set(key, fact.desired ? 0 : (misses.get(key) ?? 0) + 1);
  }
  return (target) => misses.get(edgeKey(target)) ?? 0;
}

/** For `Weakness`: how often each twin pair was drilled, by the half that the rule decides. */
export function twinTimesIn(facts: readonly DrillFact[]): (target: InputTarget) => number {
  const times = new Map<string, number>();
  for (const fact of twinFacts(facts)) {
    const key = `${keyIn(fact)} ${fact.edge ?? ''}`;
    times.set(key, (times.get(key) ?? 0) + 1);
  }
  return (target) => times.get(inputKey(target)) ?? 0;
}
