/**
 * The circuit seen from above, course up: where each gate is drawn, the line through them, what stands
 * at the reference point, and where labels go. Legs of miles and steps of a wingspan share one picture:
 * it is to scale when the gates can be told apart that way, else each axis is drawn by `axisScale`.
 */
import type { Gate } from '../../deck/types.ts';
import { bestFrame } from './circuit-frame.ts';
import { lengthOf, middleOf, sampleLeg, type Leg, type Point } from './flown-path.ts';
import { placeLabels, type PlacedLabel } from './label-placement.ts';
import type { GroundLine } from './reference-outline.ts';
import { textWidthPx } from './text-width.ts';

export interface GateLabel {
  /** First line, bold. */
  readonly name: string;
  /** Second line. */
  readonly note: string | null;
}

export interface CircuitWanted {
  readonly gates: readonly Pick<Gate, 'id' | 'position'>[];
  readonly reference: readonly GroundLine[];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly markerRadiusPx: number;
  readonly labelSizePx: number;
  /** Gates that get words beside their number. */
  readonly labels: ReadonlyMap<string, GateLabel>;
}

export interface DrawnGate extends Point {
  readonly id: string;
  /** Counted from 1. */
  readonly number: number;
  /** The largest circle around the mark that is nearer to this gate than to any other. */
  readonly reachPx: number;
  readonly label: (PlacedLabel & GateLabel) | null;
  /** It stands in a stack with the gates over the same point. */
  readonly shared: boolean;
}

/** The upright mark around the numbers of gates over one point. */
export interface DrawnStack extends Point {
  /** Half of its height; half of its width is that of a single mark. */
  readonly halfHeightPx: number;
}

export interface CircuitLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly toScale: boolean;
  readonly gates: readonly DrawnGate[];
  readonly stacks: readonly DrawnStack[];
  /** One between each gate and the next. */
  readonly legs: readonly Leg[];
  /** Which way it is flown: marks on the longer legs. */
  readonly arrows: readonly (Point & { readonly courseDeg: number })[];
  readonly outlines: readonly { readonly points: readonly Point[]; readonly closed: boolean }[];
  readonly referencePoint: Point;
}

/** Height of a label's line, in type sizes: ink and a little air. */
const lineHeight = 1.2;

/** Indexes of the gates over each point, in the order flown. */
function stacksOf(points: readonly Point[]): readonly (readonly number[])[] {
  const stacks: number[][] = [];
  points.forEach(({ x, y }, i) => {
    const there = stacks.find(([first]) => Math.hypot(points[first!]!.x - x, points[first!]!.y - y) < 1);
    if (there) there.push(i);
    else stacks.push([i]);
  });
  return stacks;
}

/** Moves marks that would cover each other apart, as little as possible; those over one point stay under each other. */
function apart(points: readonly Point[], stacks: readonly (readonly number[])[], leastPx: number): Point[] {
  const moved = points.map(({ x, y }) => ({ x, y }));
  const align = (): void => {
    for (const stack of stacks) {
      const x = stack.reduce((sum, i) => sum + moved[i]!.x, 0) / stack.length;
      const y = stack.reduce((sum, i) => sum + moved[i]!.y, 0) / stack.length;
      stack.forEach((i, k) => {
        moved[i] = { x, y: y + (k - (stack.length - 1) / 2) * leastPx };
      });
    }
  };
  align();
  for (let round = 0; round < 30; round++) {
    let calm = true;
    for (let i = 0; i < moved.length; i++)
      for (let j = i + 1; j < moved.length; j++) {
        const [one, other] = [moved[i]!, moved[j]!];
        const [dx, dy] = [other.x - one.x, other.y - one.y];
        const distance = Math.hypot(dx, dy);
        if (distance >= leastPx - 0.01) continue;
        calm = false;
        const push = (leastPx - distance) / 2;
        const [ux, uy] = distance < 0.5 ? [1, 0] : [dx / distance, dy / distance];
        one.x -= ux * push;
        one.y -= uy * push;
        other.x += ux * push;
        other.y += uy * push;
      }
    align();
    if (calm) break;
  }
  return moved;
}

