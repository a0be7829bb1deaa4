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

const costs = { label: 60, mark: 40, outside: 80, line: 6, leader: 7, diagonal: 1.5, inward: 2 };
const reaches = [5, 22, 40, 62];

interface Candidate extends PlacedLabel {
  readonly own: number;
}

function candidatesFor(label: LabelWanted, around: Surroundings): readonly Candidate[] {
  const outward = { x: label.x - around.centre.x, y: label.y - around.centre.y };
  const outwardLength = Math.hypot(outward.x, outward.y) || 1;
  return reaches.flatMap((reach, step) =>
    Array.from({ length: step === 0 ? 8 : 16 }, (_, i) => {
      const angle = (i * Math.PI) / (step === 0 ? 4 : 8);
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const distance = label.radius + reach;
      const touch = { x: label.x + dx * distance, y: label.y + dy * distance };
      const anchor = dx > 0.3 ? 'start' : dx < -0.3 ? 'end' : 'middle';
      const x = touch.x - (anchor === 'start' ? 0 : anchor === 'end' ? label.width : label.width / 2);
      const y = touch.y - (label.height * (1 - dy)) / 2;
      const sideways = Math.abs(dx) < 0.95 && Math.abs(dy) < 0.95 ? costs.diagonal : 0;
      const inward = 1 - (dx * outward.x + dy * outward.y) / outwardLength;
      return {
        x,
        y,
        width: label.width,
        height: label.height,
        anchor,
        leader:
          step === 0
            ? null
            : ([
                { x: label.x + dx * label.radius, y: label.y + dy * label.radius },
                { x: touch.x - dx * 3, y: touch.y - dy * 3 },
              ] as const),
        own: sideways + inward * costs.inward + step * costs.leader,
      } satisfies Candidate;
    }),
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

function crossing(leader: readonly [Point, Point], box: Box): boolean {
  return [0.2, 0.4, 0.6, 0.8].some((share) =>
    holds(
      box,
      {
        x: leader[0].x + (leader[1].x - leader[0].x) * share,
        y: leader[0].y + (leader[1].y - leader[0].y) * share,
      },
      0,
    ),
  );
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
  return (
    candidate.own +
    (spill > 0 ? costs.outside + spill : 0) +
    marks * costs.mark +
    Math.min(lines, 6) * costs.line
  );
}

function between(one: Candidate, other: Candidate): number {
  const shared = overlap(one, other);
  const crossed =
    (one.leader && crossing(one.leader, other)) || (other.leader && crossing(other.leader, one)) ? 1 : 0;
  return (shared > 0 ? costs.label + shared * costs.label : 0) + crossed * costs.mark;
}

/**
 * Each label takes its cheapest place given the others, in turn, until none wants to move. The same
 * input gives the same places.
 */
export function placeLabels(labels: readonly LabelWanted[], around: Surroundings): readonly PlacedLabel[] {
  const choices = labels.map((label) =>
    candidatesFor(label, around).map((candidate) => ({ candidate, fixed: fixedCost(candidate, around) })),
  );
  const chosen: (Candidate | null)[] = labels.map(() => null);
  for (let sweep = 0; sweep < 6; sweep++) {
    let moved = false;
    choices.forEach((options, i) => {
      let best: Candidate | null = null;
      let bestCost = Infinity;
      for (const { candidate, fixed } of options) {
        let cost = fixed;
        for (let j = 0; j < chosen.length && cost < bestCost; j++) {
          const other = chosen[j];
          if (j !== i && other) cost += between(candidate, other);
        }
        if (cost < bestCost) [best, bestCost] = [candidate, cost];
      }
      if (best !== chosen[i]) moved = true;
      chosen[i] = best;
    });
    if (!moved) break;
  }
  return chosen.map((candidate) => candidate!);
}
