/** What the pilot set of the day in place of the deck's own values, and how it is said and kept. */
import { quantityOf } from '../../deck/lookup.ts';
import { sayList, sayValue } from '../../deck/say.ts';
import type { DayDeck } from '../../day/types.ts';
import type { Deck, Quantity } from '../../deck/types.ts';
import type { DaySet } from '../../record/types.ts';

/** Deck id -> what was set for it on this device. */
export type KeptDays = Readonly<Record<string, DaySet>>;

/** More decks than anyone flies: what is older gives way. */
const mostDecks = 40;

/** Out of this device's storage, where anything may stand: only numbers by name are believed. */
export function readKeptDays(value: unknown): KeptDays {
  const days = Object.entries(objectIn(value)).flatMap(([deck, set]): [string, DaySet][] => {
    const numbers = Object.entries(objectIn(set)).filter(
      (entry): entry is [string, number] => typeof entry[1] === 'number' && Number.isFinite(entry[1]),
    );
    return numbers.length === 0 ? [] : [[deck, Object.fromEntries(numbers)]];
  });
  return Object.fromEntries(days.slice(-mostDecks));
}

/** The days with one deck's set anew; a deck whose day is its own again needs no place. */
export function keptWith(days: KeptDays, deckId: string, set: DaySet): KeptDays {
  const others = Object.entries(days).filter(([id]) => id !== deckId);
  return Object.fromEntries(isOwn(set) ? others : [...others, [deckId, set] as const].slice(-mostDecks));
}

/** Of what was set only what this deck's day still has, within its range, and otherwise than the deck has it. */
export function soundDay(deck: Deck, set: DaySet): DaySet {
  const sound = (deck.day ?? []).flatMap(({ quantity: id, default: own }): [string, number][] => {
    const value = set[id];
    const [lowest, highest] = quantityOf(deck, id).range;
    const fits = value !== undefined && value >= lowest && value <= highest && value !== own;
    return fits ? [[id, value]] : [];
  });
  return Object.fromEntries(sound);
}

/** The deck's own day. */
export const isOwn = (set: DaySet): boolean => Object.keys(set).length === 0;

export function isSameDay(one: DaySet | undefined, other: DaySet | undefined): boolean {
  const [a, b] = [one ?? {}, other ?? {}];
  const ids = Object.keys(a);
  return ids.length === Object.keys(b).length && ids.every((id) => a[id] === b[id]);
}

/** "true wind 20 kt and ship's speed 15 kt"; empty for the deck's own day. */
export function sayDay(deck: Deck, set: DaySet): string {
  return sayList(
    (deck.day ?? []).flatMap(({ quantity: id }) => {
      const quantity = quantityOf(deck, id);
      return set[id] === undefined ? [] : [`${nameOf(quantity)} ${sayValue(set[id], quantity)}`];
    }),
  );
}

/** Within a sentence. A name with a comma would be taken for two. */
const nameOf = ({ label, spoken }: Quantity): string =>
  spoken ?? (label.charAt(0).toLowerCase() + label.slice(1)).replaceAll(',', '');

const objectIn = (value: unknown): object =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};

/** The day as the briefing sheet shows and sets it. */
export interface DayInHand {
  /** The deck of its own day. */
  readonly own: Deck;
  readonly set: DaySet;
  /** The deck of the day that was set; null on its own day. */
  readonly today: DayDeck | null;
  /** Sets the day anew: what is left out is the deck's own. Left out where it can't be set. */
  readonly onset?: ((set: DaySet) => void) | undefined;
}
