/** Free questions, as a choice where the author gives wrong answers, else typed. */
import { gateOf, sourceOf } from '../deck/lookup.ts';
import type { Deck, Note } from '../deck/types.ts';
import { shuffled, type Random } from '../rules/random.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import type { Ask, Card } from './types.ts';
import { noteMs } from './windows.ts';
import { gatePlace, withDistinctLabels } from './wording.ts';

const longestLabel = 60;

function findNote(deck: Deck, card: Card): Note {
  const note = deck.notes?.find(({ id }) => id === partsOf(card.id)[0]);
  if (!note) throw new Error(`No note “${card.id}” in the deck.`);
  return note;
}

const cut = (text: string) => {
  const letters = [...text];
  return letters.length > longestLabel
    ? `${letters
        .slice(0, longestLabel - 1)
        .join('')
        .trimEnd()}…`
    : text;
};

/** Option ids are places in the author's list: 0 is the answer. */
function askFor(note: Note, random: Random): Ask {
  const answers = [note.answer, ...(note.choices ?? [])].map((label, index) => ({
    id: String(index),
    label,
  }));
  const options = withDistinctLabels(answers, (option) => option.label);
  if (options.length < 2) return { form: 'text', accept: [note.answer, ...(note.accept ?? [])] };
  return { form: 'choice', options: shuffled(options, random), correct: '0' };
}

export const note: CardKindEntry = {
  kind: 'note',

  make({ deck }) {
    return (deck.notes ?? []).map((note) => ({
      id: cardId('note', note.id),
      kind: 'note' as const,
      gate: note.gate ?? null,
      group: note.gate === undefined ? 'notes' : `gate/${note.gate}`,
      label: cut(note.ask),
      critical: note.critical === true,
      windowMs: noteMs,
      expected: note.answer,
    }));
  },

  show({ deck }, card, random, seed) {
    const note = findNote(deck, card);
    return {
      card,
      seed,
      place: note.gate === undefined ? deck.title : gatePlace(deck, gateOf(deck, note.gate).id),
      title: note.ask,
      detail: '',
      ask: askFor(note, random),
    };
  },

  ground({ deck }, card) {
    const note = findNote(deck, card);
    return { because: note.because ?? null, source: sourceOf(deck, note.source) };
  },
};
