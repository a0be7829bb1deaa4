/** Items put in order: what is missing, what stands in the wrong place, what doesn't belong. */
import { inSentence } from '../cards/wording.ts';
import type { Answer, Ask } from '../cards/types.ts';
import { sayList } from '../deck/say.ts';
import type { Performance } from '../rules/types.ts';
import { unreadable, type AskOf, type FormResult } from './form-grade.ts';
import { longestIncreasing } from './longest-increasing.ts';

/** From this many items on, one slip that loses nothing critical is still adequate. */
export const itemsForASlip = 4;
/** Names in a headline; the rest are counted. */
const mostNamed = 2;

export interface SequenceFaults {
  readonly missing: readonly string[];
  readonly misplaced: readonly string[];
  readonly added: readonly string[];
}

/**
 * The fewest items to move, add and take away to get from `chosen` to `expected`: misplaced are those
 * outside a longest increasing subsequence of the expected places (Schensted 1961); of equally long ones
 * outside one that keeps the most items where they stand, so that beside the right order an item in its
 * own place is not called out of it without need. An item chosen twice counts as added the second time.
 */
export function sequenceFaults(chosen: readonly string[], expected: readonly string[]): SequenceFaults {
  const placeOf = new Map(expected.map((id, place) => [id, place]));
  const seen = new Set<string>();
  const own: string[] = [];
  /** Places of `own` in the list as it was called. */
  const calledAt: number[] = [];
  const added: string[] = [];
  chosen.forEach((id, place) => {
    if (placeOf.has(id) && !seen.has(id)) {
      own.push(id);
      calledAt.push(place);
    } else added.push(id);
    seen.add(id);
  });
  const places = own.map((id) => placeOf.get(id)!);
  const inOrder = new Set(longestIncreasing(places, (index) => (places[index] === calledAt[index] ? 1 : 0)));
  return {
    missing: expected.filter((id) => !seen.has(id)),
    misplaced: own.filter((id) => !inOrder.has(placeOf.get(id)!)),
    added,
  };
}

/**
 * Desired: exactly as expected. Adequate: nothing critical missing and one fault at most (one item
 * missing, misplaced or added) among four items or more. Outside: all else.
 */
export function sequencePerformance(
  faults: SequenceFaults,
  expected: readonly string[],
  critical: readonly string[],
): Performance {
  const count = faults.missing.length + faults.misplaced.length + faults.added.length;
  if (count === 0) return 'desired';
  const lostCritical = faults.missing.some((id) => critical.includes(id));
  return count === 1 && !lostCritical && expected.length >= itemsForASlip ? 'adequate' : 'outside';
}

type SequenceAsk = AskOf<'sequence', Ask>;

export function gradeSequence(ask: SequenceAsk, answer: AskOf<'sequence', Answer>): FormResult {
  if (answer.chosen.length === 0) return unreadable('empty', 'Choose at least one item, in order.');
  const labels = new Map(ask.pool.map((option) => [option.id, option.label]));
  const unknown = answer.chosen.filter((id) => !labels.has(id)).length;
  if (unknown > 0)
    return unreadable(
      'unknown-choice',
      'An item that is not among those shown was chosen. Choose again from the list.',
    );
  const faults = sequenceFaults(answer.chosen, ask.expected);
  return {
    ok: true,
    performance: sequencePerformance(faults, ask.expected, ask.critical),
    headline: headlineOf(faults, ask, labels),
    detail: { form: 'sequence', ...faults },
  };
}

function headlineOf(faults: SequenceFaults, ask: SequenceAsk, labels: ReadonlyMap<string, string>): string {
  const total = ask.expected.length;
  const name = (ids: readonly string[], critical: readonly string[] = []) => {
    const first = [...ids].sort((one, other) => +critical.includes(other) - +critical.includes(one));
    const named = first.slice(0, mostNamed).map((id) => inSentence(labels.get(id)!));
    const more = ids.length - named.length;
    return sayList(more > 0 ? [...named, `${more} more`] : named);
  };
  const parts = [
    faults.missing.length > 0 ? `${name(faults.missing, ask.critical)} missing` : '',
    faults.misplaced.length > 0 ? `${name(faults.misplaced)} out of place` : '',
    faults.added.length > 0 ? `${name(faults.added)} too many` : '',
  ].filter((part) => part !== '');
  if (parts.length === 0) return `all ${total} in order`;
  return `${total - faults.missing.length - faults.misplaced.length} of ${total}: ${parts.join('; ')}`;
}
