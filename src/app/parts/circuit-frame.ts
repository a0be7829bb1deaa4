/** Where the circuit's gates and lines fall in the picture: the truest scale that keeps its marks apart. */
import type { Gate } from '../../deck/types.ts';
import { axisScale, type AxisScale } from './axis-scale.ts';
import { legsThrough, sampleLeg, type Leg, type Point, type Waypoint } from './flown-path.ts';
import { groundExtent, type GroundLine } from './reference-outline.ts';

export interface FrameWanted {
  readonly gates: readonly Pick<Gate, 'id' | 'position'>[];
  readonly reference: readonly GroundLine[];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly markerRadiusPx: number;
  /** Room to leave on all sides. */
  readonly padPx: number;
}

const powers = [1, 0.8, 0.65, 0.55, 0.47, 0.4, 0.34, 0.28];
/** A ship drawn shorter than this many times its width would look like a raft. */
const leastReferenceAspect = 4.2;
/** A wider drawing would spend its height on the bulge of a half turn; what is left over is room for labels. */
const widestAspect = 0.95;

export interface Frame {
  readonly toPicture: (aheadFt: number, rightFt: number) => Point;
  readonly gates: readonly Waypoint[];
  readonly legs: readonly Leg[];
}

/** Scale that fits the drawn line and marks into the box; found by drawing and correcting. */
function frameFor(wanted: FrameWanted, ahead: AxisScale, right: AxisScale, even: boolean): Frame {
  const pad = wanted.padPx;
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

function closestPx(gates: readonly Waypoint[], wanted: FrameWanted): number {
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

/** To scale when the gates can be told apart that way; else as near to it as lets them be. */
export function bestFrame(wanted: FrameWanted): { readonly frame: Frame; readonly toScale: boolean } {
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
