/** The order of the gates. */
import { sourceOf } from '../deck/lookup.ts';
import { shuffled } from '../rules/random.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId } from './ids.ts';
import { orderMsPerGate } from './windows.ts';

export const order: CardKindEntry = {
  kind: 'order',

  /** None for a deck of one gate: there is nothing to put in order. */
  make({ deck }) {
    if (deck.gates.length < 2) return [];
    return [
      {
        id: cardId('order', 'gates'),
        kind: 'order',
        gate: null,
        group: 'order',
        label: 'Order of the gates',
        critical: false,
        windowMs: orderMsPerGate * deck.gates.length,
        expected: deck.gates.map((gate) => gate.label).join(', '),
      },
    ];
  },

  show({ deck }, card, random, seed) {
    const gates = deck.gates.map(({ id, label }) => ({ id, label }));
    return {
      card,
      seed,
      place: `All ${gates.length} gates`,
      title: 'Order of the gates',
      detail: 'Put them in the order they are flown.',
      ask: {
        form: 'sequence',
        pool: shuffled(gates, random),
        expected: gates.map((gate) => gate.id),
        critical: [],
      },
    };
  },

  ground: ({ deck }) => ({ because: null, source: sourceOf(deck) }),
};
