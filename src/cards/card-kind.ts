import type { Source } from '../deck/types.ts';
import type { Random } from '../rules/random.ts';
import type { Procedure } from '../rules/types.ts';
import type { Card, CardKind, Prompt } from './types.ts';

/** Why an answer is the right one. */
export interface Ground {
  readonly because: string | null;
  readonly source: Source;
}

/** All that a kind of card is. A new kind is one of these, entered in `registry.ts`. */
export interface CardKindEntry {
  readonly kind: CardKind;
  /** Every card of the kind that the deck gives, in the author's order. */
  make(procedure: Procedure): Card[];
  /** One presentation of one of them. `random` is seeded with `seed`, which the prompt keeps. */
  show(procedure: Procedure, card: Card, random: Random, seed: number): Prompt;
  ground(procedure: Procedure, card: Card): Ground;
}
