/** A place to point to on a plate. */
import { sourceOf } from '../deck/lookup.ts';
import { sayNumber, unitSuffix } from '../deck/say.ts';
import type { Deck, Plate, Spot } from '../deck/types.ts';
import type { CardKindEntry } from './card-kind.ts';
import { cardId, partsOf } from './ids.ts';
import type { Card } from './types.ts';
import { spotMs } from './windows.ts';
import { inSentence } from './wording.ts';

function findSpot(deck: Deck, card: Card): { plate: Plate; spot: Spot } {
  const [plateId, spotId] = partsOf(card.id);
  const plate = deck.plates?.find(({ id }) => id === plateId);
  const spot = plate?.spots.find(({ id }) => id === spotId);
  if (!plate || !spot) throw new Error(`No spot “${card.id}” in the deck.`);
  return { plate, spot };
}

/** "300 ft across, 150 ft down": in words, so that a moved spot is noticed. */
function saySpot({ unit }: Plate, { at }: Spot): string {
  const say = (amount: number) => sayNumber(amount) + unitSuffix({ unit });
  return `${say(at[0])} across, ${say(at[1])} down`;
}

export const spot: CardKindEntry = {
  kind: 'spot',

  make({ deck }) {
    return (deck.plates ?? []).flatMap((plate) =>
      plate.spots.map((spot) => ({
        id: cardId('spot', plate.id, spot.id),
        kind: 'spot' as const,
        gate: null,
        group: `plate/${plate.id}`,
        label: `${plate.label} · ${inSentence(spot.label)}`,
        critical: spot.critical === true,
        windowMs: spotMs,
        expected: saySpot(plate, spot),
      })),
    );
  },

  show({ deck }, card, _random, seed) {
    const { plate, spot } = findSpot(deck, card);
    return {
      card,
      seed,
      place: plate.label,
      title: spot.label,
      detail: 'Point to it.',
      ask: { form: 'point', plate, spot },
    };
  },

  ground({ deck }, card) {
    const { plate, spot } = findSpot(deck, card);
    return { because: spot.because ?? null, source: sourceOf(deck, plate.source) };
  },
};
