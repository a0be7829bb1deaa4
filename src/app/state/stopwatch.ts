/** Measures time on a monotonic clock, leaving out pauses. Times are passed in: it owns no clock. */
export interface Stopwatch {
  readonly ranMs: number;
  /** Monotonic time at which it was last set running; null while it stands. */
  readonly sinceMs: number | null;
}

export const startedAt = (atMs: number): Stopwatch => ({ ranMs: 0, sinceMs: atMs });

export const elapsedAt = (watch: Stopwatch, atMs: number): number =>
  watch.ranMs + (watch.sinceMs === null ? 0 : Math.max(0, atMs - watch.sinceMs));

export const pausedAt = (watch: Stopwatch, atMs: number): Stopwatch => ({
  ranMs: elapsedAt(watch, atMs),
  sinceMs: null,
});

export const resumedAt = (watch: Stopwatch, atMs: number): Stopwatch =>
  watch.sinceMs === null ? { ranMs: watch.ranMs, sinceMs: atMs } : watch;
