/** The deck as the rest of the program sees it: checked, trusted by type, never changed in place. */
import type * as z from 'zod/mini';
import type { Computed } from './computed.ts';
import type {
  bandSchema,
  chartInputSchema,
  chartSchema,
  checklistSchema,
  controlSchema,
  deckSchema,
  detectSchema,
  flyingLegSchema,
  flyingLimitsSchema,
  flyingSchema,
  formulaSchema,
  gateSchema,
  limitSchema,
  momentSchema,
  noteSchema,
  passSchema,
  phaseSchema,
  plateSchema,
  quantitySchema,
  ruleSchema,
  sourceSchema,
  sumSchema,
  tableSchema,
  windSchema,
  workedSchema,
} from './schema.ts';

type DeepReadonly<T> = T extends (infer _)[] | object ? { readonly [K in keyof T]: DeepReadonly<T[K]> } : T;
type Made<S extends z.core.$ZodType> = DeepReadonly<z.infer<S>>;

/** As written: bands and positions may hold formulas. */
export type AuthoredDeck = Made<typeof deckSchema>;
export type AuthoredGate = Made<typeof gateSchema>;
export type AuthoredBand = Made<typeof bandSchema>;
export type Formula = Made<typeof formulaSchema>;

/** The deck of its default day: plain numbers, and what makes them on another day. */
export type Deck = Omit<AuthoredDeck, 'gates'> & {
  readonly gates: readonly Gate[];
  /** Only of decks with formulas. */
  readonly computed?: Computed;
};
export type Source = Made<typeof sourceSchema>;
export type Quantity = Made<typeof quantitySchema>;
/** Target and bounds of one value, in the quantity's unit. */
export type Band = Omit<AuthoredBand, 'target' | 'desired' | 'adequate' | 'floor' | 'ceiling'> & {
  readonly target: number;
  readonly desired: readonly [number, number];
  readonly adequate: readonly [number, number];
  readonly floor?: number | undefined;
  readonly ceiling?: number | undefined;
};
/** Numbers read off against one or two inputs: `values` of one, `rows` of two. */
export type Chart = Made<typeof chartSchema>;
export type ChartInput = Made<typeof chartInputSchema>;
export type Limit = Made<typeof limitSchema>;
/** Where a gate lies: feet ahead and to the right of the reference point, and the course flown there. */
export interface Position {
  readonly aheadFt: number;
  readonly rightFt: number;
  readonly courseDeg: number;
}
export type Gate = Omit<AuthoredGate, 'values' | 'position'> & {
  readonly position: Position;
  readonly values: Readonly<Record<string, Band>>;
};
export type Detect = Made<typeof detectSchema>;
/** What the aeroplane can do between two gates, in the units that the keys name. */
export type Flying = Made<typeof flyingSchema>;
export type FlyingLeg = Made<typeof flyingLegSchema>;
export type FlyingLimits = Made<typeof flyingLimitsSchema>;
export type Checklist = Made<typeof checklistSchema>;
export type Control = Made<typeof controlSchema>;
export type Action = Control['actions'][number];
export type Phase = Made<typeof phaseSchema>;
/** How a phase is flown in a pass. */
export type PassPlan = Made<typeof passSchema>;
export type Moment = Made<typeof momentSchema>;
export type Sum = Made<typeof sumSchema>;
export type Wind = Made<typeof windSchema>;
export type DecisionTable = Made<typeof tableSchema>;
export type AuthoredRule = Made<typeof ruleSchema>;
export type Plate = Made<typeof plateSchema>;
export type Spot = Plate['spots'][number];
export type Note = Made<typeof noteSchema>;
/** A number that the pilot works out for a day drawn anew. */
export type WorkedValue = Made<typeof workedSchema>;
