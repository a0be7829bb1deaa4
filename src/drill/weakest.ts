/** What of the targets is weakest, kind by kind: what the pilot should be asked next. */
import type { CardId } from '../cards/types.ts';
import { shuffled, type Random } from '../rules/random.ts';
import type { Procedure } from '../rules/types.ts';
import { hasRoom } from './clear-states.ts';
import { cardOf } from './targets.ts';
import type { EdgeTarget, RuleTarget, RunTargets, TwinTarget, Weakness } from './types.ts';

/** In one run, of one rule in one phase. */
const mostOfRule = 2;

/** Equals come by lot, drawn once: more of a kind holds what fewer of it would. */
export class Weakest {
  readonly #procedure: Procedure;
  readonly #weakness: Weakness;
  readonly #random: Random;
  readonly #roomyFirst: boolean;
  readonly #recalls = new Map<CardId, number>();
  readonly #rules: readonly RuleTarget[];
  readonly #edges: readonly EdgeTarget[];
  readonly #twins: readonly TwinTarget[];

  /** @param roomyFirst rules that have states clear of every edge come before those that have none. */
  constructor(
    procedure: Procedure,
    targets: RunTargets,
    weakness: Weakness,
    random: Random,
    roomyFirst: boolean,
  ) {
    this.#procedure = procedure;
    this.#weakness = weakness;
    this.#random = random;
    this.#roomyFirst = roomyFirst;
    this.#rules = this.#inRounds(this.#sorted(targets.rules, (target) => this.#recall(target)));
    this.#edges = this.#weakestEdges(targets.edges);
    this.#twins = this.#weakestTwins(targets.twins);
  }

  /** @returns fewer where there are not so many, even with each of them twice. */
  rules(count: number): RuleTarget[] {
    const first = this.#roomyFirst ? this.#roomy(count) : this.#rules.slice(0, count);
    return Array.from({ length: mostOfRule }, () => first)
      .flat()
      .slice(0, count);
  }

  edges(count: number): readonly EdgeTarget[] {
    return this.#edges.slice(0, count);
  }

  twins(count: number): readonly TwinTarget[] {
    return this.#twins.slice(0, count);
  }

  /** Looks no further than it must: whether a rule has room is searched for. */
  #roomy(count: number): RuleTarget[] {
    const roomy: RuleTarget[] = [];
    const narrow: RuleTarget[] = [];
    for (const target of this.#rules) {
      if (roomy.length === count) break;
      (hasRoom(this.#procedure, target) ? roomy : narrow).push(target);
    }
    return [...roomy, ...narrow].slice(0, count);
  }

  /** Every rule once, in its first phase, before any in its second. */
  #inRounds(weakest: readonly RuleTarget[]): RuleTarget[] {
    const rounds: RuleTarget[][] = [];
    const seen = new Map<CardId, number>();
    for (const target of weakest) {
      const round = seen.get(cardOf(target)) ?? 0;
      seen.set(cardOf(target), round + 1);
      (rounds[round] ??= []).push(target);
    }
    return rounds.flat();
  }

  #weakestEdges(targets: readonly EdgeTarget[]): readonly EdgeTarget[] {
    const misses = new Map(targets.map((edge) => [edge, this.#weakness.edgeMisses(edge)]));
    return this.#sorted(
      targets,
      (edge) => -misses.get(edge)!,
      (edge) => this.#recall(edge),
    );
  }

  #weakestTwins(targets: readonly TwinTarget[]): readonly TwinTarget[] {
    const times = new Map(targets.map((twin) => [twin, this.#weakness.twinTimes(twin)]));
    // Of those drilled equally often, one pair for a rule before another has two.
    const rounds = new Map<TwinTarget, number>();
    const ofRule = new Map<string, number>();
    for (const twin of shuffled(targets, this.#random)) {
      const key = `${cardOf(twin)} ${times.get(twin)!}`;
      rounds.set(twin, ofRule.get(key) ?? 0);
      ofRule.set(key, rounds.get(twin)! + 1);
    }
    return this.#sorted(
      targets,
      (twin) => times.get(twin)!,
      (twin) => rounds.get(twin)!,
      (twin) => this.#recall(twin),
    );
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
