/** How well parameters foretell the answers of a record, and in which direction they would do it better. */
import { addCardGradient } from './gradient.ts';
import { traceCard, traceFor } from './memory-states.ts';
import type { PackedRecord } from './packed.ts';

/** One answer that the model could foretell: not the first on its card, and at least a day after the last. */
export interface Foretold {
  /** Place of the card and of the answer among the card's own. */
  readonly card: number;
  readonly answer: number;
  readonly atMs: number;
  /** The chance of recall that the model gave it. */
  readonly predicted: number;
  readonly recalled: boolean;
}

/** All answers of a record that can be foretold, card by card, with the chance that the parameters gave to each. */
export function foretell(record: PackedRecord, parameters: readonly number[]): Foretold[] {
  const trace = traceFor(record);
  const all: Foretold[] = [];
  for (let card = 0; card + 1 < record.starts.length; card++) {
    const from = record.starts[card]!;
    const to = record.starts[card + 1]!;
    if (to - from < 2) continue;
    traceCard(record, from, to, parameters, trace);
    for (let at = from + 1; at < to; at++) {
      if (record.gapDays[at] === 0) continue;
      all.push({
        card,
        answer: at - from,
        atMs: record.atMs[at]!,
        predicted: trace.recall[at - from]!,
        recalled: record.ratings[at]! > 1,
      });
    }
  }
  return all;
}

/** -ln of the chance that was given to what happened. */
export const lossOf = ({ predicted, recalled }: Pick<Foretold, 'predicted' | 'recalled'>): number =>
  -Math.log(recalled ? predicted : 1 - predicted);

/** Mean log loss; null when there is nothing to foretell. */
export function logLoss(foretold: readonly Pick<Foretold, 'predicted' | 'recalled'>[]): number | null {
  if (foretold.length === 0) return null;
  return foretold.reduce((sum, answer) => sum + lossOf(answer), 0) / foretold.length;
}

/** Makes the function that a fit goes through many times: the sum of log losses, its gradient written to `gradient`. */
export function summedLoss(
  record: PackedRecord,
): (parameters: Float64Array, gradient: Float64Array) => number {
  const trace = traceFor(record);
  return (parameters, gradient) => {
    gradient.fill(0);
    let sum = 0;
    for (let card = 0; card + 1 < record.starts.length; card++) {
      const from = record.starts[card]!;
      const to = record.starts[card + 1]!;
      if (to - from < 2) continue;
      traceCard(record, from, to, parameters, trace);
      for (let at = from + 1; at < to; at++) {
        if (record.gapDays[at] === 0) continue;
        const r = trace.recall[at - from]!;
        sum -= Math.log(record.ratings[at]! > 1 ? r : 1 - r);
      }
      addCardGradient(record, from, to, parameters, trace, gradient);
    }
    return sum;
  };
}
