/**
 * The circuit seen from above, course up: where each gate is drawn, the line through them, what stands
 * at the reference point, and where labels go. Legs of miles and steps of a wingspan share one picture:
 * it is to scale when the gates can be told apart that way, else each axis is drawn by `axisScale`.
 */
import type { Gate } from '../../deck/types.ts';
import { axisScale, type AxisScale } from './axis-scale.ts';
import {
  legsThrough,
  lengthOf,
  middleOf,
  sampleLeg,
  type Leg,
  type Point,
  type Waypoint,
} from './flown-path.ts';
import { placeLabels, type PlacedLabel } from './label-placement.ts';
import { groundExtent, type GroundLine } from './reference-outline.ts';
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
}

export interface CircuitLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly toScale: boolean;
  readonly gates: readonly DrawnGate[];
  /** One between each gate and the next. */
  readonly legs: readonly Leg[];
  /** Which way it is flown: marks on the longer legs. */
  readonly arrows: readonly (Point & { readonly courseDeg: number })[];
  readonly outlines: readonly { readonly points: readonly Point[]; readonly closed: boolean }[];
  readonly referencePoint: Point;
}

const powers = [1, 0.8, 0.65, 0.55, 0.47, 0.4, 0.34, 0.28];
/** A ship drawn shorter than this many times its width would look like a raft. */
const leastReferenceAspect = 4.2;
/** A wider drawing would spend its height on the bulge of a half turn; what is left over is room for labels. */
const widestAspect = 0.95;
/** Height of a label's line, in type sizes: ink and a little air. */
const lineHeight = 1.2;

interface Frame {
  readonly toPicture: (aheadFt: number, rightFt: number) => Point;
  readonly gates: readonly Waypoint[];
  readonly legs: readonly Leg[];
}

/** Scale that fits the drawn line and marks into the box; found by drawing and correcting. */
function frameFor(wanted: CircuitWanted, ahead: AxisScale, right: AxisScale, even: boolean): Frame {
  const noteLines = [...wanted.labels.values()].some((label) => label.note) ? 2 : 1;
  const labelPx = wanted.labels.size > 0 ? (wanted.labelSizePx * lineHeight * noteLines) / 2 : 0;
  const pad = Math.max(wanted.markerRadiusPx + 4, labelPx + 1);
  const corners = wanted.reference.flatMap((line) => line.points);
  let [scaleX, scaleY, x0, y0] = [1, 1, 0, 0];
  let frame: Frame | null = null;
  for (let round = 0; round < 6; round++) {
    const toPicture = (aheadFt: number, rightFt: number): Point => ({
      x: x0 + right(rightFt) * scaleX,
      y: y0 - ahead(aheadFt) * scaleY,
    });
    const gates = wanted.gates.map(({ position }) => ({
      ...toPicture(position.aheadFt, position.rightFt),
      courseDeg: position.courseDeg,
    }));
    const legs = legsThrough(gates);
    frame = { toPicture, gates, legs };
    const points = [
      ...gates,
      ...legs.flatMap((leg) => sampleLeg(leg, 12)),
      ...corners.map((corner) => toPicture(corner.aheadFt, corner.rightFt)),
      toPicture(0, 0),
    ];
    const [left, top] = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))];
    const width = Math.max(1e-6, Math.max(...points.map((p) => p.x)) - left);
    const height = Math.max(1e-6, Math.max(...points.map((p) => p.y)) - top);
    let byX = (Math.min(wanted.widthPx, wanted.heightPx * widestAspect) - 2 * pad) / width;
    let byY = (wanted.heightPx - 2 * pad) / height;
    if (even) byX = byY = Math.min(byX, byY);
    const spareX = (wanted.widthPx - width * byX) / 2;
    const spareY = (wanted.heightPx - height * byY) / 2;
    x0 = spareX + (x0 - left) * byX;
    y0 = spareY + (y0 - top) * byY;
    scaleX *= byX;
    scaleY *= byY;
  }
  return frame!;
}

function closestPx(gates: readonly Waypoint[], wanted: CircuitWanted): number {
  let least = Infinity;
  gates.forEach((one, i) =>
    gates.slice(i + 1).forEach((other, k) => {
      const [p, q] = [wanted.gates[i]!.position, wanted.gates[i + 1 + k]!.position];
      if (p.aheadFt === q.aheadFt && p.rightFt === q.rightFt) return;
      least = Math.min(least, Math.hypot(one.x - other.x, one.y - other.y));
    }),
  );
  return least;
}

function bestFrame(wanted: CircuitWanted): { readonly frame: Frame; readonly toScale: boolean } {
  const extent = groundExtent(wanted.reference);
  const stopsAhead = [...wanted.gates.map((g) => g.position.aheadFt), 0, ...(extent?.aheadFt ?? [])];
  const stopsRight = [...wanted.gates.map((g) => g.position.rightFt), 0, ...(extent?.rightFt ?? [])];
  const roomPx = wanted.markerRadiusPx * 2.9;
  let best: { frame: Frame; toScale: boolean; least: number } | null = null;
  for (const power of powers) {
    const toScale = power === 1;
    const right = axisScale(stopsRight, power);
    let ahead = axisScale(stopsAhead, power);
    let frame = frameFor(wanted, ahead, right, toScale);
    if (extent && !toScale) {
      const [stern, bow] = extent.aheadFt;
      const [port, starboard] = extent.rightFt;
      const corner = frame.toPicture(stern, port);
      const opposite = frame.toPicture(bow, starboard);
      const aspect = Math.abs(corner.y - opposite.y) / Math.abs(corner.x - opposite.x);
      if (aspect < leastReferenceAspect) {
        const factor = leastReferenceAspect / aspect;
        ahead = axisScale(stopsAhead, power, { fromFt: stern, toFt: bow, factor });
        frame = frameFor(wanted, ahead, right, false);
      }
    }
    const least = closestPx(frame.gates, wanted);
    if (!best || least > best.least) best = { frame, toScale, least };
    if (least >= roomPx) break;
  }
  return best!;
}

/** Moves marks that would cover each other apart, as little as possible. */
function apart(points: readonly Point[], leastPx: number): readonly Point[] {
  // Gates over one point stand side by side, in order from the left.
  const moved = points.map((point, i) => {
    const before = points.slice(0, i).filter((other) => Math.hypot(other.x - point.x, other.y - point.y) < 1);
    return { x: point.x + before.length * leastPx, y: point.y };
  });
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
  const { frame, toScale } = bestFrame(wanted);
  const marks = apart(frame.gates, wanted.markerRadiusPx * 2 + 1);
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
      reachPx: Math.max(wanted.markerRadiusPx, Math.min(24, nearest / 2)),
      label: k < 0 ? null : { ...placed[k]!, ...labelled[k]!.label },
    };
  });
  return {
    widthPx: wanted.widthPx,
    heightPx: wanted.heightPx,
    toScale,
    gates,
    legs: frame.legs,
    arrows: frame.legs.filter((leg) => lengthOf(leg) > wanted.markerRadiusPx * 6).map(middleOf),
    outlines,
    referencePoint: frame.toPicture(0, 0),
  };
}
