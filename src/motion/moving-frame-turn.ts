/**
 * A level turn at constant bank, seen from a moving ship: in the air's own frame it is an arc, in closed form
 * (`turn-arc.ts`), and the air slides over the deck with the wind over it. The ship keeps her course and
 * speed, the wind is steady. Places are ahead and right of the reference point.
 */
import { fromDeg, fromKt, standardGravity, toDeg, toFt, toKt } from './conversions.ts';
import { turnArc } from './turn-arc.ts';
import type { WindOver } from './wind.ts';

/** A place seen from the ship, and the course flown through the air, off the ship's course. */
export interface Place {
  readonly aheadFt: number;
  readonly rightFt: number;
  readonly courseDeg: number;
}

export interface LevelTurn {
  /** True airspeed at its beginning, > 0. */
  readonly airspeedKt: number;
  /** At its end, > 0, when it changes evenly with time; left out, it stays. */
  readonly endAirspeedKt?: number;
  /** Above 0 and below 90. */
  readonly bankDeg: number;
  /** Positive to the right, negative to the left; any number of circles. */
  readonly throughDeg: number;
}

export interface TurnEnd extends Place {
  readonly seconds: number;
  /** Over the deck, not through the air; off the ship's course, -180 to 180. */
  readonly trackDeg: number;
  /** Along that track. */
  readonly closureKt: number;
}

/** Where a turn ends: its arc in the air, turned to its heading, less what the air slides over the deck. */
export function turnOverDeck(
  from: Place,
  turn: LevelTurn,
  wind: Pick<WindOver, 'alongKt' | 'fromRightKt'>,
): TurnEnd {
  const kappa = standardGravity * Math.tan(fromDeg(turn.bankDeg));
  const hand = turn.throughDeg < 0 ? -1 : 1;
  const speeds = [fromKt(turn.airspeedKt), fromKt(turn.endAirspeedKt ?? turn.airspeedKt)] as const;
  const { along, inside, seconds } = turnArc(speeds, fromDeg(Math.abs(turn.throughDeg)), kappa);
  const begin = fromDeg(from.courseDeg);
  const end = fromDeg(from.courseDeg + turn.throughDeg);
  const slide = { ahead: -fromKt(wind.alongKt), right: -fromKt(wind.fromRightKt) };
  const ahead = along * Math.cos(begin) - hand * inside * Math.sin(begin) + slide.ahead * seconds;
  const right = along * Math.sin(begin) + hand * inside * Math.cos(begin) + slide.right * seconds;
  const overAhead = speeds[1] * Math.cos(end) + slide.ahead;
  const overRight = speeds[1] * Math.sin(end) + slide.right;
  return {
    aheadFt: from.aheadFt + toFt(ahead),
    rightFt: from.rightFt + toFt(right),
    courseDeg: from.courseDeg + turn.throughDeg,
    seconds,
    trackDeg: toDeg(Math.atan2(overRight, overAhead)),
    closureKt: toKt(Math.hypot(overAhead, overRight)),
  };
}
