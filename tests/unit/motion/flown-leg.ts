/**
 * A leg flown in ten thousand steps, from nothing but the bank, the speeds and the wind: the
 * independent path that the closed form is checked against. 1 kt = 1852/3600 m/s, 1 ft = 0.3048 m,
 * g = 9.80665 m/s².
 */
import type { LegFlight } from '../../../src/motion/legs.ts';

const ftSPerKt = 1852 / 3600 / 0.3048;
const gFt = 9.80665 / 0.3048;
const radians = (deg: number): number => (deg * Math.PI) / 180;

export interface FlownLeg {
  readonly headingDeg: number;
  readonly speedsKt: readonly [number, number];
  /** From ahead and from the right. */
  readonly windKt: { readonly ahead: number; readonly right: number };
  readonly flight: LegFlight;
}

/** Where it ends, ft ahead and to the right of its beginning, on which heading, after which way. */
export function flownInSteps({ headingDeg, speedsKt, windKt, flight }: FlownLeg) {
  const { seconds, turn } = flight;
  const steps = 10_000;
  const dt = seconds / steps;
  const sense = turn?.direction === 'right' ? 1 : -1;
  let [aheadFt, rightFt, lengthFt, heading] = [0, 0, 0, radians(headingDeg)];
  for (let i = 0; i < steps; i++) {
    const t = (i + 0.5) * dt;
    const speed = (speedsKt[0] + ((speedsKt[1] - speedsKt[0]) * t) / seconds) * ftSPerKt;
    const isTurning = turn && t > turn.beforeS && t < seconds - turn.afterS;
    const rate = isTurning ? (sense * gFt * Math.tan(radians(turn.bankDeg))) / speed : 0;
    const middle = heading + (rate * dt) / 2;
    const ahead = speed * Math.cos(middle) - windKt.ahead * ftSPerKt;
    const right = speed * Math.sin(middle) - windKt.right * ftSPerKt;
    aheadFt += ahead * dt;
    rightFt += right * dt;
    lengthFt += Math.hypot(ahead, right) * dt;
    heading += rate * dt;
  }
  return { aheadFt, rightFt, lengthFt, headingDeg: (heading * 180) / Math.PI };
}
