/** What the day moves, to be found by gate and quantity, and said. */
import { sayNumber, sayValue } from '../../../deck/say.ts';
import type { Band, Deck, Gate, Quantity } from '../../../deck/types.ts';
import type { DayDeck, MovedValue } from '../../../day/types.ts';

/** null on the deck's own day, and for what stays. */
export type MoveAt = (gateId: string, quantityId: string) => MovedValue | null;

export const nothingMoves: MoveAt = () => null;

export function movesOf({ moved }: Pick<DayDeck, 'moved'>): MoveAt {
  const byPlace = new Map(moved.map((move) => [`${move.gate}/${move.quantity}`, move]));
  return (gateId, quantityId) => byPlace.get(`${gateId}/${quantityId}`) ?? null;
}

export interface ValueToday {
  readonly quantity: Quantity;
  /** Null where the day leaves it without a number. */
  readonly band: Band | null;
  readonly move: MovedValue | null;
}

/** A gate's values in the deck's order of quantities, those without a number today among them. */
export function valuesToday(deck: Deck, gate: Gate, moveAt: MoveAt): readonly ValueToday[] {
  return deck.quantities.flatMap((quantity) => {
    const band = gate.values[quantity.id] ?? null;
    const move = moveAt(gate.id, quantity.id);
    return band || move ? [{ quantity, band, move }] : [];
  });
}

/** "60 → 52 kt"; the target's number alone where only its bounds move. */
export function sayTargets({ before, after }: MovedValue, quantity: Quantity): string {
  if (!after) return 'no value today';
  if (!before || before.target === after.target) return sayValue(after.target, quantity);
  return `${sayNumber(before.target, quantity.step)} → ${sayValue(after.target, quantity)}`;
}

/**
 * Under each gate's name on the picture: the height there, or what the day moves, the height first.
 * @param short numbers and units alone, where names have no room.
 */
export function pictureNotes(
  deck: Deck,
  moved: readonly MovedValue[],
  short = false,
): Readonly<Record<string, string>> {
  const height = deck.quantities.find(({ id }) => id === deck.reference.height);
  const notes = deck.gates.flatMap((gate) => {
    const here = moved.filter((move) => move.gate === gate.id);
    const first = here.find(({ quantity }) => quantity === height?.id) ?? here[0];
    const quantity = deck.quantities.find(({ id }) => id === first?.quantity);
    if (first && quantity) {
      const name = short || quantity === height ? '' : `${quantity.label}${first.after ? ' ' : ': '}`;
      const more = here.length < 2 ? '' : short ? ' …' : `, ${here.length - 1} more`;
      return [[gate.id, `${name}${sayTargets(first, quantity)}${more}`]];
    }
    const band = height && gate.values[height.id];
    return band ? [[gate.id, sayValue(band.target, height)]] : [];
  });
  return Object.fromEntries(notes);
}
