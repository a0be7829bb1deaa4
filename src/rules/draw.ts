/** Fresh states for a rule: never the same numbers, always the same answer. */
import { quantityOf } from '../deck/lookup.ts';
import { measure } from './intervals.ts';
import type { Random } from './random.ts';
import { callableRegionOf, findRule } from './region.ts';
import { sample } from './sample.ts';
import type { Box } from './space.ts';
import { multiplesIn } from './steps.ts';
import type { IntervalSet, PhaseRules, Procedure, Rule, State, Table } from './types.ts';

/**
 * A state in which the rule decides, in one of its table's phases (each phase in which it can decide
 * equally likely), every value a multiple of its quantity's step. Half of the draws go by size, half
 * give every part of the region the same chance, so that small corners are met too.
 * Null when there is no such state: the rule never decides, or only between two steps.
 */
export function drawState(
  procedure: Procedure,
  tableId: string,
  ruleId: string,
  random: Random,
): { phase: string; state: State } | null {
  const places = [...procedure.phases.values()].flatMap((rules) => {
    const found = findRule(rules, tableId, ruleId);
    const boxes = found ? drawableBoxes(procedure, rules, found.table, found.rule) : [];
    return boxes.length > 0 ? [{ rules, boxes }] : [];
  });
  const place = places[Math.floor(random() * places.length)];
  if (!place) return null;
  const { box } = pickBox(place.boxes, random);
  return { phase: place.rules.phase.id, state: stateIn(procedure, place.rules, box, random) };
}

interface DrawableBox {
  readonly box: Box;
  /** The box's share of the phase, from 0 to 1. */
  readonly share: number;
}

const known = new WeakMap<PhaseRules, Map<Rule, readonly DrawableBox[]>>();

function drawableBoxes(
  procedure: Procedure,
  rules: PhaseRules,
  table: Table,
  rule: Rule,
): readonly DrawableBox[] {
  const ofPhase = known.get(rules) ?? new Map<Rule, readonly DrawableBox[]>();
  known.set(rules, ofPhase);
  const boxes =
    ofPhase.get(rule) ??
    callableRegionOf(procedure, rules, table, rule).map((box) => ({ box, share: shareOf(rules, box) }));
  ofPhase.set(rule, boxes);
  return boxes;
}

function shareOf({ box: whole }: PhaseRules, box: Box): number {
  return [...box].reduce((share, [id, set]) => {
    const { lo, hi } = whole.get(id)!;
    return hi > lo ? (share * measure(set)) / (hi - lo) : share;
  }, 1);
}

function pickBox(boxes: readonly DrawableBox[], random: Random): DrawableBox {
  const evenly = random() < 0.5;
  const total = boxes.reduce((sum, { share }) => sum + share, 0);
  if (evenly || total === 0) return boxes[Math.floor(random() * boxes.length)]!;
  let rest = random() * total;
  return boxes.find(({ share }) => (rest -= share) < 0) ?? boxes[boxes.length - 1]!;
}

function stateIn({ deck }: Procedure, rules: PhaseRules, box: Box, random: Random): State {
  const values = [...rules.box].map(([id, range]) => {
    const { step } = quantityOf(deck, id);
    // Never null: the box's sets hold multiples of the step, and a phase's range holds its ends.
    return [id, sample(partOf(box.get(id) ?? [range], step, random), step, random)!] as const;
  });
  return Object.fromEntries(values);
}

/** Half of the time the whole set, else one of its pieces, so that `3, > 10` gives a 3 now and then. */
function partOf(set: IntervalSet, step: number, random: Random): IntervalSet {
  if (set.length === 1 || random() < 0.5) return set;
  const pieces = set.filter((piece) => multiplesIn(piece, step).count > 0);
  const piece = pieces[Math.floor(random() * pieces.length)];
  return piece ? [piece] : set;
}
