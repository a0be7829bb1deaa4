/** What the tables of a phase ask for in a state. */
import { clash, inOrderOfPrecedence, mayClash } from './hit-policy.ts';
import { holds } from './intervals.ts';
import type {
  Decision,
  Interval,
  IntervalSet,
  PhaseRules,
  Procedure,
  Reason,
  Rule,
  State,
  Table,
} from './types.ts';

/** A condition on the value at a place in the list of the phase's inputs. */
interface Test {
  readonly input: number;
  readonly set: IntervalSet;
}

interface ReadyRule {
  readonly rule: Rule;
  readonly tests: readonly Test[];
  readonly reason: Reason;
  /** Its decision when it overrides: always the same, so made once. */
  readonly overrides: Decision;
  /** Later rules of the same table that must not fit at the same time; found when it first decides. */
  clashes: readonly ReadyRule[] | null;
}

interface ReadyTable {
  readonly table: Table;
  /** Of those that fit the first decides. */
  readonly rules: readonly ReadyRule[];
}

interface ReadyPhase {
  readonly inputs: readonly string[];
  /** Scratch for one call: values in the order of `inputs`. */
  readonly values: Float64Array;
  readonly overriding: readonly ReadyTable[];
  readonly base: readonly ReadyTable[];
  readonly neutral: Readonly<Record<string, string>>;
}

const none: readonly never[] = [];
const ready = new WeakMap<PhaseRules, ReadyPhase>();

/**
 * Decides a state of a phase. Overriding tables come first, in deck order; the first that gives an
 * action is the whole answer. Otherwise each control gets the action of its table by hit policy, or its
 * neutral action when no table of the phase decides it. A table whose policy the state breaks gives no
 * action and is named in `conflicts`; one without a rule that fits is named in `unanswered`.
 * @param phaseId a phase of the procedure; any other is a bug of the caller.
 * @param state a value for every input of the phase, see `checkState`; no rule that tests a missing
 * value fits.
 */
export function decide(procedure: Procedure, phaseId: string, state: State): Decision {
  return decideIn(rulesOfPhase(procedure, phaseId), state);
}

export function rulesOfPhase(procedure: Procedure, phaseId: string): PhaseRules {
  const rules = procedure.phases.get(phaseId);
  if (!rules) throw new Error(`No phase “${phaseId}” in the procedure.`);
  return rules;
}

/** As `decide`, for callers that hold the phase already. */
export function decideIn(rules: PhaseRules, state: State): Decision {
  const phase = readyPhase(rules);
  const { inputs, values } = phase;
  for (let i = 0; i < inputs.length; i++) values[i] = state[inputs[i]!] ?? NaN;

  let conflicts: Decision['conflicts'] = none;
  for (const table of phase.overriding) {
    const winner = firstThatFits(table.rules, values);
    if (!winner) continue;
    if (!isDisputed(table, winner, values))
      return conflicts.length === 0 ? winner.overrides : { ...winner.overrides, conflicts };
    conflicts = [...conflicts, conflictIn(table, values)];
  }

  const actions: Record<string, string> = { ...phase.neutral };
  const reasons: Reason[] = [];
  let unanswered: readonly string[] = none;
  for (const table of phase.base) {
    const winner = firstThatFits(table.rules, values);
    if (winner && !isDisputed(table, winner, values)) {
      actions[table.table.control] = winner.reason.action;
      reasons.push(winner.reason);
      continue;
    }
    if (winner) conflicts = [...conflicts, conflictIn(table, values)];
    else unanswered = [...unanswered, table.table.id];
    Reflect.deleteProperty(actions, table.table.control);
  }
  return { actions, overriding: null, reasons, unanswered, conflicts };
}

function firstThatFits(rules: readonly ReadyRule[], values: Float64Array): ReadyRule | null {
  for (const rule of rules) if (fits(rule.tests, values)) return rule;
  return null;
}

function fits(tests: readonly Test[], values: Float64Array): boolean {
  for (const { input, set } of tests) if (!isIn(set, values[input]!)) return false;
  return true;
}

/** `contains` without a closure: this is the innermost loop of drills and debriefs. */
function isIn(set: readonly Interval[], value: number): boolean {
  for (const piece of set) if (holds(piece, value)) return true;
  return false;
}

function isDisputed(table: ReadyTable, winner: ReadyRule, values: Float64Array): boolean {
  winner.clashes ??= clashesOf(table, winner);
  for (const rival of winner.clashes) if (fits(rival.tests, values)) return true;
  return false;
}

function clashesOf({ table, rules }: ReadyTable, winner: ReadyRule): readonly ReadyRule[] {
  if (!mayClash(table)) return none;
  return rules.slice(rules.indexOf(winner) + 1).filter((later) => clash(table, winner.rule, later.rule));
}

function conflictIn({ table, rules }: ReadyTable, values: Float64Array): Decision['conflicts'][number] {
  const fitting = rules.filter(({ tests }) => fits(tests, values)).map(({ rule }) => rule);
  fitting.sort((a, b) => a.index - b.index);
  return { table: table.id, rules: fitting.map(({ id }) => id) };
}

function readyPhase(rules: PhaseRules): ReadyPhase {
  const known = ready.get(rules);
  if (known) return known;
  const inputs = inputsOf(rules);
  const prepare = (table: Table) => readyTable(table, inputs);
  const made: ReadyPhase = {
    inputs,
    values: new Float64Array(inputs.length),
    overriding: rules.overriding.map(prepare),
    base: rules.base.map(prepare),
    neutral: Object.fromEntries(rules.neutral),
  };
  ready.set(rules, made);
  return made;
}

/** The quantities that at least one rule of the phase tests, in the order in which the phase shows them. */
export function inputsOf({ overriding, base, box }: PhaseRules): string[] {
  const tested = new Set(
    [...overriding, ...base].flatMap(({ rules }) => rules.flatMap(({ when }) => [...when.keys()])),
  );
  return [...new Set([...box.keys(), ...tested])].filter((id) => tested.has(id));
}

function readyTable(table: Table, inputs: readonly string[]): ReadyTable {
  const places = new Map(inputs.map((id, place) => [id, place]));
  const rules = inOrderOfPrecedence(table).map((rule): ReadyRule => {
    const reason: Reason = {
      table: table.id,
      rule: rule.id,
      control: table.control,
      action: rule.then,
      because: rule.because,
      critical: rule.critical,
    };
    return {
      rule,
      tests: [...rule.when].map(([id, set]) => ({ input: places.get(id)!, set })),
      reason,
      overrides: {
        actions: { [table.control]: rule.then },
        overriding: reason,
        reasons: [reason],
        unanswered: none,
        conflicts: none,
      },
      clashes: null,
    };
  });
  return { table, rules };
}
