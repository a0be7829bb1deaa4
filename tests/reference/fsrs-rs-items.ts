/** A record as fsrs-rs takes it, and our fit to the whole of one, to compare with its. */
import { FSRSBindingItem, FSRSBindingReview } from '@open-spaced-repetition/binding';
import { fittedTo } from '../../src/fit/fit.ts';
import { pack } from '../../src/fit/packed.ts';
import type { CardAnswers } from '../../src/fit/types.ts';

/** One item for each answer that can be foretold: it and all before it on its card. */
export function itemsOf(cards: readonly CardAnswers[]): FSRSBindingItem[] {
  return cards.flatMap((answers) => {
    const { gapDays } = pack([answers]);
    return answers.flatMap((_, last) =>
      gapDays[last] === 0
        ? []
        : [
            new FSRSBindingItem(
              answers.slice(0, last + 1).map(({ rating }, at) => new FSRSBindingReview(rating, gapDays[at]!)),
            ),
          ],
    );
  });
}

/** Our parameters for a whole record, nothing held out. */
export function wholeFit(cards: readonly CardAnswers[]): readonly number[] {
  const search = fittedTo(pack(cards));
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value.parameters;
}
