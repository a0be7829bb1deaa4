/** Which scenarios a run holds, and in which order. */
import type { CardId } from '../cards/types.ts';
import { controlOf, neutralOf, phaseOf, tableOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import { seeded, shuffled, type Random } from '../rules/random.ts';
import type { Decision, Procedure } from '../rules/types.ts';
import { hasRoom } from './clear-states.ts';
import { inRunOrder } from './run-order.ts';
import { drawScenario } from './scenario.ts';
import { cardOf } from './targets.ts';
import { drawTwin } from './twin.ts';
import type {
  Closeness,
  EdgeTarget,
  Plan,
  PlanItem,
  RuleTarget,
  RunTargets,
  Scenario,
  Twin,
  TwinTarget,
  Weakness,
} from './types.ts';
import { Weakest } from './weakest.ts';

export type { RunTargets };

export const runLengths = { least: 10, most: 30 };

/**
 * A run of scenarios: of ten, four for the weakest rules, two at the weakest edges, and two twin pairs.
 * - Rules: lowest chance of recall first, those never answered before all; a rule comes back, in another
 *   phase if it has one, only when no other is left. At a level well clear of the edges those that have
 *   room for it come before those that have none.
 * - Edges: those missed most since they were last answered desired; then those of the weakest rules.
 * - Twins: those drilled least; then those of the weakest rules.
 *
 * What is equally weak is chosen by lot. Where one kind has too few, the others take their place; no rule
 * is asked more than twice in a phase, so with few targets the run is shorter. The order: see `inRunOrder`.
 * An item whose phase begins at a gate never met is marked `unmet`.
 * @param targets all of the procedure's, or those to be drilled. With `times` the run holds just these,
 * each so often (a twin pair's halves count once each), whatever the length; 30 at most.
 * @param length 10 to 30; another number is moved there. The run is empty when there are no targets.
 * @param closeness of the level at which the run begins.
 */
export function composeRun(
  procedure: Procedure,
  targets: RunTargets,
  weakness: Weakness,
  length: number,
  random: Random,
  closeness: Closeness = 'edge',
): Plan {
  const weakest = new Weakest(procedure, targets, weakness, random, closeness === 'wide');
  const { rules, edges, pairs } = targets.times
    ? justThese(weakest, targets, targets.times)
    : mixed(weakest, Math.min(Math.max(Math.round(length), runLengths.least), runLengths.most));
  const seedOf = () => Math.floor(random() * 2 ** 32);
  const part = (target: RuleTarget, card: CardId, seed: number) => ({
    card,
    phase: target.phase,
    unmet: !weakness.met(phaseOf(procedure.deck, target.phase).from),
    seed,
  });
  const groups: PlanItem[][] = [
    ...rules.map((target) => [{ kind: 'rule' as const, target, ...part(target, cardOf(target), seedOf()) }]),
    ...edges.map((target) => [{ kind: 'edge' as const, target, ...part(target, cardOf(target), seedOf()) }]),
    ...pairs.map((target, pair): PlanItem[] => {
      const seed = seedOf();
      const twin = drawTwin(procedure, target, seeded(seed))!;
      const other = cardOf(deciderOf(procedure.deck, twin));
      const halves: PlanItem[] = [
        { kind: 'twin', target, pair, half: 'state', ...part(target, cardOf(target), seed) },
        { kind: 'twin', target, pair, half: 'other', ...part(target, other, seed) },
      ];
      return random() < 0.5 ? halves : halves.toReversed();
    }),
  ];
  return { items: inRunOrder(shuffled(groups, random).flat()) };
}

interface Picked {
  readonly rules: readonly RuleTarget[];
  readonly edges: readonly EdgeTarget[];
  readonly pairs: readonly TwinTarget[];
}

function mixed(weakest: Weakest, wanted: number): Picked {
  const few = weakest.twins(Math.floor(wanted / 5)).length;
  const atEdge = weakest.edges(Math.round(wanted / 5)).length;
  const rules = weakest.rules(wanted - 2 * few - atEdge);
  const edges = weakest.edges(wanted - 2 * few - rules.length);
  return { rules, edges, pairs: weakest.twins(Math.floor((wanted - rules.length - edges.length) / 2)) };
}

/** All of them once, a pair being two; then again, so often and as far as there is room. */
function justThese(weakest: Weakest, targets: RunTargets, times: number): Picked {
  const pairs = weakest.twins(Math.min(targets.twins.length, runLengths.most / 2));
  const edges: EdgeTarget[] = [];
  const rules: RuleTarget[] = [];
  const room = () => runLengths.most - 2 * pairs.length - edges.length - rules.length;
  for (let round = 0; round < times; round++) {
    edges.push(...weakest.edges(Math.min(targets.edges.length, room())));
    rules.push(...weakest.rules(Math.min(targets.rules.length, room())));
  }
  return { rules, edges, pairs };
}

/** The rule that decides in a twin's other state: for the same control, else the one that asks for most. */
function deciderOf(deck: Deck, { phase, table, rule, otherDecision }: Twin): RuleTarget {
  const found =
    otherDecision.overriding ??
    otherDecision.reasons.find(({ control }) => control === tableOf(deck, table).control) ??
    leadingReason(deck, phase, otherDecision);
  return found ? { phase, table: found.table, rule: found.rule } : { phase, table, rule };
}

function leadingReason(deck: Deck, phase: string, { reasons }: Decision) {
  const inOrder = phaseOf(deck, phase).controls.flatMap(
    (control) => reasons.find((reason) => reason.control === control) ?? [],
  );
  return (
    inOrder.find(({ control, action }) => action !== neutralOf(controlOf(deck, control)).id) ?? inOrder[0]
  );
}

/**
 * The scenario of an item: always the same for the same closeness. Twins stand one step apart whatever
 * is asked for, edges are never wide.
 */
export function scenarioFor(procedure: Procedure, item: PlanItem, closeness: Closeness): Scenario {
  const random = seeded(item.seed);
  if (item.kind !== 'twin') return drawScenario(procedure, item.target, closeness, random)!;
  const twin = drawTwin(procedure, item.target, random)!;
  const { phase, quantity, at } = twin;
  const isOther = item.half === 'other';
  const state = isOther ? twin.other : twin.state;
  const { table, rule } = isOther ? deciderOf(procedure.deck, twin) : twin;
  const value = state[quantity]!;
  return {
    phase,
    state,
    table,
    rule,
    closeness: 'edge',
    edge: {
      quantity,
      at,
      distance: Math.abs(value - at),
      side: value < (isOther ? twin.state : twin.other)[quantity]! ? 'above' : 'below',
    },
    decision: isOther ? twin.otherDecision : twin.decision,
  };
}

/** True when an item's scenario, drawn wide, stands clear of every edge: never one drawn at an edge. */
export const standsClear = (procedure: Procedure, item: PlanItem): boolean =>
  item.kind === 'rule' && hasRoom(procedure, item.target);

/** The pair that a twin item is a half of. */
export function twinFor(procedure: Procedure, item: PlanItem & { kind: 'twin' }): Twin {
  return drawTwin(procedure, item.target, seeded(item.seed))!;
}
