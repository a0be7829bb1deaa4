/** What went wrong in an answer to a scenario, and what to drill because of it. */
import type { Assessment } from '../grading/types.ts';
import { controlOf, gateIndexOf, neutralOf, phaseOf } from '../deck/lookup.ts';
import type { Control, Deck } from '../deck/types.ts';
import { rulesOfPhase } from '../rules/decide.ts';
import type { Procedure } from '../rules/types.ts';
import type { DrillResult, MissGroup, MissKind, RunTargets, Scenario } from './types.ts';

type ControlsDetail = Extract<Assessment['detail'], { form: 'controls' }>;
type Called = ControlsDetail['perControl'][string];

/** Gravest first: the order in which kinds are looked for and shown. */
export const missKinds = [
  'missed-go-around',
  'wrong-way',
  'needless-go-around',
  'no-answer',
  'wrong-control',
  'too-little',
  'too-much',
  'late',
] as const satisfies readonly MissKind[];

/**
 * The gravest error of an answer; null when every control was right and in time. An answer on the
 * right control with another action counts by its direction: `too-little` towards neutral, `too-much`
 * beyond what was asked or where nothing was, `wrong-way` on the other side of neutral.
 * `wrong-control` is one control left alone that was asked for, and another worked that was not.
 */
export function missOf(procedure: Procedure, scenario: Scenario, assessment: Assessment): MissKind | null {
  const { detail, timeliness } = assessment;
  if (detail.form !== 'controls') return 'no-answer';
  const found = new Set<MissKind>();
  if (detail.missedOverriding) found.add('missed-go-around');
  if (isNeedless(procedure, scenario, detail)) found.add('needless-go-around');
  // Of an action that beats all others there is no direction: it was missed, or not needed.
  const overriding = new Set(
    rulesOfPhase(procedure, scenario.phase).overriding.map(({ control }) => control),
  );
  const isCallAtOnce = (id: string): boolean =>
    overriding.has(id) && (found.has('missed-go-around') || found.has('needless-go-around'));
  let leftAlone = false;
  let workedUnasked = false;
  for (const [id, called] of Object.entries(detail.perControl)) {
    if (called.verdict !== 'wrong' && called.verdict !== 'opposite') continue;
    if (isCallAtOnce(id)) continue;
    const control = controlOf(procedure.deck, id);
    const kind = directionOf(control, called);
    const neutral = neutralOf(control).id;
    if (kind === 'too-little' && called.chosen === neutral) leftAlone = true;
    if (kind === 'too-much' && called.required === neutral) workedUnasked = true;
    found.add(kind);
  }
  if (leftAlone && workedUnasked) found.add('wrong-control');
  if (timeliness !== 'prompt') found.add('late');
  return missKinds.find((kind) => found.has(kind)) ?? null;
}

/** An action that overrides all others was called where none does. */
function isNeedless(procedure: Procedure, { phase }: Scenario, detail: ControlsDetail): boolean {
  if (detail.decision.overriding) return false;
  return rulesOfPhase(procedure, phase).overriding.some(({ control, rules }) => {
    const called = detail.perControl[control];
    return called?.verdict !== 'right' && rules.some(({ then }) => then === called?.chosen);
  });
}

/** By the order of the control's actions, which run from one end to the other, about neutral. */
function directionOf(control: Control, { required, chosen, verdict }: Called): MissKind {
  if (verdict === 'opposite') return 'wrong-way';
  const place = (action: string | null) => control.actions.findIndex(({ id }) => id === action);
  const middle = place(neutralOf(control).id);
  const asked = place(required) - middle;
  const called = place(chosen) - middle;
  if (asked * called < 0) return 'wrong-way';
  return Math.abs(called) < Math.abs(asked) ? 'too-little' : 'too-much';
}

/** A kind in words, as a heading: "Wrong way". */
export function sayMiss(kind: MissKind): string {
  switch (kind) {
    case 'missed-go-around':
      return 'Missed go-around';
    case 'wrong-way':
      return 'Right control, wrong way';
    case 'needless-go-around':
      return 'Go-around without need';
    case 'no-answer':
      return 'No answer';
    case 'wrong-control':
      return 'Wrong control';
    case 'too-little':
      return 'Left as it was, or not enough';
    case 'too-much':
      return 'Corrected without need, or too far';
    case 'late':
      return 'Too late';
  }
}

/** What was missed, by gate in the procedure's order, and within a gate the gravest kind first. */
export function groupMisses({ deck }: Procedure, results: readonly DrillResult[]): MissGroup[] {
  const groups = new Map<string, { gate: string; kind: MissKind; results: DrillResult[] }>();
  for (const result of results) {
    if (result.miss === null) continue;
    const gate = gateOfItem(deck, result);
    const key = `${gate}/${result.miss}`;
    const group = groups.get(key) ?? { gate, kind: result.miss, results: [] };
    group.results.push(result);
    groups.set(key, group);
  }
  return [...groups.values()].sort(
    (one, other) =>
      gateIndexOf(deck, one.gate) - gateIndexOf(deck, other.gate) ||
      missKinds.indexOf(one.kind) - missKinds.indexOf(other.kind),
  );
}

const gateOfItem = (deck: Deck, { item }: DrillResult): string => phaseOf(deck, item.phase).from;

/**
 * Just what was missed, to be drilled again, each twice: the edge at which a scenario stood, the pair of
 * which it was a half, else its rule.
 */
export function targetsOfMisses(results: readonly DrillResult[]): RunTargets {
  const missed = results.filter(({ miss }) => miss !== null);
  const single = missed.filter(({ item }) => item.kind !== 'twin').map(({ scenario }) => scenario);
  return {
    rules: distinct(single.flatMap(({ phase, table, rule, edge }) => (edge ? [] : [{ phase, table, rule }]))),
    edges: distinct(
      single.flatMap(({ phase, table, rule, edge }) =>
        edge ? [{ phase, table, rule, quantity: edge.quantity, side: edge.side }] : [],
      ),
    ),
    twins: distinct(missed.flatMap(({ item }) => (item.kind === 'twin' ? [item.target] : []))),
    times: 2,
  };
}

const distinct = <T>(items: readonly T[]): T[] => [
  ...new Map(items.map((item) => [JSON.stringify(item), item])).values(),
];
