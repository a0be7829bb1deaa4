import { quantityOf } from '../deck/lookup.ts';
import type { Deck } from '../deck/types.ts';
import { atomsIn, wholeOf, type Block, type Space } from './space.ts';
import { multiplesIn } from './steps.ts';

/** The block of all atoms that hold a multiple of their quantity's step: states a pilot can read off. */
export function onSteps(deck: Deck, space: Space): Block {
  const block = wholeOf(space);
  for (const axis of space.axes) {
    const { step } = quantityOf(deck, axis.quantity);
    for (const i of atomsIn(block, axis)) {
      const held = axis.atoms[i]!.some((piece) => multiplesIn(piece, step).count > 0);
      if (!held) block[axis.firstWord + (i >> 5)]! &= ~(1 << (i & 31));
    }
  }
  return block;
}
