/** A checklist from memory: its challenges, in order, picked out from among a few of other lists. */
import { checklistOf, sourceOf } from '../deck/lookup.ts';
import type { Checklist, Deck } from '../deck/types.ts';
import { shuffled, type Random } from '../rules/random.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import type { Option } from './types.ts';
import { checklistMsPerItem } from './windows.ts';
import { sameWords, withDistinctLabels } from './wording.ts';

/** Enough to make the choice real, few enough to read. Common practice, no source. */
const mostStrangers = 3;

/** Items as they can be told apart: a challenge that comes twice in the list is shown with its response. */
function ownOptions({ items }: Checklist): Option[] {
  return items.map(({ id, challenge, response }) => {
    const namesakes = items.filter((item) => sameWords(item.challenge) === sameWords(challenge));
    return { id, label: namesakes.length > 1 ? `${challenge}: ${response}` : challenge };
  });
}

/** Items of other lists, none of which reads like one of this list. Their ids hold a slash, so they can't clash. */
function strangersTo(deck: Deck, checklist: Checklist, random: Random): Option[] {
  const others = (deck.checklists ?? [])
    .filter((other) => other.id !== checklist.id)
    .flatMap((other) =>
      other.items.map(({ id, challenge }) => ({ id: `${other.id}/${id}`, label: challenge })),
    );
  const own = checklist.items.map((item) => item.challenge);
  return withDistinctLabels(shuffled(others, random), (option) => option.label, own).slice(0, mostStrangers);
}

export const checklist: CardKindEntry = {
  kind: 'checklist',

  /** Lists of one item have no order and are asked by their response alone. */
  make({ deck }) {
    return (deck.checklists ?? [])
      .filter(({ items }) => items.length > 1)
      .map(({ id, label, completeBy, items }) => ({
        id: cardId('checklist', id),
        kind: 'checklist' as const,
        gate: completeBy,
        group: `checklist/${id}`,
        label,
        critical: items.some((item) => item.critical),
        windowMs: checklistMsPerItem * items.length,
        expected: items.map((item) => item.challenge).join(', '),
      }));
  },

  show({ deck }, card, random, seed) {
    const list = checklistOf(deck, partsOf(card.id)[0]);
    const strangers = strangersTo(deck, list, random);
    const strangersSaid = strangers.length > 0 ? ' Some belong elsewhere.' : '';
    return {
      card,
      seed,
      place: 'Checklist',
      title: list.label,
      detail: `Put its ${list.items.length} challenges in order.${strangersSaid}`,
      ask: {
        form: 'sequence',
        pool: shuffled([...ownOptions(list), ...strangers], random),
        expected: list.items.map((item) => item.id),
        critical: list.items.filter((item) => item.critical).map((item) => item.id),
      },
    };
  },

  ground({ deck }, card) {
    const list = checklistOf(deck, partsOf(card.id)[0]);
    return { because: list.because ?? null, source: sourceOf(deck, list.source) };
  },
};
