/**
 * What lies between a gate and the next: time, distance, mean sink, turn, bank, load factor, deceleration,
 * at the gates' targets and in the wind of the day.
 *
 * The model. The airspeed changes evenly with time from gate to gate. A leg whose courses differ by less
 * than 10° is straight (`straight-leg.ts`); any other is the gentlest turn at one even bank, with a straight
 * piece before or after it (`even-turn.ts`); its courses are headings through the air. Distances are those
 * of the moving frame. Wind is the same at all heights. Bands of airspeed are true airspeeds. A leg with
 * `seconds` in the deck takes these, on a straight line.
 */
import type { Deck, FlyingLeg, Gate } from '../deck/types.ts';
import { dayOf } from './day.ts';
import { fromKt, toDeg, toFt, toKt } from './conversions.ts';
import { sinkInTimeFtMin } from './descent.ts';
import { evenTurn, type Vector } from './even-turn.ts';
import { airspeedAt, heightAt, offsetBetween } from './gate-values.ts';
import { straightSeconds } from './straight-leg.ts';
import { loadFactor, turnRadiusFt } from './turn.ts';
import { windOver } from './wind.ts';

export interface GateLeg {
  /** Gate ids. */
  readonly from: string;
  readonly to: string;
  /** Null when it can't be worked out, for the reason in `why`. */
  readonly flight: LegFlight | null;
  readonly why: WhyNoLeg | null;
}

export interface LegFlight {
  readonly seconds: number;
  /** Along the path in the moving frame. */
  readonly distanceFt: number;
  /** Positive is down; null when one of the gates has no height. */
  readonly meanSinkFtMin: number | null;
  /** Mean loss of airspeed, negative when it grows; null when one of the gates has no speed. */
  readonly decelerationKtS: number | null;
  /** Null on a straight leg. */
  readonly turn: LegTurn | null;
}

export interface LegTurn {
  readonly direction: 'left' | 'right';
  readonly throughDeg: number;
  /** Straight on before and after the turn. */
  readonly beforeS: number;
  readonly afterS: number;
  /** The least even bank that joins the two gates. */
  readonly bankDeg: number;
  /** Of a level turn, g. */
  readonly loadFactor: number;
  /** In the air, at the mean speed of the turn. */
  readonly radiusFt: number;
}

/**
 * `no-speed`: a gate has no band of speed. `no-way`: the wind leaves no way forward, or the speeds are
 * those of a stand. `aside`: the next gate lies aside of the course, over the same point or behind.
 * `no-turn`: no single turn joins the two courses where the gates lie.
 */
export type WhyNoLeg =
  { readonly kind: 'no-speed'; readonly gate: string } | { readonly kind: 'no-way' | 'aside' | 'no-turn' };

/** Speeds and heights at the two ends of a leg. */
export interface LegEnds {
  readonly airspeedKt: readonly [number, number] | null;
  readonly heightFt: readonly [number, number] | null;
}

/** Courses nearer to each other than this make a straight leg. */
const straightDeg = 10;
/** A line further off the course than this is no leg flown straight on. */
const asideDeg = 30;

/**
 * One leg between each gate and the next; none when the deck doesn't say how it is flown (`flying`).
 * @param deck with the bands of the day (`deckOfDay`).
 * @param day quantity -> value in place of the deck's, for the wind.
 */
export function legsOf(deck: Deck, day: Readonly<Record<string, number>> = {}): readonly GateLeg[] {
  if (!deck.flying) return [];
  const wind = windOfDay(deck, day);
  return deck.gates.slice(1).map((to, i) => {
    const from = deck.gates[i]!;
    const named = { from: from.id, to: to.id };
    const [one, other] = [airspeedAt(deck, from, wind), airspeedAt(deck, to, wind)];
    const [high, low] = [heightAt(deck, from), heightAt(deck, to)];
    const flown = flyLeg(deck, i, wind, {
      airspeedKt: one && other && [one.target, other.target],
      heightFt: high && low && [high.target, low.target],
    });
    return 'kind' in flown ? { ...named, flight: null, why: flown } : { ...named, flight: flown, why: null };
  });
}

