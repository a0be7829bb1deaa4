/**
 * The gentlest way from one gate to the next that turns at one even bank: straight on, then the turn; or
 * the turn, then straight on. Which of the two, and for how long, is what makes both ends meet; a longer
 * straight piece at the one end or at both would only make the turn tighter.
 *
 * In the air's own frame. The airspeed changes evenly with time over the whole leg, V(t) = V₁ + a t, and
 * the bank φ holds in the turn, so the heading changes by dψ/dt = g tan φ / V (FAA-H-8083-25, chapter 5,
 * rate of turn). With κ = g tan φ this gives V(ψ) = Vₐ exp(a ψ / κ): the turn is a piece of a logarithmic
 * spiral, a circle where a = 0, and ∫ V dt = ∫ V² dψ / κ has a closed form. The moving frame is left behind
 * by the wind over it: displacement there = displacement in the air − wind × time.
 *
 * Valid for a level, coordinated turn from 5 to 270 degrees. Headings are those flown through the air.
 */
import { fromDeg, standardGravity, toDeg } from './conversions.ts';
import { logarithmicMean, turnArc } from './turn-arc.ts';
import { meanOver } from './mean-over.ts';

/** Ahead along the reference course and to the right of it; SI units. */
export interface Vector {
  readonly ahead: number;
  readonly right: number;
}

export interface TurnWanted {
  /** From gate to gate in the moving frame, m. */
  readonly offset: Vector;
  /** Flown through the air at the first gate. */
  readonly headingDeg: number;
  /** Turned through, 5 to 270. */
  readonly throughDeg: number;
  readonly direction: 'left' | 'right';
  /** True airspeed at the two gates, m/s, > 0. */
  readonly speeds: readonly [number, number];
  /** The wind felt in the moving frame, m/s: from ahead, and from the right. */
  readonly wind: Vector;
}

export interface EvenTurn {
  readonly seconds: number;
  /** Straight on before the turn; 0 when the leg begins with it. */
  readonly beforeS: number;
  /** Straight on after the turn; 0 when the leg ends with it. */
  readonly afterS: number;
  readonly bankDeg: number;
  /** Airspeed at the beginning and the end of the turn itself, m/s. */
  readonly turnSpeeds: readonly [number, number];
  /** Along the path in the moving frame, m. */
  readonly length: number;
}

/** One of the family of paths, for a leg of one second: all lengths and times grow with the leg's time. */
interface Shape {
  /** Straight on before and after, and the turn; they add up to 1. */
  readonly before: number;
  readonly turning: number;
  readonly after: number;
  /** At the beginning and the end of the turn, m/s. */
  readonly speeds: readonly [number, number];
  /** g tan φ, m/s², of a leg of one second. */
  readonly kappa: number;
  /** Where it ends in the air, m. */
  readonly end: Vector;
}

/** Beyond this share of straight flight the turn is no turn any more but a kink. */
const mostStraight = 0.995;
const pieces = 48;

/** The gentlest such way, or null when none joins the two gates. */
export function evenTurn(wanted: TurnWanted): EvenTurn | null {
  const { offset, wind, speeds } = wanted;
  if (speeds[0] <= 0 || speeds[1] <= 0 || Math.hypot(offset.ahead, offset.right) < 0.1) return null;

  /** How far the shape's end lies to the side of the line to the second gate; 0 where it meets it. */
  const miss = (share: number): number => {
    const { ahead, right } = groundEnd(shapeOf(wanted, share), wind);
    return ahead * offset.right - right * offset.ahead;
  };
  let best: EvenTurn | null = null;
  let [lastShare, lastMiss] = [-mostStraight, miss(-mostStraight)];
  for (let piece = 1; piece <= pieces; piece++) {
    const share = -mostStraight + (2 * mostStraight * piece) / pieces;
    const now = miss(share);
    if (lastMiss === 0 || lastMiss < 0 !== now < 0) {
      const found = flownAs(wanted, shapeOf(wanted, rootBetween(miss, lastShare, share)));
      if (found && (best === null || found.bankDeg < best.bankDeg)) best = found;
    }
    [lastShare, lastMiss] = [share, now];
  }
  return best;
}

