/** A reading as it is said: with a word for its side instead of a sign, and its trend to match. */
import type { GaugeReading } from '../../cards/types.ts';

export interface SaidReading {
  /** The number to show: without its sign where words tell the sides. */
  readonly size: number;
  /** "left"; null where there is nothing to say. */
  readonly side: string | null;
  readonly trend: 'rising' | 'falling' | 'growing' | 'shrinking' | 'steady' | null;
}

/**
 * Where the sides have words the number is a size, and so is what grows or shrinks: 295 ft left on its way to
 * 300 grows, though the value falls.
 * @param called the value on its step.
 */
export function saidReading({ sides, trend }: GaugeReading, called: number): SaidReading {
  if (!sides) return { size: called, side: null, trend };
  const side = called < 0 ? sides.below : called > 0 ? sides.above : null;
  const size = Math.abs(called);
  if (trend === null || trend === 'steady') return { size, side, trend };
  const isAway = called === 0 || called > 0 === (trend === 'rising');
  return { size, side, trend: isAway ? 'growing' : 'shrinking' };
}
