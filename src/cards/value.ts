/** Gate values: the number to have at a gate. */
import { gateOf, quantityOf, sourceOf } from '../deck/lookup.ts';
import { sayValue } from '../deck/say.ts';
import type { Band, Gate } from '../deck/types.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import { valueMs } from './windows.ts';
import { gatePlace, spokenOf } from './wording.ts';

/** The band of a gate's quantity. The gate has it, or the card was made from another deck: a bug. */
export function bandOf(gate: Gate, quantity: string): Band {
  const band = gate.values[quantity];
  if (!band) throw new Error(`Gate “${gate.id}” has no band for “${quantity}”.`);
  return band;
}

/** A value that kills when it is wrong, or that its author marks so. */
function isCritical(band: Band): boolean {
  return band.critical === true || band.floor !== undefined || band.ceiling !== undefined;
}

export const value: CardKindEntry = {
  kind: 'value',

  make({ deck }) {
    return deck.gates.flatMap((gate) =>
      Object.entries(gate.values).map(([quantityId, band]) => {
        const quantity = quantityOf(deck, quantityId);
        return {
          id: cardId('value', gate.id, quantityId),
          kind: 'value' as const,
          gate: gate.id,
          group: `gate/${gate.id}`,
          label: `${gate.label} · ${spokenOf(quantity)}`,
          critical: isCritical(band),
          windowMs: valueMs,
          expected: sayValue(band.target, quantity),
        };
      }),
    );
  },

  show({ deck }, card, _random, seed) {
    const [gateId, quantity] = partsOf(card.id);
    const gate = gateOf(deck, gateId);
    return {
      card,
      seed,
      place: gatePlace(deck, gateId),
      title: quantityOf(deck, quantity).label,
      detail: gate.cue,
      ask: { form: 'number', quantity, band: bandOf(gate, quantity), limit: null },
    };
  },

  ground({ deck }, card) {
    const [gateId, quantity] = partsOf(card.id);
    const band = bandOf(gateOf(deck, gateId), quantity);
    return { because: band.because ?? null, source: sourceOf(deck, band.source) };
  },
};
