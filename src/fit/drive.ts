/** Drives a fit to its end: at one go, or in turns with whatever else its thread has to do. */
import { fitting, stopped, type FitOptions } from './fit.ts';
import type { CardAnswers, FitOutcome, FitProgress } from './types.ts';

export interface DriveOptions extends FitOptions {
  readonly onProgress?: (progress: FitProgress) => void;
  /** Asked after each step. */
  readonly isStopped?: () => boolean;
}

/** Fits at one go. Takes about a second for 10,000 answers. */
export function fitNow(cards: readonly CardAnswers[], options: DriveOptions): FitOutcome {
  const steps = fitting(cards, options);
  let step = steps.next();
  while (!step.done) {
    options.onProgress?.(step.value);
    if (options.isStopped?.()) return stopped;
    step = steps.next();
  }
  return step.value;
}

/**
 * Fits in turns of at most `turnMs`: between two, `giveTurn` lets the thread read its messages, for
 * example the one that stops this.
 */
export async function fitInTurns(
  cards: readonly CardAnswers[],
  options: DriveOptions & { readonly giveTurn: () => Promise<void>; readonly turnMs?: number },
): Promise<FitOutcome> {
  const { nowMs, giveTurn, turnMs = 30, onProgress, isStopped } = options;
  const steps = fitting(cards, options);
  let turnStartMs = nowMs();
  let step = steps.next();
  while (!step.done) {
    if (nowMs() - turnStartMs >= turnMs) {
      onProgress?.(step.value);
      await giveTurn();
      turnStartMs = nowMs();
    }
    if (isStopped?.()) return stopped;
    step = steps.next();
  }
  return step.value;
}
