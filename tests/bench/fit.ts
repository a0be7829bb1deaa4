/** The fit of the memory model to 10,008 answers of simulated learners, beside that of fsrs-rs. */
import { computeParameters } from '@open-spaced-repetition/binding';
import { fitNow } from '../../src/fit/drive.ts';
import { fitting } from '../../src/fit/fit.ts';
import { foretell, logLoss } from '../../src/fit/log-loss.ts';
import { pack } from '../../src/fit/packed.ts';
import type { CardAnswers } from '../../src/fit/types.ts';
import { usualParameters } from '../../src/memory/scheduler.ts';
import { seeded } from '../../src/rules/random.ts';
import { itemsOf, wholeFit } from '../reference/fsrs-rs-items.ts';
import { quickLearner, recordOf, someParameters } from '../unit/fit/learner.ts';
import { measure } from './measure.ts';

interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly spread?: number;
}

const ANSWERS = 10_008;
const nowMs = (): number => performance.now();

const lossOf = (cards: readonly CardAnswers[], parameters: readonly number[]): number =>
  logLoss(foretell(pack(cards), parameters))!;

/** Losses on the record that was fitted, whole, and on a second one of the same learner. */
export async function fitFigures(): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const [who, learner] of [
    ['a quick learner', quickLearner],
    ['a usual learner', usualParameters],
  ] as const) {
    const cards = recordOf(learner, ANSWERS, 7);
    const later = recordOf(learner, ANSWERS, 8);
    const startMs = nowMs();
    const theirs = await computeParameters(itemsOf(cards), { enableShortTerm: true });
    const theirSeconds = (nowMs() - startMs) / 1000;
    const ours = measure(() => fitNow(cards, { nowMs }), 3, 1);
    const name = `fit: ${cards.flat().length} answers of ${who}`;
    figures.push(
      { name: `${name}, last fifth held out`, value: ours.seconds, unit: 's', spread: ours.spread },
      { name: `${name}, longest step`, value: longestStepMs(cards), unit: 'ms' },
      { name: `${name}, by fsrs-rs`, value: theirSeconds, unit: 's' },
    );
    for (const [whose, parameters] of [
      ['usual parameters', usualParameters],
      ['those of the learner', learner],
      ['fitted', wholeFit(cards)],
      ['fitted by fsrs-rs', theirs],
    ] as const)
      figures.push(
        { name: `${name}, log loss: ${whose}`, value: lossOf(cards, parameters), unit: 'nat' },
        {
          name: `${name}, log loss of a second record: ${whose}`,
          value: lossOf(later, parameters),
          unit: 'nat',
        },
      );
  }
  return figures;
}

function longestStepMs(cards: readonly CardAnswers[]): number {
  const steps = fitting(cards, { nowMs });
  let longest = 0;
  for (let done: boolean | undefined = false; !done;) {
    const startMs = nowMs();
    ({ done } = steps.next());
    longest = Math.max(longest, nowMs() - startMs);
  }
  return longest;
}

/** How often a fit is taken, and what taking it or not came to on a second record of the same learner. */
export function fitTakenFigures(learners: number): Figure[] {
  return [650, 1250, 2500].flatMap((answers) =>
    (['usual learners', 'other learners'] as const).flatMap((who) => {
      let taken = 0;
      let worse = 0;
      let change = 0;
      for (let seed = 0; seed < learners; seed++) {
        const learner = who === 'usual learners' ? usualParameters : someParameters(seeded(1000 + seed));
        const fit = fitNow(recordOf(learner, answers, seed), { nowMs });
        if (fit.kind === 'none') throw new Error(fit.message);
        if (!fit.better) continue;
        const later = recordOf(learner, 4000, seed + 500);
        const by = lossOf(later, fit.parameters) - lossOf(later, usualParameters);
        taken++;
        change += by;
        if (by > 0) worse++;
      }
      const name = `fit: ${answers} answers, ${learners} ${who}`;
      return [
        { name: `${name}, fits taken`, value: taken, unit: 'fits' },
        { name: `${name}, taken for the worse`, value: worse, unit: 'fits' },
        { name: `${name}, mean change of log loss`, value: change / learners, unit: 'nat' },
      ];
    }),
  );
}
