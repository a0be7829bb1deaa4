/** What a pass was like: its gates, its decisions, and the rules and gates that were missed. */
import { areOpposite, controlOf, gateOf, neutralOf, phaseOf, quantityOf } from '../deck/lookup.ts';
import { sayList } from '../deck/say.ts';
import { saySigned } from '../rules/say-signed.ts';
import type { Performance } from '../rules/types.ts';
import { worst } from './crossing.ts';
import type {
  DecisionMark,
  DecisionPoint,
  Pass,
  PassAssessment,
  PassEnd,
  RuleTally,
  Verdict,
} from './types.ts';

/** Grades what has been flown so far; points that are still open or were passed by are left out. */
export function assessPass(pass: Pass): PassAssessment {
  const { crossings, limitsPassed, ended } = pass;
  const decisions = pass.decisions
    .filter(({ chosen, passedBy }) => chosen !== null && !passedBy)
    .map((point) => markOf(pass, point));
  const gatesMissed = crossings
    .filter(({ performance }) => performance === 'outside')
    .map(({ gate, values }) => ({
      gate,
      quantities: values
        .filter(({ grade }) => grade.performance === 'outside')
        .map(({ quantity }) => quantity),
    }));
  const performance = performanceOf(pass, decisions);
  return {
    crossings,
    decisions,
    rules: talliesOf(decisions),
    gatesMissed,
    limitsPassed,
    ended,
    performance,
    headline: headlineOf(pass, decisions),
  };
}

function markOf({ procedure }: Pass, point: DecisionPoint): DecisionMark {
  const { deck, phases } = procedure;
  const { decision, chosen } = point;
  const rules = phases.get(point.phase)!;
  const { overriding } = decision;
  const required: Readonly<Record<string, string>> = overriding
    ? { [overriding.control]: overriding.action }
    : { ...Object.fromEntries(needlessCalls(point, rules.overriding, deck)), ...decision.actions };
  const faults = Object.entries(required).flatMap(([id, action]): DecisionMark['faults'][number][] => {
    const control = controlOf(deck, id);
    const done = chosen?.[id] ?? neutralOf(control).id;
    if (done === action) return [];
    const reason = decision.reasons.find((one) => one.control === id);
    return [
      {
        control: id,
        required: action,
        chosen: done,
        opposite: areOpposite(control, action, done),
        rule: reason ? { table: reason.table, rule: reason.rule } : null,
      },
    ];
  });
  return { point, faults, verdict: verdictOf(point, faults, beats(rules.overriding)) };
}

type Overriding = NonNullable<ReturnType<Pass['procedure']['phases']['get']>>['overriding'];

/** The actions that some rule of an overriding table calls for: `control/action`. */
const beats = (tables: Overriding): ReadonlySet<string> =>
  new Set(tables.flatMap(({ control, rules }) => rules.map(({ then }) => `${control}/${then}`)));

/** Controls on which such an action was called although no rule asks for it: neutral is what was right. */
function needlessCalls(
  { chosen }: DecisionPoint,
  tables: Overriding,
  deck: Pass['procedure']['deck'],
): [string, string][] {
  return tables
    .filter(({ control }) => beats(tables).has(`${control}/${chosen?.[control] ?? ''}`))
    .map(({ control }) => [control, neutralOf(controlOf(deck, control)).id]);
}

function verdictOf(
  { decision }: DecisionPoint,
  faults: DecisionMark['faults'],
  beating: ReadonlySet<string>,
): Verdict {
  if (faults.length === 0) return 'right';
  if (decision.overriding) return 'missed-go-around';
  if (faults.some(({ control, chosen }) => beating.has(`${control}/${chosen}`))) return 'needless-go-around';
  const isCritical = ({ control }: DecisionMark['faults'][number]): boolean =>
    decision.reasons.some((reason) => reason.control === control && reason.critical);
  return faults.some((fault) => fault.opposite || isCritical(fault)) ? 'wrong' : 'partly';
}

function talliesOf(decisions: readonly DecisionMark[]): RuleTally[] {
  const tallies = new Map<string, { table: string; rule: string; asked: number; missed: number }>();
  for (const { point, faults } of decisions)
    for (const { table, rule, control } of point.decision.reasons) {
      const tally = tallies.get(`${table}/${rule}`) ?? { table, rule, asked: 0, missed: 0 };
      tally.asked++;
      if (faults.some((fault) => fault.control === control)) tally.missed++;
      tallies.set(`${table}/${rule}`, tally);
    }
  return [...tallies.values()];
}

const isRightEnd = (ended: PassEnd | null): boolean =>
  ended === null || ended.kind === 'complete' || (ended.kind === 'go-around' && ended.demanded);

function performanceOf({ crossings, ended }: Pass, decisions: readonly DecisionMark[]): Performance {
  if (!isRightEnd(ended)) return 'outside';
  if (decisions.some(({ verdict }) => verdict === 'missed-go-around')) return 'outside';
  return worst(crossings.flatMap(({ performance }) => performance ?? [])) ?? 'desired';
}

function headlineOf(pass: Pass, decisions: readonly DecisionMark[]): string {
  const { crossings, ended } = pass;
  const count = (performance: Performance): number =>
    crossings.filter((crossing) => crossing.performance === performance).length;
  const gates = (['outside', 'adequate', 'desired'] as const)
    .filter((performance) => count(performance) > 0)
    .map(
      (performance, i) =>
        `${count(performance)}${i === 0 ? sayGates(count(performance)) : ''} ${performance}`,
    );
  const missed = decisions.find(({ verdict }) => verdict === 'missed-go-around');
  const how = `${sayEnd(pass, ended, missed?.point)}${missed && ended?.kind === 'go-around' ? ', called late' : ''}`;
  return gates.length === 0 ? `${how}.` : `${how}: ${sayList(gates)}.`;
}

const sayGates = (count: number): string => (count === 1 ? ' gate' : ' gates');

/** @param due where a go-around was first demanded and not called. */
function sayEnd(pass: Pass, ended: PassEnd | null, due: DecisionPoint | undefined): string {
  const {
    procedure: { deck },
    crossings,
  } = pass;
  const last = crossings.at(-1);
  const after = last ? ` after “${gateOf(deck, last.gate).label}”` : '';
  switch (ended?.kind) {
    case undefined:
      return 'Under way';
    case 'complete':
      return 'Flown to the end';
    case 'go-around':
      return ended.demanded ? `Went around${after}, as the rules demand` : `Went around${after} without need`;
    case 'missed-go-around':
      return `A go-around was due${due ? ` in “${phaseOf(deck, due.phase).label}”` : after} and not called`;
    case 'out-of-bounds':
      return `Lost${after}: ${sayStrayed(pass, ended.quantity)}`;
    case 'stuck':
      return `No end in sight${after}`;
  }
}

/** "sink passed 1,000 ft/min, the most that “Final turn” covers". */
function sayStrayed({ procedure: { deck }, phase: id, samples }: Pass, quantityId: string): string {
  const phase = phaseOf(deck, id);
  const quantity = quantityOf(deck, quantityId);
  const [least, most] = phase.state[quantityId]!;
  const isOver = (samples.at(-1)!.state[quantityId] ?? least) > most;
  const limit = saySigned(isOver ? most : least, quantity);
  const name = quantity.spoken ?? quantity.label.toLowerCase();
  return `${name} passed ${limit}, the ${isOver ? 'most' : 'least'} that “${phase.label}” covers`;
}
