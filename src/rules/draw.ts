/** Fresh states for a rule: never the same numbers, always the same answer. */
import { quantityOf } from '../deck/lookup.ts';
import { measure } from './intervals.ts';
import type { Random } from './random.ts';
import { findRule, lookForRegion } from './region.ts';
import { sample } from './sample.ts';
import type { Box } from './space.ts';
import { multiplesIn } from './steps.ts';
import type { IntervalSet, PhaseRules, Procedure, Rule, State, Table } from './types.ts';
import { decides, fittingState } from './witness.ts';

/** Enough for every table a person writes: a draw must not keep the page waiting. */
const mostBoxes = 300;
/** In words of 32 atoms looked at; about a tenth of a second. */
const drawWork = 1_000_000;
/** Draws until the search for a state that the rule decides is given up. */
const mostDraws = 60;

/**
 * A state in which the rule decides, in one of its table's phases (each phase in which it can decide
 * equally likely), every value a multiple of its quantity's step. Half of the draws go by size, half
 * give every part of the region the same chance, so that small corners are met too.
 * Null when there is no such state: the rule never decides, or only between two steps. In a table too
 * tangled for the work allowed it may be a state that the rule fits but another decides.
 */
export function drawState(
  procedure: Procedure,
  tableId: string,
  ruleId: string,
  random: Random,
): { phase: string; state: State } | null {
  const places = [...procedure.phases.values()].flatMap((rules) => {
    const found = findRule(rules, tableId, ruleId);
    return (found && placeOf(procedure, rules, found.table, found.rule)) ?? [];
  });
  const place = places[Math.floor(random() * places.length)];
  if (!place) return null;
  return { phase: place.rules.phase.id, state: stateAt(procedure, place, random) };
}

/** A phase in which the rule decides, and where. */
interface Place {
  readonly rules: PhaseRules;
  readonly table: Table;
  readonly rule: Rule;
  readonly region: Drawable;
}

function placeOf(procedure: Procedure, rules: PhaseRules, table: Table, rule: Rule): Place | null {
  const region = drawable(procedure, rules, table, rule);
  const somewhere = region.boxes.length > 0 || !region.complete;
  return somewhere && fittingState(procedure, rules, rule, () => 0) ? { rules, table, rule, region } : null;
}

function stateAt(procedure: Procedure, { rules, table, rule, region }: Place, random: Random): State {
  const { boxes, complete } = region;
  const draw = (): State =>
    boxes.length > 0
      ? stateIn(procedure, rules, pickBox(boxes, random).box, random)
      : fittingState(procedure, rules, rule, random)!;
  let state = draw();
  // What an unfinished search left may belong to another rule. If only such states come up, one of them
  // is asked: it is graded by the rule that decides it.
  for (let i = 0; !complete && i < mostDraws && !decides(rules, table, rule, state); i++) state = draw();
  return state;
}

interface DrawableBox {
  readonly box: Box;
  /** The box's share of the phase, from 0 to 1. */
  readonly share: number;
}

/** A rule's region, or as much of it as was found. */
interface Drawable {
  readonly boxes: readonly DrawableBox[];
  readonly complete: boolean;
}

const known = new WeakMap<PhaseRules, Map<Rule, Drawable>>();

function drawable(procedure: Procedure, rules: PhaseRules, table: Table, rule: Rule): Drawable {
  const ofPhase = known.get(rules) ?? new Map<Rule, Drawable>();
  known.set(rules, ofPhase);
  const found = ofPhase.get(rule) ?? lookFor(procedure, rules, table, rule);
  ofPhase.set(rule, found);
  return found;
}

function lookFor(procedure: Procedure, rules: PhaseRules, table: Table, rule: Rule): Drawable {
  const limits = { most: mostBoxes, budget: { left: drawWork } };
  const { boxes, complete } = lookForRegion(procedure, rules, table, rule, limits);
  return { boxes: boxes.map((box) => ({ box, share: shareOf(rules, box) })), complete };
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
