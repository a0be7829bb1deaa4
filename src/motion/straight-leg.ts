/**
 * A straight leg in a moving frame: the nose is held into the wind so that the track runs from gate to
 * gate, and the airspeed changes evenly with time. The speed along the track is that of the wind triangle,
 * √(V² − cross²) − head; its mean over the leg is taken by Simpson's rule, exact without wind across.
 */
import type { Vector } from './even-turn.ts';
import { meanOver } from './mean-over.ts';

/**
 * Seconds from gate to gate; null where the wind leaves no way forward, and at a stand.
 * @param offset from gate to gate in the moving frame, m.
 * @param speeds true airspeed at the two gates, m/s.
 * @param wind felt in the moving frame, m/s: from ahead, and from the right.
 */
export function straightSeconds(
  offset: Vector,
  speeds: readonly [number, number],
  wind: Vector,
): number | null {
  const length = Math.hypot(offset.ahead, offset.right);
  if (length < 0.1) return null;
  const head = (wind.ahead * offset.ahead + wind.right * offset.right) / length;
  const cross = (wind.right * offset.ahead - wind.ahead * offset.right) / length;
  const along = (airspeed: number): number => Math.sqrt(Math.max(0, airspeed ** 2 - cross ** 2)) - head;
  const [first, last] = speeds;
  if (Math.min(first, last) < Math.abs(cross) - 1e-9) return null;
  const ends = [along(first), along(last)] as const;
  // A leg may end at a stand over the ship, but nobody flies backwards along it.
  if (ends[0] < -standing || ends[1] < -standing) return null;
  const mean = meanOver((share) => along(first + (last - first) * share));
  return mean > standing ? length / mean : null;
}

/** Half a knot: slower than this over the frame is a stand. */
const standing = 0.257;
