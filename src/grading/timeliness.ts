import type { Timeliness } from './types.ts';

/** An answer within the window is prompt; up to this many windows it is late, beyond timed out. */
export const windowsUntilTimedOut = 2;
/** Share of the window within which a sure answer comes. */
export const quickShare = 1 / 3;

export interface Timing {
  readonly timeliness: Timeliness;
  /** Within a third of the window. Never, when untimed or when the clock gave no usable time. */
  readonly quick: boolean;
}

/**
 * How an answer after `elapsedMs` stands to a window of `windowMs` scaled by `timing` (Infinity:
 * untimed). A time that is negative or not a number (a clock set back) counts as prompt, since the
 * pilot isn't to blame for it, but not as quick. A scale that is no positive number counts as 1.
 */
export function timingOf(elapsedMs: number, windowMs: number, timing: number): Timing {
  const scale = timing > 0 ? timing : 1;
  const window = windowMs * scale;
  if (window === Infinity || !(elapsedMs >= 0)) return { timeliness: 'prompt', quick: false };
  if (elapsedMs > window * windowsUntilTimedOut) return { timeliness: 'timed-out', quick: false };
  if (elapsedMs > window) return { timeliness: 'late', quick: false };
  return { timeliness: 'prompt', quick: elapsedMs <= window * quickShare };
}
