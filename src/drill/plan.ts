/** Which scenarios a run holds, and in which order. */
import { cardId } from '../cards/ids.ts';
import type { CardId } from '../cards/types.ts';
import { controlOf, neutralOf, phaseOf, tableOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import { seeded, shuffled, type Random } from '../rules/random.ts';
import type { Decision, Procedure } from '../rules/types.ts';
import { inRunOrder } from './run-order.ts';
import { drawScenario } from './scenario.ts';
import { drawTwin } from './twin.ts';
import type {
  Closeness,
  EdgeTarget,
  Plan,
  PlanItem,
  RuleTarget,
  Scenario,
  Targets,
  Twin,
  TwinTarget,
  Weakness,
} from './types.ts';

export const runLengths = { least: 10, most: 30 };

export type RunTargets = Pick<Targets, 'rules' | 'edges' | 'twins'>;

/** Says which rule's card an answer to a target counts on. */
export const cardOf = ({ table, rule }: RuleTarget): CardId => cardId('rule', table, rule);

/**
 * A run of scenarios: of ten, four for the weakest rules, two at the weakest edges, and two twin pairs.
 * - Rules: lowest chance of recall first, those never answered before all; a rule comes back, in another
 *   phase if it has one, only when no other is left.
 * - Edges: those missed most since they were last answered desired; then those of the weakest rules.
 * - Twins: those drilled least; then those of the weakest rules.
 *
 * What is equally weak is chosen by lot. Where there are no twins or edges, rules take their place. The
 * order: see `inRunOrder`. An item whose phase begins at a gate never met is marked `unmet`.
 * @param targets all of the procedure's, or those to be drilled.
 * @param length 10 to 30; another number is moved there. The run is empty when there are no targets.
 */
export function composeRun(
  procedure: Procedure,
  targets: RunTargets,
  weakness: Weakness,
  length: number,
  random: Random,
): Plan {
  const wanted = Math.min(Math.max(Math.round(length), runLengths.least), runLengths.most);
  const pick = new Picker(targets, weakness, random);
  const pairs = pick.twins(Math.floor(wanted / 5));
  const edges = pick.edges(Math.round(wanted / 5));
  const rules = pick.rules(wanted - 2 * pairs.length - edges.length);
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
  return { items: inRunOrder(shuffled(groups, random)) };
}

class Picker {
  readonly #targets: RunTargets;
  readonly #weakness: Weakness;
  readonly #random: Random;
  readonly #recalls = new Map<CardId, number>();

  constructor(targets: RunTargets, weakness: Weakness, random: Random) {
    this.#targets = targets;
    this.#weakness = weakness;
    this.#random = random;
  }

  rules(count: number): RuleTarget[] {
    const weakest = this.#sorted(this.#targets.rules, (target) => this.#recall(target));
    const rounds: RuleTarget[][] = [];
    const seen = new Map<CardId, number>();
    for (const target of weakest) {
      const round = seen.get(cardOf(target)) ?? 0;
      seen.set(cardOf(target), round + 1);
      (rounds[round] ??= []).push(target);
    }
    return repeated(rounds.flat(), count);
  }

  edges(count: number): EdgeTarget[] {
    const misses = new Map(this.#targets.edges.map((edge) => [edge, this.#weakness.edgeMisses(edge)]));
    return this.#sorted(
      this.#targets.edges,
      (edge) => -misses.get(edge)!,
      (edge) => this.#recall(edge),
    ).slice(0, count);
  }

  twins(count: number): TwinTarget[] {
    const times = new Map(this.#targets.twins.map((twin) => [twin, this.#weakness.twinTimes(twin)]));
    // Of those drilled equally often, one pair for a rule before another has two.
    const rounds = new Map<TwinTarget, number>();
    const ofRule = new Map<string, number>();
    for (const twin of shuffled(this.#targets.twins, this.#random)) {
      const key = `${cardOf(twin)} ${times.get(twin)!}`;
      rounds.set(twin, ofRule.get(key) ?? 0);
      ofRule.set(key, rounds.get(twin)! + 1);
    }
    return this.#sorted(
      this.#targets.twins,
      (twin) => times.get(twin)!,
      (twin) => rounds.get(twin)!,
      (twin) => this.#recall(twin),
    ).slice(0, count);
  }

  #recall(target: RuleTarget): number {
    const card = cardOf(target);
    const there = this.#recalls.get(card);
    if (there !== undefined) return there;
    const recall = this.#weakness.recall(card) ?? -1;
    this.#recalls.set(card, recall);
    return recall;
  }

  /** By the first key, then the second; equals by lot. */
  #sorted<T>(items: readonly T[], ...keys: readonly ((item: T) => number)[]): T[] {
    return shuffled(items, this.#random).sort((one, other) => {
      for (const key of keys) {
        const order = key(one) - key(other);
        if (order !== 0) return order;
      }
      return 0;
    });
  }
}

function repeated<T>(items: readonly T[], count: number): T[] {
  if (items.length === 0) return [];
  return Array.from({ length: count }, (_, i) => items[i % items.length]!);
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

/** The pair that a twin item is a half of. */
export function twinFor(procedure: Procedure, item: PlanItem & { kind: 'twin' }): Twin {
  return drawTwin(procedure, item.target, seeded(item.seed))!;
}
