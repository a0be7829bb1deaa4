/** Timing that can be trusted a little: warmed up, repeated, with the spread shown. */

export interface Measured {
  /** Seconds for one call, the least of all rounds: what is left when the machine had nothing else to do. */
  readonly seconds: number;
  /** How much the slowest round took more, as a fraction of the least. */
  readonly spread: number;
}

/** Keeps results alive, so that the compiler can't leave out the work that made them. */
let sink: unknown;
export const lastResult = (): unknown => sink;

/**
 * Times a function.
 * @param work gets the number of the call, from 0, to vary its input by.
 * @param rounds how often the whole is repeated, after one round to warm up.
 * @param calls per round; many for what takes microseconds.
 */
export function measure(work: (call: number) => unknown, rounds: number, calls: number): Measured {
  const times: number[] = [];
  let call = 0;
  for (let round = -1; round < rounds; round++) {
    const startMs = performance.now();
    for (let i = 0; i < calls; i++) sink = work(call++);
    if (round >= 0) times.push((performance.now() - startMs) / 1000 / calls);
  }
  const seconds = Math.min(...times);
  return { seconds, spread: Math.max(...times) / seconds - 1 };
}
