/**
 * A level turn seen from the ship, by fine steps: the independent path that the deck's positions are
 * checked against. Exact constants: 1 kt = 1852/3600 m/s, 1 ft = 0.3048 m, g = 9.80665 m/s².
 */
export const ftPerSecondPerKt = 1852 / 3600 / 0.3048;
export const gFt = 9.80665 / 0.3048;
export const ftPerNm = 1852 / 0.3048;

const radians = (deg: number) => (deg * Math.PI) / 180;

/** Radius of a level turn in still air, ft. */
export function turnRadiusFt(airspeedKt: number, bankDeg: number): number {
  return (airspeedKt * ftPerSecondPerKt) ** 2 / (gFt * Math.tan(radians(bankDeg)));
}

/** Rate of a level turn, degrees a second. */
export function turnRateDegS(airspeedKt: number, bankDeg: number): number {
  return ((gFt * Math.tan(radians(bankDeg))) / (airspeedKt * ftPerSecondPerKt)) * (180 / Math.PI);
}

/** Bank of a level turn, from the load factor in g. */
export const bankForLoadDeg = (load: number) => (Math.acos(1 / load) * 180) / Math.PI;

interface Turn {
  readonly from: { readonly aheadFt: number; readonly rightFt: number; readonly courseDeg: number };
  readonly degrees: number;
  readonly bankDeg: number;
  /** Airspeed at the start and the end; it falls evenly with the heading. */
  readonly airspeedKt: readonly [number, number];
  /** From right ahead. */
  readonly windOverDeckKt: number;
}

/** Where a left turn ends, in the ship's frame, and how long it takes. */
export function leftTurn(turn: Turn): { aheadFt: number; rightFt: number; seconds: number } {
  const step = 0.01;
  let { aheadFt, rightFt, courseDeg } = turn.from;
  let turned = 0;
  let seconds = 0;
  while (turned < turn.degrees) {
    const airspeed = turn.airspeedKt[0] + (turn.airspeedKt[1] - turn.airspeedKt[0]) * (turned / turn.degrees);
    const rate = turnRateDegS(airspeed, turn.bankDeg);
    aheadFt += (airspeed * Math.cos(radians(courseDeg)) - turn.windOverDeckKt) * ftPerSecondPerKt * step;
    rightFt += airspeed * Math.sin(radians(courseDeg)) * ftPerSecondPerKt * step;
    courseDeg -= rate * step;
    turned += rate * step;
    seconds += step;
  }
  return { aheadFt, rightFt, seconds };
}
