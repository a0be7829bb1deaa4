/** Speed and height at a gate, as its bands give them: at the target, or over the adequate stretch. */
import { quantityOf } from '../deck/lookup.ts';
import type { Band, Deck, Gate } from '../deck/types.ts';
import type { Vector } from './even-turn.ts';
import { fromDeg, fromFt, fromKt, metresPerNm, toFt, toKt } from './conversions.ts';

/** A value of a gate: its target and the adequate stretch around it. */
export interface GateValue {
  readonly target: number;
  readonly adequate: readonly [number, number];
  /** The quantity whose band says so. */
  readonly quantity: string;
}

/**
 * True airspeed at a gate, kt: its band of the deck's airspeed, taken as true airspeed; else that of the
 * closure, to which the wind is added as a vector. Null when the gate has neither.
 * @param wind over the reference point, m/s: from ahead, and from the right.
 */
export function airspeedAt(deck: Deck, gate: Gate, wind: Vector): GateValue | null {
  const { airspeed, closure } = deck.flying ?? {};
  const own = airspeed === undefined ? undefined : gate.values[airspeed];
  if (own) return { ...endsOf(own), quantity: airspeed! };
  const over = closure === undefined ? undefined : gate.values[closure];
  if (!over) return null;
  const course = fromDeg(gate.position.courseDeg);
  const inTheAir = (closureKt: number): number =>
    toKt(
      Math.hypot(
        fromKt(closureKt) * Math.cos(course) + wind.ahead,
        fromKt(closureKt) * Math.sin(course) + wind.right,
      ),
    );
  const { target, adequate } = endsOf(over);
  const ends = adequate.map(inTheAir);
  return {
    target: inTheAir(target),
    adequate: [Math.min(...ends), Math.max(...ends)],
    quantity: closure!,
  };
}

const endsOf = ({ target, adequate }: Band): Pick<GateValue, 'target' | 'adequate'> => ({ target, adequate });

const feetPer: Readonly<Record<string, number>> = { ft: 1, m: toFt(1), nm: toFt(metresPerNm) };

/**
 * Height at a gate, ft: its band, or the height by which the gate is recognised. Null when the gate has
 * neither, or when heights are in no unit of length.
 */
export function heightAt(deck: Deck, gate: Gate): GateValue | null {
  const id = deck.reference.height;
  const feet = feetPer[quantityOf(deck, id).unit];
  if (feet === undefined) return null;
  const band = gate.values[id];
  if (band)
    return {
      target: band.target * feet,
      adequate: [band.adequate[0] * feet, band.adequate[1] * feet],
      quantity: id,
    };
  const { detect } = gate;
  if ((detect?.kind !== 'falling' && detect?.kind !== 'rising') || detect.quantity !== id) return null;
  const height = detect.value * feet;
  return { target: height, adequate: [height, height], quantity: id };
}

/** From one gate to another in the moving frame, m. */
export const offsetBetween = (from: Gate, to: Gate): Vector => ({
  ahead: fromFt(to.position.aheadFt - from.position.aheadFt),
  right: fromFt(to.position.rightFt - from.position.rightFt),
});