/** @param share of the time flown straight on: before the turn when positive, after it when negative. */
function shapeOf({ speeds, headingDeg, throughDeg, direction }: TurnWanted, share: number): Shape {
  const [first, last] = speeds;
  const [before, after] = [Math.max(0, share), Math.max(0, -share)];
  const turning = 1 - before - after;
  const change = last - first;
  const [from, to] = [first + change * before, last - change * after];
  const theta = fromDeg(throughDeg);
  const kappa = (theta * logarithmicMean(from, to)) / turning;
  const arc = turnArc([from, to], theta, kappa);
  const [straightIn, straightOut] = [((first + from) / 2) * before, ((to + last) / 2) * after];
  // x along the heading at the first gate, y towards the inside of the turn.
  const x = straightIn + arc.along + straightOut * Math.cos(theta);
  const y = (arc.inside + straightOut * Math.sin(theta)) * (direction === 'right' ? 1 : -1);
  const [cos, sin] = [Math.cos(fromDeg(headingDeg)), Math.sin(fromDeg(headingDeg))];
  const end = { ahead: x * cos - y * sin, right: x * sin + y * cos };
  return { before, turning, after, speeds: [from, to], kappa, end };
}

const groundEnd = ({ end }: Shape, wind: Vector): Vector => ({
  ahead: end.ahead - wind.ahead,
  right: end.right - wind.right,
});

/** The shape stretched to the length of the leg; null when it leads away from the second gate. */
function flownAs(wanted: TurnWanted, shape: Shape): EvenTurn | null {
  const { offset, wind } = wanted;
  const reached = groundEnd(shape, wind);
  if (reached.ahead * offset.ahead + reached.right * offset.right <= 0) return null;
  const seconds = Math.hypot(offset.ahead, offset.right) / Math.hypot(reached.ahead, reached.right);
  return {
    seconds,
    beforeS: shape.before * seconds,
    afterS: shape.after * seconds,
    bankDeg: toDeg(Math.atan(shape.kappa / seconds / standardGravity)),
    turnSpeeds: shape.speeds,
    length: lengthOf(wanted, shape, seconds),
  };
}

/** ∫ |V − wind| dt by Simpson's rule, piece by piece: straight, turn, straight. */
function lengthOf(wanted: TurnWanted, shape: Shape, seconds: number): number {
  const { speeds, headingDeg, throughDeg, direction, wind } = wanted;
  const sense = direction === 'right' ? 1 : -1;
  const speedOver = (airspeed: number, turnedDeg: number): number => {
    const heading = fromDeg(headingDeg + sense * turnedDeg);
    return Math.hypot(airspeed * Math.cos(heading) - wind.ahead, airspeed * Math.sin(heading) - wind.right);
  };
  const [from, to] = shape.speeds;
  const straight = (one: number, other: number, turnedDeg: number): number =>
    meanOver((share) => speedOver(one + (other - one) * share, turnedDeg));
  const turning = meanOver((share) => {
    const airspeed = from + (to - from) * share;
    // ψ = θ ln(V / Vₐ) / ln(V_b / Vₐ)
    const turned = Math.abs(to / from - 1) < 1e-9 ? share : Math.log(airspeed / from) / Math.log(to / from);
    return speedOver(airspeed, throughDeg * turned);
  });
  return (
    seconds *
    (shape.before * straight(speeds[0], from, 0) +
      shape.turning * turning +
      shape.after * straight(to, speeds[1], throughDeg))
  );
}

function rootBetween(of: (share: number) => number, from: number, to: number): number {
  const falls = of(from) > 0;
  let [low, high] = [from, to];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (of(middle) > 0 === falls) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
