/** Words that several kinds of card share: where in the procedure, and labels inside a sentence. */
import { gateIndexOf, gateOf } from '../deck/lookup.ts';
import type { Action, Deck, Phase, Quantity } from '../deck/types.ts';

/** "Gate 7 of 9 · Alongside the spot". */
export function gatePlace(deck: Deck, gate: string): string {
  return `${gateNumber(deck, gate)} · ${gateOf(deck, gate).label}`;
}

/** "After gate 7 of 9 · Alongside to over the spot". */
export function phasePlace(deck: Deck, phase: Phase): string {
  return `After ${inSentence(gateNumber(deck, phase.from))} · ${phase.label}`;
}

function gateNumber(deck: Deck, gate: string): string {
  return `Gate ${gateIndexOf(deck, gate) + 1} of ${deck.gates.length}`;
}

/** A label as it stands inside a sentence: "Flaps" -> "flaps", but "IAS", "V1" and "G-limit" as they are. */
export function inSentence(label: string): string {
  return /^\p{Lu}(?=\p{Ll}|$)/u.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}

/** An action as an instruction in a sentence: "nose up". */
export const instructionOf = (action: Action): string => action.spoken ?? inSentence(action.label);

/** A quantity as it is named in a sentence: "sink". */
export function spokenOf(quantity: Quantity): string {
  return quantity.spoken ?? inSentence(quantity.label);
}

/** Two labels that a reader can't tell apart give the same key. */
export function sameWords(label: string): string {
  return label.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/** The items whose label no earlier one has, nor any of `taken`. */
export function withDistinctLabels<T>(
  items: readonly T[],
  labelOf: (item: T) => string,
  taken: readonly string[] = [],
): T[] {
  const seen = new Set(taken.map(sameWords));
  return items.filter((item) => {
    const words = sameWords(labelOf(item));
    if (seen.has(words)) return false;
    seen.add(words);
    return true;
  });
}
