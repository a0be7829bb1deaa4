/** What is said of a pass once it is over: its gates in words, the rules that were missed, what to chart. */
import {
  actionOf,
  controlOf,
  gateIndexOf,
  gateOf,
  neutralOf,
  phaseOf,
  quantityOf,
  tableOf,
} from '../../deck/lookup.ts';
import { sayError, sayList, sayValue } from '../../deck/say.ts';
import type { Deck } from '../../deck/types.ts';
import { flownPhase } from '../../motion/phase-motion.ts';
import { traceOf } from '../../motion/trace.ts';
import type { Crossing, DecisionMark, Pass, PassAssessment, Trace } from '../../motion/types.ts';
import type { Performance } from '../../rules/types.ts';
import { sayRule } from '../rule-sentence.ts';

export interface CrossedGate {
  readonly id: string;
  /** Counted from 1. */
  readonly number: number;
  readonly label: string;
  readonly tMs: number;
  readonly performance: Performance | null;
  readonly values: readonly {
    readonly quantity: string;
    readonly label: string;
    /** "660 ft". */
    readonly flown: string;
    /** "20 ft high", "on target". */
    readonly error: string;
    readonly performance: Performance;
  }[];
}

export function crossedGates(deck: Deck, crossings: readonly Crossing[]): CrossedGate[] {
  return crossings.map(({ gate, tMs, performance, values }) => ({
    id: gate,
    number: gateIndexOf(deck, gate) + 1,
    label: gateOf(deck, gate).label,
    tMs,
    performance,
    values: values.map(({ quantity: id, value, grade }) => {
      const quantity = quantityOf(deck, id);
      return {
        quantity: id,
        label: quantity.label,
        flown: sayValue(value, quantity),
        error: sayError(grade.signedError, quantity),
        performance: grade.performance,
      };
    }),
  }));
}

export interface MissedCall {
  readonly tMs: number;
  /** "Final turn". */
  readonly phase: string;
  /** What the rule goes by: "altitude 640 ft and sink 120 ft/min". */
  readonly state: string;
  readonly chosen: string;
  /** The control stayed in neutral: nothing was called on it. */
  readonly leftAlone: boolean;
  readonly opposite: boolean;
}

export interface MissedRule {
  /** `table/rule`; of a call that no rule asked for, its control. */
  readonly key: string;
  readonly control: string;
  /** What was called for. */
  readonly required: string;
  /** The rule in a sentence, and why; empty when there was none. */
  readonly rule: string;
  readonly because: string;
  readonly critical: boolean;
  readonly asked: number;
  /** In order of time. */
  readonly calls: readonly MissedCall[];
}

/** The rules that were missed, go-arounds and critical ones first, then those missed most. */
export function missedRules({ procedure: { deck } }: Pass, assessment: PassAssessment): MissedRule[] {
  const missed = new Map<string, MissedRule & { calls: MissedCall[] }>();
  for (const { point, faults } of assessment.decisions)
    for (const fault of faults) {
      const { rule } = fault;
      const key = rule ? `${rule.table}/${rule.rule}` : `none/${fault.control}`;
      const control = controlOf(deck, fault.control);
      const reason = point.decision.reasons.find((one) => one.control === fault.control);
      const tally = assessment.rules.find((one) => `${one.table}/${one.rule}` === key);
      const entry = missed.get(key) ?? {
        key,
        control: control.label,
        required: actionOf(control, fault.required).label,
        rule: rule ? sayRule(deck, rule.table, rule.rule) : '',
        because: reason?.because ?? '',
        critical: (reason?.critical ?? false) || point.decision.overriding !== null,
        asked: tally?.asked ?? 0,
        calls: [],
      };
      const inputs = rule ? tableOf(deck, rule.table).inputs : [];
      entry.calls.push({
        tMs: point.tMs,
        phase: phaseOf(deck, point.phase).label,
        state: sayInputs(deck, inputs, point.state),
        chosen: actionOf(control, fault.chosen).label,
        leftAlone: fault.chosen === neutralOf(control).id,
        opposite: fault.opposite,
      });
      missed.set(key, entry);
    }
  return [...missed.values()].sort(
    (one, other) => Number(other.critical) - Number(one.critical) || other.calls.length - one.calls.length,
  );
}

function sayInputs(deck: Deck, inputs: readonly string[], state: Readonly<Record<string, number>>): string {
  return sayList(
    inputs.flatMap((id) => {
      const value = state[id];
      const quantity = quantityOf(deck, id);
      return value === undefined
        ? []
        : [`${quantity.spoken ?? quantity.label.toLowerCase()} ${sayValue(value, quantity)}`];
    }),
  );
}

/** "power more, not less; pitch hold, not nose up": what a call should have been. */
export function sayFaults(deck: Deck, { faults }: DecisionMark): string {
  return faults
    .map(({ control: id, required, chosen }) => {
      const control = controlOf(deck, id);
      const name = (action: string): string => actionOf(control, action).label.toLowerCase();
      return `${control.label.toLowerCase()} ${name(required)}, not ${name(chosen)}`;
    })
    .join('; ');
}

/** What is counted of a pass: the times at which it stood and something was to be called, or nothing. */
export const sayStops = (count: number): string => `${count} stop${count === 1 ? '' : 's'}`;

/** How often a rule was missed: "missed 2 of the 7 times it was due". @param asked 0 where no rule asked. */
export function sayHowOften(missed: number, asked: number): string {
  const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);
  if (asked === 0) return times(missed);
  if (asked === 1) return 'due once, and missed';
  return missed === 2 && asked === 2
    ? 'missed both times it was due'
    : missed === asked
      ? `missed all ${times(asked)} it was due`
      : `missed ${missed} of the ${times(asked)} it was due`;
}

const mostCharts = 5;

export interface ChartedTrace extends Trace {
  /** Of each action, in the order of `actions`: whether it raises the quantity. */
  readonly raises: readonly boolean[];
}

/** The quantities that most gates grade, the height first. */
export function chartedTraces(pass: Pass): ChartedTrace[] {
  const { procedure, crossings } = pass;
  const { height } = procedure.deck.reference;
  const counts = new Map<string, number>();
  for (const { values } of crossings)
    for (const { quantity } of values) counts.set(quantity, (counts.get(quantity) ?? 0) + 1);
  // A pass that ended before its first gate still has its height, and what was flown there.
  if (counts.size === 0)
    for (const id of Object.keys(phaseOf(procedure.deck, pass.phase).state)) counts.set(id, 0);
  const place = (id: string): number => (id === height ? Infinity : counts.get(id)!);
  return [...counts.keys()]
    .sort((one, other) => place(other) - place(one))
    .slice(0, mostCharts)
    .map((id) => withWays(pass, traceOf(pass, id)));
}

function withWays({ procedure, legs }: Pass, trace: Trace): ChartedTrace {
  const raises = trace.actions.map(({ action, fromMs }) => {
    const leg = legs.findLast((one) => one.fromMs <= fromMs) ?? legs[0]!;
    return (flownPhase(procedure, leg.phase)?.effects.get(action)?.[trace.quantity] ?? 0) > 0;
  });
  return { ...trace, raises };
}
