/** Puts labels beside marks on a picture so that none covers another label, a mark or, if it can be helped, a line. */
import type { Point } from './flown-path.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LabelWanted extends Point {
  /** Radius of the mark that the label belongs to. */
  readonly radius: number;
  readonly width: number;
  readonly height: number;
}

export interface PlacedLabel extends Box {
  /** How its text should be aligned towards the mark. */
  readonly anchor: 'start' | 'middle' | 'end';
  /** From mark to label, when the label could not stand right beside it. */
  readonly leader: readonly [Point, Point] | null;
}

export interface Surroundings {
  readonly bounds: Box;
  readonly marks: readonly (Point & { readonly radius: number })[];
  /** Points along lines, which labels should keep off but may cross if there is no other room. */
  readonly lines: readonly Point[];
  /** Labels look better on the far side of this. */
  readonly centre: Point;
}

const costs = { label: 60, mark: 40, outside: 80, line: 5, leader: 8, diagonal: 1.5, slip: 1, inward: 2 };
const reaches = [5, 22, 40, 62];

interface Candidate extends PlacedLabel {
  readonly own: number;
}

/** Directions from a mark in which its label may stand, in turns of a full circle. */
const near = Array.from({ length: 8 }, (_, i) => i / 8);
const far = Array.from({ length: 16 }, (_, i) => i / 16);
/** Beside its mark a label may also stand a little high or low, in shares of its height. */
const slips = [0, -0.3, 0.3];

function candidatesFor(label: LabelWanted, around: Surroundings): readonly Candidate[] {
  const outward = { x: label.x - around.centre.x, y: label.y - around.centre.y };
  const outwardLength = Math.hypot(outward.x, outward.y) || 1;
  const candidate = (turn: number, reach: number, step: number, slip: number): Candidate => {
    const [dx, dy] = [Math.cos(turn * 2 * Math.PI), Math.sin(turn * 2 * Math.PI)];
    const distance = label.radius + reach;
    const touch = { x: label.x + dx * distance, y: label.y + dy * distance };
    const anchor = dx > 0.3 ? 'start' : dx < -0.3 ? 'end' : 'middle';
    const slanted = Math.abs(dx) < 0.95 && Math.abs(dy) < 0.95;
    const inward = 1 - (dx * outward.x + dy * outward.y) / outwardLength;
    return {
      x: touch.x - (anchor === 'start' ? 0 : anchor === 'end' ? label.width : label.width / 2),
      y: touch.y - (label.height * (1 - dy)) / 2 + slip * label.height,
      width: label.width,
      height: label.height,
      anchor,
      leader:
        step === 0
          ? null
          : [
              { x: label.x + dx * label.radius, y: label.y + dy * label.radius },
              { x: touch.x - dx * 3, y: touch.y - dy * 3 },
            ],
      own:
        (slanted ? costs.diagonal : 0) +
        (slip === 0 ? 0 : costs.slip) +
        inward * costs.inward +
        step * costs.leader,
    };
  };
  return reaches.flatMap((reach, step) =>
    (step === 0 ? near : far).flatMap((turn) =>
      (step === 0 && turn % 0.5 === 0 ? slips : [0]).map((slip) => candidate(turn, reach, step, slip)),
    ),
  );
}

/** Area two boxes share, as a share of the smaller; 0 when apart. */
export function overlap(one: Box, other: Box): number {
  const width = Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x);
  const height = Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y);
  if (width <= 0 || height <= 0) return 0;
  return (width * height) / Math.min(one.width * one.height, other.width * other.height);
}

const holds = (box: Box, point: Point, margin: number): boolean =>
  point.x > box.x - margin &&
  point.x < box.x + box.width + margin &&
  point.y > box.y - margin &&
  point.y < box.y + box.height + margin;

type Segment = readonly [Point, Point];

function pointsOn(segment: Segment): readonly Point[] {
  const [from, to] = segment;
  return [0.2, 0.4, 0.6, 0.8].map((share) => ({
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
  }));
}

const runsThrough = (leader: Segment, box: Box): boolean =>
  pointsOn(leader).some((point) => holds(box, point, 0));

