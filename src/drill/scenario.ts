/** A state for a target, drawn from exactly the states for which it was asked. */
import { decideIn } from '../rules/decide.ts';
import type { Random } from '../rules/random.ts';
import { multipleOf } from '../rules/steps.ts';
import type { Procedure, State } from '../rules/types.ts';
import { groundOf, isEdge, type Crossing, type Ground } from './crossings.ts';
import { clearStatesOf } from './clear-states.ts';
import { clearValues, drawState, everyValue, type Cell, type Line } from './lines.ts';
import type { Closeness, EdgeTarget, RuleTarget, Scenario, ScenarioEdge } from './types.ts';

/** How many steps further than the last value before the edge a near one may be. */
const fewSteps = 3;

/**
 * A state in which the target's rule decides, after hit policy and overriding tables, every value a
 * multiple of its quantity's step. Of an edge target the state lies at that edge, near it when asked for
 * wide; of a rule target at one of its edges, each equally likely, when not asked for wide. Where the
 * region is too thin, or has no edge, the nearest that it has is drawn and said in `closeness`.
 * Null when the target is none of `targetsOf(procedure)`.
 */
export function drawScenario(
  procedure: Procedure,
  target: RuleTarget | EdgeTarget,
  closeness: Closeness,
  random: Random,
): Scenario | null {
  const ground = groundOf(procedure, target);
  if (!ground || ground.region.length === 0) return null;
  const atEdge = 'side' in target;
  const isWide = !atEdge && closeness === 'wide';
  const ofRule = isWide ? [] : edgeSamplersOf(ground);
  if (isWide || (!atEdge && ofRule.length === 0))
    return made(ground, target, 'wide', null, clearStatesOf(ground).draw(random));
  const edges = atEdge
    ? ofRule.filter(({ line, side }) => line.quantity === target.quantity && side === target.side)
    : ofRule;
  const edge = edges[Math.floor(random() * edges.length)];
  if (!edge) return null;
  const { state, crossing, count } = edge.draw(closeness === 'edge' ? 'edge' : 'near', random);
  const { quantity } = edge.line;
  return made(
    ground,
    target,
    count === crossing.inner ? 'edge' : 'near',
    { quantity, at: crossing.at, distance: Math.abs(state[quantity]! - crossing.at), side: crossing.side },
    state,
  );
}

function made(
  { field }: Ground,
  { phase, table, rule }: RuleTarget,
  closeness: Closeness,
  edge: ScenarioEdge | null,
  state: State,
): Scenario {
  return { phase, state, table, rule, closeness, edge, decision: decideIn(field.rules, state) };
}

export interface PlacedCrossing {
  readonly crossing: Crossing;
  /** Other inputs anywhere in it, and well away from their own edges. */
  readonly anywhere: Cell;
  readonly clear: Cell;
}

/** One edge of a rule with all the places where it is met. */
class EdgeSampler {
  readonly line: Line;
  readonly side: Crossing['side'];
  readonly #places: readonly PlacedCrossing[];

  constructor(line: Line, side: Crossing['side'], places: readonly PlacedCrossing[]) {
    this.line = line;
    this.side = side;
    this.#places = places;
  }

  draw(closeness: 'near' | 'edge', random: Random) {
    const { crossing, anywhere, clear } = this.#places[Math.floor(random() * this.#places.length)]!;
    const state = drawState(closeness === 'edge' ? anywhere : clear, random);
    const furthest = closeness === 'edge' ? 0 : Math.min(fewSteps, crossing.room - 1);
    const away = furthest === 0 ? 0 : 1 + Math.floor(random() * furthest);
    const count = crossing.inner + (crossing.side === 'above' ? -away : away);
    state[this.line.quantity] = multipleOf(this.line.step, count);
    return { state, crossing, count };
  }
}

const known = new WeakMap<Ground, readonly EdgeSampler[]>();

function edgeSamplersOf(ground: Ground): readonly EdgeSampler[] {
  const there = known.get(ground);
  if (there) return there;
  const samplers = ground.lines.flatMap((line) => {
    const places = placedCrossings(ground, line);
    return (['below', 'above'] as const).flatMap((side) => {
      const ofSide = places.filter(({ crossing }) => crossing.side === side && isEdge(crossing));
      return ofSide.length > 0 ? [new EdgeSampler(line, side, ofSide)] : [];
    });
  });
  known.set(ground, samplers);
  return samplers;
}

export function placedCrossings(ground: Ground, line: Line): PlacedCrossing[] {
  const { lines } = ground;
  return ground.crossings(line.quantity).map((crossing) => ({
    crossing,
    anywhere: { lines, choices: lines.map((one) => everyValue(crossing.block, one)) },
    clear: { lines, choices: lines.map((one) => clearValues(crossing.block, one)) },
  }));
}
