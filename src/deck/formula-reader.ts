/**
 * The reader of formulas is passed in: it brings an expression parser along, which a deck without formulas
 * never needs.
 */
import type { Computed } from './computed.ts';
import type { Draft } from './draft.ts';
import type { DeckParts } from './parts.ts';
import type { AuthoredBand, AuthoredGate, Band, Position } from './types.ts';

export interface FormulasRead {
  readonly drafts: readonly Draft[];
  /** Only what can be worked out; complete when no draft is an error. */
  readonly computed: Computed;
  /** The bands with formulas in them, as plain numbers of the default day; without those that have none. */
  readonly bands: ReadonlyMap<AuthoredBand, Band>;
  /** The same for the positions of gates. */
  readonly positions: ReadonlyMap<AuthoredGate['position'], Position>;
}

/** Never throws, whatever the formulas say. */
export type FormulaReader = (parts: DeckParts) => FormulasRead;
