/** A state in words, as one pilot would tell it to another: "Abeam, 640 ft, closing fast, sinking". */
import { quantityOf } from '../deck/lookup.ts';
import { sayValue } from '../deck/say.ts';
import type { Deck, Phase } from '../deck/types.ts';
import { intervalWord } from '../rules/interval-word.ts';
import type { State } from '../rules/types.ts';
import { spokenOf } from './wording.ts';

/**
 * Where the pilot is, then each quantity in the phase's order: by its word when the deck has one for
 * the value, the height as a bare number, the rest by name and number.
 */
export function cueOf(deck: Deck, phase: Phase, state: State): string {
  const said = Object.keys(phase.state).map((id) => {
    const quantity = quantityOf(deck, id);
    const value = state[id]!;
    const number = sayValue(value, quantity);
    return (
      intervalWord(quantity, value) ??
      (id === deck.reference.height ? number : `${spokenOf(quantity)} ${number}`)
    );
  });
  return [phase.cue ?? phase.label, ...said].join(', ');
}
