/** The gate by which a checklist must be complete. */
import { checklistOf, gateOf, sourceOf } from '../deck/lookup.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import { completeByMs } from './windows.ts';

export const completeBy: CardKindEntry = {
  kind: 'complete-by',

  /** None for a deck of one gate: there is nothing to choose. */
  make({ deck }) {
    if (deck.gates.length < 2) return [];
    return (deck.checklists ?? []).map((list) => ({
      id: cardId('complete-by', list.id),
      kind: 'complete-by' as const,
      // A picture that lit the gate would give the answer away.
      gate: null,
      group: `checklist/${list.id}`,
      label: `${list.label} · complete by`,
      critical: list.items.some((item) => item.critical),
      windowMs: completeByMs,
      expected: gateOf(deck, list.completeBy).label,
    }));
  },

  /** Gates in the order they are flown: where in the pattern is the question, not finding the name. */
  show({ deck }, card, _random, seed) {
    const list = checklistOf(deck, partsOf(card.id)[0]);
    return {
      card,
      seed,
      place: 'Checklist',
      title: list.label,
      detail: 'By which gate must it be complete?',
      ask: {
        form: 'choice',
        options: deck.gates.map(({ id, label }) => ({ id, label })),
        correct: list.completeBy,
      },
    };
  },

  ground({ deck }, card) {
    const list = checklistOf(deck, partsOf(card.id)[0]);
    return { because: list.because ?? null, source: sourceOf(deck, list.source) };
  },
};
