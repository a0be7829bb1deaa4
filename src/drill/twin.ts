/** Two states alike but for one input, with different required actions: the sharpest way to show an edge. */
import { decideIn } from '../rules/decide.ts';
import type { Random } from '../rules/random.ts';
import { multipleOf } from '../rules/steps.ts';
import type { Procedure } from '../rules/types.ts';
import { groundOf, type Ground } from './crossings.ts';
import { drawState, type Line } from './lines.ts';
import { placedCrossings, type PlacedCrossing } from './scenario.ts';
import type { Twin, TwinTarget } from './types.ts';

/**
 * A twin pair: in `state` the target's rule decides, in `other`, which differs in the target's quantity
 * alone, something else is asked of its control, or of all when an overriding action comes or goes. The
 * two values are as close as the rule's region allows, one step where it touches the other's. The other
 * quantities lie well away from their own edges, where they can.
 * Null when the target is none of `targetsOf(procedure)`.
 */
export function drawTwin(procedure: Procedure, target: TwinTarget, random: Random): Twin | null {
  const ground = groundOf(procedure, target);
  const line = ground?.lines.find(({ quantity }) => quantity === target.quantity);
  if (!ground || !line) return null;
  const places = placesOf(ground, line);
  const place = places[Math.floor(random() * places.length)];
  if (!place) return null;
  const { inner, outer, at } = place.crossing;
  const { quantity, step } = line;
  const drawn = drawState(place.clear, random);
  const state = { ...drawn, [quantity]: multipleOf(step, inner) };
  const other = { ...drawn, [quantity]: multipleOf(step, outer) };
  const { phase, table, rule } = target;
  const { rules } = ground.field;
  return {
    phase,
    table,
    rule,
    quantity,
    at,
    state,
    other,
    decision: decideIn(rules, state),
    otherDecision: decideIn(rules, other),
  };
}

const known = new WeakMap<Ground, Map<Line, readonly PlacedCrossing[]>>();

/** Of the two sides only those with the smaller gap. */
function placesOf(ground: Ground, line: Line): readonly PlacedCrossing[] {
  const ofGround = known.get(ground) ?? new Map<Line, readonly PlacedCrossing[]>();
  known.set(ground, ofGround);
  const there = ofGround.get(line);
  if (there) return there;
  const all = placedCrossings(ground, line);
  const gap = ({ crossing }: PlacedCrossing) => Math.abs(crossing.outer - crossing.inner);
  const least = Math.min(...all.map(gap));
  const places = all.filter((place) => gap(place) === least);
  ofGround.set(line, places);
  return places;
}