/** Whether two segments cross: the ends of each lie on both sides of the other. */
function cross(one: Segment, other: Segment): boolean {
  const side = ([from, to]: Segment, point: Point): number =>
    Math.sign((to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x));
  return side(one, other[0]) !== side(one, other[1]) && side(other, one[0]) !== side(other, one[1]);
}

function fixedCost(candidate: Candidate, around: Surroundings): number {
  const { bounds } = around;
  const spill =
    Math.max(0, bounds.x - candidate.x) +
    Math.max(0, candidate.x + candidate.width - bounds.x - bounds.width) +
    Math.max(0, bounds.y - candidate.y) +
    Math.max(0, candidate.y + candidate.height - bounds.y - bounds.height);
  const marks = around.marks.filter((mark) => holds(candidate, mark, mark.radius - 1)).length;
  const lines = around.lines.filter((point) => holds(candidate, point, 2)).length;
  const { leader } = candidate;
  const pierced = leader
    ? around.marks.filter((mark) =>
        pointsOn(leader).some((point) => Math.hypot(point.x - mark.x, point.y - mark.y) < mark.radius - 3),
      ).length
    : 0;
  return (
    candidate.own +
    (spill > 0 ? costs.outside + spill : 0) +
    (marks + pierced) * costs.mark +
    Math.min(lines, 6) * costs.line
  );
}

function between(one: Candidate, other: Candidate): number {
  const shared = overlap(one, other);
  const crossed =
    (one.leader !== null && runsThrough(one.leader, other)) ||
    (other.leader !== null && runsThrough(other.leader, one)) ||
    (one.leader !== null && other.leader !== null && cross(one.leader, other.leader));
  return (shared > 0 ? costs.label + shared * costs.label : 0) + (crossed ? costs.mark : 0);
}

type Choice = { readonly candidate: Candidate; readonly fixed: number };

/** Each label takes its cheapest place given the others, in turn, until none wants to move. */
function settle(choices: readonly (readonly Choice[])[], order: readonly number[]): readonly Choice[] {
  const chosen: (Choice | null)[] = choices.map(() => null);
  for (let sweep = 0; sweep < 8; sweep++) {
    let moved = false;
    for (const i of order) {
      let best: Choice | null = null;
      let bestCost = Infinity;
      for (const choice of choices[i]!) {
        let cost = choice.fixed;
        for (let j = 0; j < chosen.length && cost < bestCost; j++) {
          const other = chosen[j];
          if (j !== i && other) cost += between(choice.candidate, other.candidate);
        }
        if (cost < bestCost) [best, bestCost] = [choice, cost];
      }
      if (best !== chosen[i]) moved = true;
      chosen[i] = best;
    }
    if (!moved) break;
  }
  return chosen.map((choice) => choice!);
}

function totalCost(chosen: readonly Choice[]): number {
  return chosen.reduce(
    (sum, one, i) =>
      sum +
      one.fixed +
      chosen.slice(i + 1).reduce((pairs, other) => pairs + between(one.candidate, other.candidate), 0),
    0,
  );
}

/**
 * The best of a few settlements, which differ in who goes first. The same input gives the same places.
 */
export function placeLabels(labels: readonly LabelWanted[], around: Surroundings): readonly PlacedLabel[] {
  const choices = labels.map((label) =>
    candidatesFor(label, around).map((candidate) => ({ candidate, fixed: fixedCost(candidate, around) })),
  );
  const forward = labels.map((_, i) => i);
  const orders = [
    forward,
    [...forward].reverse(),
    [...forward.filter((i) => i % 2 === 0), ...forward.filter((i) => i % 2 === 1)],
    [...forward.filter((i) => i % 2 === 1), ...forward.filter((i) => i % 2 === 0)],
  ];
  let best: readonly Choice[] = [];
  let bestCost = Infinity;
  for (const order of orders) {
    const settled = settle(choices, order);
    const cost = totalCost(settled);
    if (cost < bestCost) [best, bestCost] = [settled, cost];
  }
  return best.map(({ candidate }) => candidate);
}
