/**
 * Where to begin the final turn, so that its roll-out is on the groove line at the wanted length. Mechanics
 * of `moving-frame-turn.ts`, worked backwards: what a turn covers doesn't depend on where it begins, and all
 * of it goes with 1 / tan(bank). Seen from the ship, with the wind over deck; downwind and groove are flown
 * with the crab that keeps their tracks.
 */
import { ftPerSecondPerKt, toDeg } from './conversions.ts';
import { turnOverDeck, type Place } from './moving-frame-turn.ts';
import { closureTriangle } from './wind-over-deck.ts';
import type { WindOver } from './wind.ts';

export interface FinalTurn {
  readonly toThe: 'left' | 'right';
  /** True airspeed downwind, > 0. */
  readonly airspeedKt: number;
  /** At the roll-out, when it changes evenly with time; left out, it stays. */
  readonly endAirspeedKt?: number;
  readonly wind: WindOver;
  /** The point of the groove line to roll out at: its length is the distance to the reference point. */
  readonly rollOut: { readonly aheadFt: number; readonly rightFt: number };
  /** Off the ship's course; 0 unless the line is angled to it. */
  readonly grooveTrackDeg?: number;
}

export interface TurnPlan {
  readonly bankDeg: number;
  readonly begin: Place;
  readonly end: Place;
  /** Positive to the right. */
  readonly throughDeg: number;
  readonly seconds: number;
  /** Past abeam of the reference point along the downwind; negative where the turn begins before it. */
  readonly pastAbeamFt: number;
  readonly pastAbeamSeconds: number;
}

/**
 * With a given bank: the spacing of the downwind follows from it (`begin.rightFt`).
 * @param bankDeg above 0 and below 90.
 * @returns null where the wind over deck leaves no way along downwind or groove.
 */
export function finalTurnAtBank(turn: FinalTurn, bankDeg: number): TurnPlan | null {
  const startKt = turn.airspeedKt;
  const endKt = turn.endAirspeedKt ?? startKt;
  const downwind = closureTriangle(startKt, 180, turn.wind);
  const groove = closureTriangle(endKt, turn.grooveTrackDeg ?? 0, turn.wind);
  if (!downwind || !groove) return null;
  const toTheRight = (((groove.headingDeg - downwind.headingDeg) % 360) + 360) % 360;
  const throughDeg = turn.toThe === 'right' ? toTheRight : toTheRight - 360;
  const covered = turnOverDeck(
    { aheadFt: 0, rightFt: 0, courseDeg: downwind.headingDeg },
    { airspeedKt: startKt, endAirspeedKt: endKt, bankDeg, throughDeg },
    turn.wind,
  );
  const begin = {
    aheadFt: turn.rollOut.aheadFt - covered.aheadFt,
    rightFt: turn.rollOut.rightFt - covered.rightFt,
    courseDeg: downwind.headingDeg,
  };
  return {
    bankDeg,
    begin,
    end: { ...turn.rollOut, courseDeg: groove.headingDeg },
    throughDeg,
    seconds: covered.seconds,
    pastAbeamFt: -begin.aheadFt,
    pastAbeamSeconds: -begin.aheadFt / (downwind.groundSpeedKt * ftPerSecondPerKt),
  };
}

/**
 * From a downwind with a given spacing: the bank follows from it.
 * @param downwindRightFt of the downwind's line, negative on the left side of the ship.
 * @returns null where there is no way along downwind or groove, or where no bank turns towards the line: the
 *   downwind on the wrong side, or the wind across blowing the turn off it.
 */
export function finalTurnFrom(turn: FinalTurn, downwindRightFt: number): TurnPlan | null {
  // At 45 degrees, where the tangent is 1.
  const unit = finalTurnAtBank(turn, 45);
  if (!unit) return null;
  const tangent = (turn.rollOut.rightFt - unit.begin.rightFt) / (turn.rollOut.rightFt - downwindRightFt);
  if (!(tangent > 0 && Number.isFinite(tangent))) return null;
  return finalTurnAtBank(turn, toDeg(Math.atan(tangent)));
}

/**
 * 15 s past abeam, less a second for each knot of headwind down the deck; not below 0. Source: CNATRA P-1212,
 * jet carrier training. In a calm just what leaves a groove of 15 s; in wind mechanics at an unchanged
 * spacing take off only about half a second a knot.
 */
export const thumbSecondsPastAbeam = (headwindKt: number): number => Math.max(0, 15 - headwindKt);