/** The wind over the reference point, m/s: from ahead, and from the right. */
export function windOfDay(deck: Deck, day: Readonly<Record<string, number>>): Vector {
  const { wind } = deck;
  if (!wind) return { ahead: 0, right: 0 };
  const values = dayOf(deck, day);
  const felt = windOver({
    windKt: values[wind.speed] ?? 0,
    fromDeg: values[wind.angle] ?? 0,
    shipKt: wind.ship === undefined ? 0 : (values[wind.ship] ?? 0),
  });
  return { ahead: fromKt(felt.alongKt), right: fromKt(felt.fromRightKt) };
}

/** What the deck says of the leg that begins at a gate. */
export const authoredLeg = (deck: Deck, from: string): FlyingLeg | undefined =>
  deck.flying?.legs?.find((leg) => leg.from === from);

/**
 * A leg flown with given speeds and heights at its ends.
 * @param index of the gate at which it begins. @param wind see `windOfDay`.
 */
export function flyLeg(deck: Deck, index: number, wind: Vector, ends: LegEnds): LegFlight | WhyNoLeg {
  const [from, to] = [deck.gates[index]!, deck.gates[index + 1]!];
  const offset = offsetBetween(from, to);
  const distanceFt = toFt(Math.hypot(offset.ahead, offset.right));
  const stated = authoredLeg(deck, from.id)?.seconds;
  if (stated !== undefined) return flight(ends, stated, distanceFt, null);
  if (!ends.airspeedKt)
    return { kind: 'no-speed', gate: airspeedAt(deck, from, wind) === null ? from.id : to.id };
  const speeds = [fromKt(ends.airspeedKt[0]), fromKt(ends.airspeedKt[1])] as const;
  const courseChange = between(from.position.courseDeg, to.position.courseDeg);
  if (Math.abs(courseChange) >= straightDeg) return turning(from, courseChange, offset, speeds, wind, ends);
  const bearing = toDeg(Math.atan2(offset.right, offset.ahead));
  if (distanceFt < 1 || Math.abs(between(from.position.courseDeg, bearing)) > asideDeg)
    return { kind: 'aside' };
  const seconds = straightSeconds(offset, speeds, wind);
  return seconds === null ? { kind: 'no-way' } : flight(ends, seconds, distanceFt, null);
}

/** From one course to another the short way: -180 to 180, positive to the right. */
function between(oneDeg: number, otherDeg: number): number {
  const turned = (((otherDeg - oneDeg) % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
}

/** Near half a turn both ways round are tried: where the gate lies tells which one is meant. */
const halfTurnDeg = 150;

function turning(
  from: Gate,
  courseChange: number,
  offset: Vector,
  speeds: readonly [number, number],
  wind: Vector,
  ends: LegEnds,
): LegFlight | WhyNoLeg {
  const short = Math.abs(courseChange);
  const ways = [courseChange, ...(short > halfTurnDeg ? [courseChange - Math.sign(courseChange) * 360] : [])];
  const found = ways
    .map((deg) => {
      const direction = deg > 0 ? ('right' as const) : ('left' as const);
      const throughDeg = Math.abs(deg);
      const { courseDeg: headingDeg } = from.position;
      const turn = evenTurn({ offset, headingDeg, throughDeg, direction, speeds, wind });
      return turn && { ...turn, direction, throughDeg };
    })
    .filter((turn) => turn !== null)
    .toSorted((one, other) => one.bankDeg - other.bankDeg);
  const [turn] = found;
  if (!turn) return { kind: 'no-turn' };
  const { direction, throughDeg, beforeS, afterS, bankDeg, turnSpeeds } = turn;
  return flight(ends, turn.seconds, toFt(turn.length), {
    direction,
    throughDeg,
    beforeS,
    afterS,
    bankDeg,
    loadFactor: loadFactor(bankDeg),
    radiusFt: turnRadiusFt(toKt((turnSpeeds[0] + turnSpeeds[1]) / 2), bankDeg),
  });
}

const flight = (
  { airspeedKt, heightFt }: LegEnds,
  seconds: number,
  distanceFt: number,
  turn: LegTurn | null,
): LegFlight => ({
  seconds,
  distanceFt,
  meanSinkFtMin: heightFt && sinkInTimeFtMin(heightFt[0], heightFt[1], seconds),
  decelerationKtS: airspeedKt && (airspeedKt[0] - airspeedKt[1]) / seconds,
  turn,
});
