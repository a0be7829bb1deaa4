/** The legs of the Marram deck as its own numbers make them: times, sinks and decelerations between gates. */
import { gateOf } from '../../src/deck/lookup.ts';
import { bandOf, shippedDeck } from './shipped-deck.ts';
import { bankForLoadDeg, ftPerSecondPerKt, leftTurn } from './turn-in-wind.ts';

export const deck = shippedDeck('marram-recovery');
export const gate = (id: string) => gateOf(deck, id);
export const target = (gateId: string, quantity: string) => bandOf(gate(gateId), quantity).target;
export const dayOf = (quantity: string) =>
  deck.day!.find((setting) => setting.quantity === quantity)!.default;

/** On the deck's day the wind comes from right ahead, so it adds to the ship's own speed. */
export const windOverDeckKt = dayOf('ship-speed') + dayOf('wind-speed');

/** Airspeed at a gate; in the groove and after it may be given as closure, and is 0 closure alongside. */
export function airspeedAt(id: string): number {
  const { values } = gate(id);
  return values.airspeed?.target ?? values.closure!.target + windOverDeckKt;
}

export interface Leg {
  readonly name: string;
  readonly seconds: number;
  readonly meanSink: number | null;
  readonly decelerationKtS: number;
}

/** A straight leg with even deceleration; `direction` is +1 along the ship's course, -1 against it. */
export function straightLeg(from: string, to: string, direction: 1 | -1): Leg {
  const distance = Math.abs(gate(to).position.aheadFt - gate(from).position.aheadFt);
  const airspeed = (airspeedAt(from) + airspeedAt(to)) / 2;
  const seconds = distance / ((airspeed - direction * windOverDeckKt) * ftPerSecondPerKt);
  return { name: `${from} to ${to}`, seconds, ...change(from, to, seconds) };
}

export function turningLeg(
  from: string,
  to: string,
  bankDeg: number,
  degrees: number,
): Leg & { miss: number } {
  const end = leftTurn({
    from: gate(from).position,
    degrees,
    bankDeg,
    airspeedKt: [airspeedAt(from), airspeedAt(to)],
    windOverDeckKt,
  });
  const { aheadFt, rightFt } = gate(to).position;
  return {
    name: `${from} to ${to}`,
    seconds: end.seconds,
    miss: Math.hypot(end.aheadFt - aheadFt, end.rightFt - rightFt),
    ...change(from, to, end.seconds),
  };
}

export function change(from: string, to: string, seconds: number) {
  const heights = [gate(from).values.altitude, gate(to).values.altitude];
  return {
    meanSink: heights[0] && heights[1] ? ((heights[0].target - heights[1].target) / seconds) * 60 : null,
    decelerationKtS: (airspeedAt(from) - airspeedAt(to)) / seconds,
  };
}

export const breakBank = bankForLoadDeg(target('break', 'load-factor'));
export const turnBank = target('ninety', 'bank');
export const legs = {
  run: straightLeg('initial', 'break', 1),
  break: turningLeg('break', 'downwind', breakBank, 180),
  downwind: straightLeg('downwind', 'abeam', -1),
  abeam: straightLeg('abeam', 'turn-in', -1),
  turn: turningLeg('turn-in', 'groove', turnBank, 180),
  firstHalf: turningLeg('turn-in', 'ninety', turnBank, 90),
  secondHalf: turningLeg('ninety', 'groove', turnBank, 90),
  groove: straightLeg('groove', 'deceleration', 1),
  early: straightLeg('deceleration', 'far-check', 1),
  transition: straightLeg('far-check', 'near-check', 1),
  closing: straightLeg('near-check', 'alongside', 1),
};
