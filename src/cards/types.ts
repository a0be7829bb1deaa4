/** A card is what is scheduled; a prompt is one presentation of it, drawn with a seed. */
import type { Band, Plate, Spot } from '../deck/types.ts';
import type { Interval, State } from '../rules/types.ts';

export type CardKind =
  | 'value'
  | 'limit'
  | 'order'
  | 'checklist'
  | 'response'
  | 'complete-by'
  | 'rule'
  | 'spot'
  | 'note'
  | 'worked';

/**
 * Made from the deck's own ids, so that what has been learnt survives an edit:
 * `value/<gate>/<quantity>`, `limit/<gate or phase>/<quantity>/<floor|ceiling>`, `order/gates`,
 * `checklist/<checklist>`, `response/<checklist>/<item>`, `complete-by/<checklist>`,
 * `rule/<table>/<rule>`, `spot/<plate>/<spot>`, `note/<note>`, `worked/<worked value>`.
 */
export type CardId = string;

export interface Card {
  readonly id: CardId;
  readonly kind: CardKind;
  /** The gate it belongs to on the circuit picture, if any. */
  readonly gate: string | null;
  /** What neighbours in a session should differ in besides kind: gate, checklist, phase or plate. */
  readonly group: string;
  /** Short name for lists: "Alongside the spot · altitude". */
  readonly label: string;
  readonly critical: boolean;
  /** Time in which the answer counts as prompt, before the pilot's own scaling. */
  readonly windowMs: number;
  /** The expected answer in words, to notice when an edit changed it: "140 ft", "nose up". */
  readonly expected: string;
}

export interface Option {
  readonly id: string;
  readonly label: string;
}

export interface ControlRow {
  readonly id: string;
  readonly label: string;
  readonly axis: 'vertical' | 'horizontal' | null;
  readonly actions: readonly Option[];
  /** Chosen before the pilot touches anything. */
  readonly neutral: string;
}

export interface GaugeReading {
  readonly quantity: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  /** What the strip spans: the phase's range. */
  readonly span: Interval;
  readonly step: number;
  /** Words for the two sides of zero, said instead of a sign; `above` is null where a bare number means it. */
  readonly sides?: { readonly above: string | null; readonly below: string };
  /** Direction in which the phase's own rates move it, null when the deck says nothing. */
  readonly trend: 'rising' | 'falling' | 'steady' | null;
}

/** The conditions a number is worked out from. */
export interface Given {
  /** Settings of the day, in words: "True wind", "12 kt". */
  readonly values: readonly { readonly label: string; readonly value: string }[];
  /** The same as numbers, in the quantities' units. */
  readonly day: State;
  /** Ids of the charts that have to be read. */
  readonly charts: readonly string[];
}

export type Ask =
  | {
      readonly form: 'number';
      readonly quantity: string;
      /** Bands to grade by; for a limit, one made around the limit. */
      readonly band: Band;
      readonly limit: 'floor' | 'ceiling' | null;
      /** Of a number that is to be worked out: from what. */
      readonly given?: Given;
    }
  | {
      readonly form: 'sequence';
      /** In the order shown; holds strangers as well as the expected ones. */
      readonly pool: readonly Option[];
      readonly expected: readonly string[];
      /** Ids whose loss is critical. */
      readonly critical: readonly string[];
    }
  | { readonly form: 'choice'; readonly options: readonly Option[]; readonly correct: string }
  | {
      readonly form: 'controls';
      readonly phase: string;
      readonly state: State;
      readonly gauges: readonly GaugeReading[];
      readonly rows: readonly ControlRow[];
    }
  | { readonly form: 'point'; readonly plate: Plate; readonly spot: Spot }
  | { readonly form: 'text'; readonly accept: readonly string[] };

export interface Prompt {
  readonly card: Card;
  readonly seed: number;
  /** Where in the procedure: "Gate 7 of 9 · Alongside the spot". */
  readonly place: string;
  /** The large words: "Altitude". */
  readonly title: string;
  /** One line under it: the gate's cue, or what to do. Empty when there is nothing to add. */
  readonly detail: string;
  readonly ask: Ask;
}

export type Answer =
  | { readonly form: 'number'; readonly text: string }
  | { readonly form: 'sequence'; readonly chosen: readonly string[] }
  | { readonly form: 'choice'; readonly chosen: string }
  | { readonly form: 'controls'; readonly chosen: Readonly<Record<string, string>> }
  | { readonly form: 'point'; readonly at: readonly [number, number] }
  | { readonly form: 'text'; readonly text: string }
  /** The window closed, or the pilot asked to see it. */
  | { readonly form: 'none' };
