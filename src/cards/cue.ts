/** A state in words, as one pilot would tell it to another: "Abeam, 640 ft, closing fast, sinking". */
import { quantityOf } from '../deck/lookup.ts';
import { sayValue } from '../deck/say.ts';
import type { Deck, Phase, Quantity } from '../deck/types.ts';
import { contains, intersect, interval } from '../rules/intervals.ts';
import { wordFor, wordsOf } from '../rules/interval-word.ts';
import { saySigned } from '../rules/say-signed.ts';
import { isSettled } from '../rules/settled.ts';
import type { Box } from '../rules/space.ts';
import type { IntervalSet, Procedure, State } from '../rules/types.ts';
import { spokenOf } from './wording.ts';

interface Said {
  readonly quantity: Quantity;
  /** The deck's word for the value, with the values of the phase that it stands for; null without one. */
  readonly word: { readonly say: string; readonly set: IntervalSet } | null;
  readonly number: string;
  readonly value: IntervalSet;
}

/**
 * Where the pilot is, then each quantity in the phase's order: by its word when the deck has one for the
 * value, the height as a bare number, the rest by name and number. Never ambiguous: its name and number
 * ("sink 620 ft/min") take the place of a word where states that the words fit just as well would ask for other
 * actions, so all states that fit what is said require the same. `readCue` reads it back.
 * @param shown the quantities to say; all of the phase's unless told otherwise. Those left out must not
 * matter, else nothing that is said can settle it.
 */
export function cueOf(procedure: Procedure, phase: Phase, state: State, shown?: readonly string[]): string {
  const { deck } = procedure;
  const ids = Object.keys(phase.state).filter((id) => shown?.includes(id) ?? true);
  const said = ids.map((id) => saidOf(deck, phase, id, state[id]!));
  const box = new Map(said.map(({ quantity, value }) => [quantity.id, value]));
  const alone = new Set<Said>();
  // Each word alone that leaves all settled, from the first on.
  for (const one of said) {
    if (!one.word) continue;
    box.set(one.quantity.id, one.word.set);
    if (isSettled(procedure, phase.id, state, box)) alone.add(one);
    else box.set(one.quantity.id, one.value);
  }
  return [startOf(phase), ...said.map((one) => inWords(deck, one, alone.has(one)))].join(', ');
}

const startOf = (phase: Phase): string => phase.cue ?? phase.label;

function saidOf(deck: Deck, phase: Phase, id: string, value: number): Said {
  const quantity = quantityOf(deck, id);
  const found = wordFor(quantity, value);
  const range = interval(...phase.state[id]!);
  return {
    quantity,
    word: found && { say: found.say, set: intersect(found.set, [range]) },
    number: isOffset(quantity) ? saySigned(value, quantity) : sayValue(value, quantity),
    value: [interval(value, value)],
  };
}

function inWords(deck: Deck, { quantity, word, number }: Said, alone: boolean): string {
  if (!word) return bareOrNamed(deck, quantity, number);
  if (alone) return word.say;
  // With its number the word adds nothing, unless the sign is a part of it.
  return isBelowZero(word.set) && !isOffset(quantity)
    ? `${word.say} ${number.replace('−', '')}`
    : bareOrNamed(deck, quantity, number);
}

/** Of such words the sign is a part: "climbing 400 ft/min" is a sink of −400. */
export const isBelowZero = (set: IntervalSet): boolean =>
  set.every(({ hi, hiOpen }) => hi < 0 || (hi === 0 && hiOpen));

/** To be said by its side: "line-up 50 ft right". */
const isOffset = ({ range, above, below }: Quantity): boolean =>
  range[0] === -range[1] && above !== undefined && below !== undefined;

const bareOrNamed = (deck: Deck, quantity: Quantity, number: string): string =>
  quantity.id === deck.reference.height ? number : `${spokenOf(quantity)} ${number}`;

/**
 * What a cue fixes: for each quantity that it says, the values of the phase that fit the words. Read from
 * the words alone; null when they are no cue of the phase.
 */
export function readCue({ deck }: Procedure, phase: Phase, cue: string): Box | null {
  const start = startOf(phase);
  if (!cue.startsWith(start)) return null;
  const box = new Map<string, IntervalSet>();
  let rest = cue.slice(start.length);
  for (const id of Object.keys(phase.state)) {
    const read = readQuantity(deck, quantityOf(deck, id), interval(...phase.state[id]!), rest);
    if (!read) continue;
    box.set(id, read.set);
    rest = read.rest;
  }
  return rest === '' ? box : null;
}

function readQuantity(
  deck: Deck,
  quantity: Quantity,
  range: IntervalSet[number],
  text: string,
): { set: IntervalSet; rest: string } | null {
  // The longest first: one word may begin another, or end in a number.
  const words = [...wordsOf(quantity)].sort((one, other) => other.say.length - one.say.length);
  for (const { say, set } of words) {
    const start = `, ${say}`;
    if (!text.startsWith(start)) continue;
    const rest = text.slice(start.length);
    if (rest === '' || rest.startsWith(', ')) return { set: intersect(set, [range]), rest };
    const number = readNumber(quantity, text, `${say} `, isBelowZero(set) ? -1 : 1);
    if (number && contains(set, number.set[0]!.lo)) return number;
  }
  return readNumber(quantity, text, bareOrNamed(deck, quantity, ''));
}

/** ", name 1,000 ft": a number as `sayValue` writes it. */
function readNumber(
  quantity: Quantity,
  text: string,
  before: string,
  sign: 1 | -1 = 1,
): { set: IntervalSet; rest: string } | null {
  const start = `, ${before}`;
  if (!text.startsWith(start)) return null;
  const [digits] = /^−?\d{1,3}(?:,\d{3})*(?:\.\d+)?/.exec(text.slice(start.length)) ?? [];
  if (digits === undefined) return null;
  const value = Number(digits.replaceAll(',', '').replace('−', '-'));
  const written = sayValue(value, quantity);
  const rest = text.slice(start.length);
  if (!rest.startsWith(written)) return null;
  if (isOffset(quantity) && value !== 0)
    for (const signed of [value, -value]) {
      const said = saySigned(signed, quantity);
      if (rest === said || rest.startsWith(`${said}, `))
        return { set: [interval(signed, signed)], rest: rest.slice(said.length) };
    }
  return { set: [interval(sign * value, sign * value)], rest: rest.slice(written.length) };
}
