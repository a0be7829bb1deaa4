/** The response to one challenge of a checklist. */
import { checklistOf, sourceOf } from '../deck/lookup.ts';
import type { Checklist, Deck } from '../deck/types.ts';
import { shuffled, type Random } from '../rules/random.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import type { Ask, Card, Option } from './types.ts';
import { responseMs } from './windows.ts';
import { inSentence, sameWords, withDistinctLabels } from './wording.ts';

const mostOptions = 5;

type Item = Checklist['items'][number];

function findItem(deck: Deck, card: Card): { list: Checklist; item: Item } {
  const [listId, itemId] = partsOf(card.id);
  const list = checklistOf(deck, listId);
  const item = list.items.find(({ id }) => id === itemId);
  if (!item) throw new Error(`Checklist “${listId}” has no item “${itemId}”.`);
  return { list, item };
}

/**
 * Other responses of the deck, none invented. Those to the same challenge in another list come first:
 * "Fuel" before the initial and "Fuel" before landing are what gets mixed up.
 */
function distractors(deck: Deck, item: Item, random: Random): Option[] {
  const others = (deck.checklists ?? []).flatMap((list) =>
    list.items
      .filter((other) => other !== item)
      .map((other) => ({
        id: `${list.id}/${other.id}`,
        label: other.response,
        confusable: sameWords(other.challenge) === sameWords(item.challenge),
      })),
  );
  const drawn = shuffled(others, random).sort(
    (one, other) => Number(other.confusable) - Number(one.confusable),
  );
  return withDistinctLabels(drawn, (option) => option.label, [item.response])
    .slice(0, mostOptions - 1)
    .map(({ id, label }) => ({ id, label }));
}

function askFor(deck: Deck, list: Checklist, item: Item, random: Random): Ask {
  const wrong = distractors(deck, item, random);
  if (wrong.length === 0) return { form: 'text', accept: [item.response] };
  const correct = `${list.id}/${item.id}`;
  const options = shuffled([{ id: correct, label: item.response }, ...wrong], random);
  return { form: 'choice', options, correct };
}

export const response: CardKindEntry = {
  kind: 'response',

  make({ deck }) {
    return (deck.checklists ?? []).flatMap((list) =>
      list.items.map((item) => ({
        id: cardId('response', list.id, item.id),
        kind: 'response' as const,
        gate: list.completeBy,
        group: `checklist/${list.id}`,
        label: `${list.label} · ${inSentence(item.challenge)}`,
        critical: item.critical === true,
        windowMs: responseMs,
        expected: item.response,
      })),
    );
  },

  show({ deck }, card, random, seed) {
    const { list, item } = findItem(deck, card);
    return {
      card,
      seed,
      place: `Checklist · ${list.label}`,
      title: item.challenge,
      detail: 'What is the response?',
      ask: askFor(deck, list, item, random),
    };
  },

  ground({ deck }, card) {
    const { list, item } = findItem(deck, card);
    return { because: item.because ?? list.because ?? null, source: sourceOf(deck, list.source) };
  },
};