/** Points every few px along a closed outline. */
function along(points: readonly Point[]): readonly Point[] {
  return points.flatMap((from, i) => {
    const to = points[(i + 1) % points.length]!;
    const pieces = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4));
    return Array.from({ length: pieces }, (_, k) => ({
      x: from.x + ((to.x - from.x) * k) / pieces,
      y: from.y + ((to.y - from.y) * k) / pieces,
    }));
  });
}

export function layoutCircuit(wanted: CircuitWanted): CircuitLayout {
  const noteLines = [...wanted.labels.values()].some((label) => label.note) ? 2 : 1;
  const labelPx = wanted.labels.size > 0 ? (wanted.labelSizePx * lineHeight * noteLines) / 2 : 0;
  const { frame, toScale } = bestFrame({
    ...wanted,
    padPx: Math.max(wanted.markerRadiusPx + 4, labelPx + 1),
  });
  const all = stacksOf(frame.gates);
  const marks = apart(frame.gates, all, wanted.markerRadiusPx * 2 + 1);
  const stacks = all.filter((stack) => stack.length > 1);
  const centre = {
    x: marks.reduce((sum, mark) => sum + mark.x, 0) / Math.max(1, marks.length),
    y: marks.reduce((sum, mark) => sum + mark.y, 0) / Math.max(1, marks.length),
  };
  const outlines = wanted.reference.map((line) => ({
    points: line.points.map((point) => frame.toPicture(point.aheadFt, point.rightFt)),
    closed: line.closed,
  }));
  const labelled = wanted.gates.flatMap((gate, i) => {
    const label = wanted.labels.get(gate.id);
    return label ? [{ gate, i, label }] : [];
  });
  const size = wanted.labelSizePx;
  const placed = placeLabels(
    labelled.map(({ i, label }) => ({
      x: marks[i]!.x,
      y: marks[i]!.y,
      radius: wanted.markerRadiusPx,
      width: Math.max(textWidthPx(label.name, size), textWidthPx(label.note ?? '', size)),
      height: size * lineHeight * (label.note ? 2 : 1),
    })),
    {
      bounds: { x: 0, y: 0, width: wanted.widthPx, height: wanted.heightPx },
      marks: marks.map((mark) => ({ ...mark, radius: wanted.markerRadiusPx + 2 })),
      lines: [
        ...frame.legs.flatMap((leg) => sampleLeg(leg, Math.max(4, Math.ceil(lengthOf(leg) / 8)))),
        ...outlines.flatMap((outline) => along(outline.points)),
      ],
      centre,
    },
  );
  const gates = wanted.gates.map((gate, i): DrawnGate => {
    const others = marks.filter((_, j) => j !== i);
    const nearest = Math.min(...others.map((o) => Math.hypot(o.x - marks[i]!.x, o.y - marks[i]!.y)), 88);
    const k = labelled.findIndex((entry) => entry.i === i);
    return {
      id: gate.id,
      number: i + 1,
      x: marks[i]!.x,
      y: marks[i]!.y,
      shared: stacks.some((stack) => stack.includes(i)),
      reachPx: Math.max(wanted.markerRadiusPx, Math.min(24, nearest / 2)),
      label: k < 0 ? null : { ...placed[k]!, ...labelled[k]!.label },
    };
  });
  return {
    widthPx: wanted.widthPx,
    heightPx: wanted.heightPx,
    toScale,
    gates,
    stacks: stacks.map((stack) => {
      const [top, bottom] = [marks[stack[0]!]!, marks[stack.at(-1)!]!];
      const halfHeightPx = (bottom.y - top.y) / 2 + wanted.markerRadiusPx;
      return { x: top.x, y: (top.y + bottom.y) / 2, halfHeightPx };
    }),
    legs: frame.legs,
    arrows: frame.legs.filter((leg) => lengthOf(leg) > wanted.markerRadiusPx * 6).map(middleOf),
    outlines,
    referencePoint: frame.toPicture(0, 0),
  };
}
