/** A correction called in answer to a state, control by control, against what the rules decide there. */
import { instructionOf } from '../cards/wording.ts';
import { inSentence } from '../cards/wording.ts';
import type { Answer, Ask, ControlRow } from '../cards/types.ts';
import { actionOf, areOpposite, controlOf, sourceOf, tableOf } from '../deck/lookup.ts';
import { sayList } from '../deck/say.ts';
import { decide } from '../rules/decide.ts';
import { edgesOf } from '../rules/edges.ts';
import type { Decision, Performance, Procedure } from '../rules/types.ts';
import { unreadable, type AskOf, type FormResult } from './form-grade.ts';
import type { AnswerDetail } from './types.ts';

type ControlsAsk = AskOf<'controls', Ask>;
type ControlsDetail = AskOf<'controls', AnswerDetail>;
type PerControl = ControlsDetail['perControl'];

/**
 * Desired when every control asked for is right. Adequate when the leading one is right and none is
 * opposite. Outside otherwise, and whenever the overriding action or what a critical rule asks for is
 * missed (a critical fault), or the overriding one is called without need. Where it is required no other control is asked. A control not touched is
 * answered by its neutral action.
 */
export function gradeControls(
  procedure: Procedure,
  ask: ControlsAsk,
  answer: AskOf<'controls', Answer>,
): FormResult {
  const chosen = choicesOf(ask.rows, answer.chosen);
  if (!chosen)
    return unreadable(
      'unknown-choice',
      'A control or an action that is not among those shown was chosen. Choose again.',
    );
  const decision = decide(procedure, ask.phase, ask.state);
  const needless = decision.overriding ? null : needlessCall(procedure, ask, decision, chosen);
  const perControl = judge(procedure, ask.rows, decision, chosen, needless);
  const leading = leadingOf(ask.rows, decision);
  const { overriding } = decision;
  const missedOverriding = overriding !== null && chosen.get(overriding.control) !== overriding.action;
  const missedCritical = decision.reasons.some(
    ({ control, critical }) => critical && isFault(perControl, control),
  );
  const performance = performanceOf(
    perControl,
    leading,
    missedOverriding || missedCritical,
    needless !== null,
  );
  const faulty = [leading, ...Object.keys(perControl)].find((control) => isFault(perControl, control));
  const ground = faulty === undefined ? null : groundOf(procedure, decision, faulty);
  return {
    ok: true,
    performance,
    headline: headlineOf(procedure, decision, perControl, leading, missedOverriding, needless),
    detail: {
      form: 'controls',
      decision,
      edges: edgesOf(procedure, ask.phase, ask.state),
      leading,
      perControl,
      missedOverriding,
    },
    criticalFault: missedOverriding || missedCritical,
    expected: sayDecision(procedure, ask.rows, decision),
    ...(ground ? { ground } : {}),
  };
}

/** The required actions in words, in the order of the rows: "nose up, hold power". */
export function sayDecision(procedure: Procedure, rows: readonly ControlRow[], decision: Decision): string {
  const decided = new Set(decision.reasons.map((reason) => reason.control));
  const said = rows.flatMap((row) => {
    const required = requiredOf(decision, row.id);
    const worthSaying = required !== null && (required !== row.neutral || decided.has(row.id));
    return worthSaying ? [instruction(procedure, row.id, required)] : [];
  });
  return said.length > 0 ? said.join(', ') : 'leave everything as it is';
}

/** Control -> chosen action, untouched ones by their neutral; null when something isn't among the rows. */
function choicesOf(
  rows: readonly ControlRow[],
  chosen: Readonly<Record<string, string>>,
): ReadonlyMap<string, string> | null {
  const choices = new Map(rows.map((row) => [row.id, row.neutral]));
  for (const [control, action] of Object.entries(chosen)) {
    const row = rows.find(({ id }) => id === control);
    if (!row?.actions.some(({ id }) => id === action)) return null;
    choices.set(control, action);
  }
  return choices;
}

const requiredOf = (decision: Decision, control: string): string | null =>
  Object.hasOwn(decision.actions, control) ? decision.actions[control]! : null;

/** The control on which an action was called that beats all others, where no table calls for it. */
function needlessCall(
  procedure: Procedure,
  ask: ControlsAsk,
  decision: Decision,
  chosen: ReadonlyMap<string, string>,
): string | null {
  const tables = procedure.phases.get(ask.phase)?.overriding ?? [];
  const called = tables.find(
    ({ control, rules }) =>
      chosen.get(control) !== requiredOf(decision, control) &&
      rules.some((rule) => rule.then === chosen.get(control)),
  );
  return called?.control ?? null;
}

function judge(
  { deck }: Procedure,
  rows: readonly ControlRow[],
  decision: Decision,
  chosen: ReadonlyMap<string, string>,
  needless: string | null,
): PerControl {
  return Object.fromEntries(
    rows.map(({ id, neutral }) => {
      const action = chosen.get(id)!;
      // A needless go-around is wrong even where no table speaks for its control.
      const required = requiredOf(decision, id) ?? (id === needless ? neutral : null);
      const verdict =
        required === null
          ? ('not-asked' as const)
          : action === required
            ? ('right' as const)
            : areOpposite(controlOf(deck, id), required, action)
              ? ('opposite' as const)
              : ('wrong' as const);
      return [id, { required, chosen: action, verdict }];
    }),
  );
}

/**
 * The control whose answer counts most: that of the overriding action, else the first, in the phase's
 * order, that asks for more than neutral; where none does, the first that is asked at all.
 */
function leadingOf(rows: readonly ControlRow[], decision: Decision): string {
  if (decision.overriding) return decision.overriding.control;
  const asked = rows.filter((row) => requiredOf(decision, row.id) !== null);
  const active = asked.find((row) => requiredOf(decision, row.id) !== row.neutral);
  return (active ?? asked[0] ?? rows[0])?.id ?? '';
}

function isFault(perControl: PerControl, control: string): boolean {
  const verdict = perControl[control]?.verdict;
  return verdict === 'wrong' || verdict === 'opposite';
}

function performanceOf(
  perControl: PerControl,
  leading: string,
  missedCritical: boolean,
  needless: boolean,
): Performance {
  if (missedCritical || needless) return 'outside';
  const verdicts = Object.values(perControl).map(({ verdict }) => verdict);
  if (verdicts.every((verdict) => verdict === 'right' || verdict === 'not-asked')) return 'desired';
  const followed = perControl[leading]?.verdict === 'right' && !verdicts.includes('opposite');
  return followed ? 'adequate' : 'outside';
}

/** Why this control should have been otherwise: the rule that decided it, or the one that decided the rest. */
function groundOf({ deck }: Procedure, decision: Decision, control: string) {
  const reason = decision.reasons.find((candidate) => candidate.control === control) ?? decision.overriding;
  return reason
    ? { because: reason.because, source: sourceOf(deck, tableOf(deck, reason.table).source) }
    : null;
}

function instruction({ deck }: Procedure, control: string, action: string): string {
  return instructionOf(actionOf(controlOf(deck, control), action));
}

function headlineOf(
  procedure: Procedure,
  { overriding }: Decision,
  perControl: PerControl,
  leading: string,
  missedOverriding: boolean,
  needless: string | null,
): string {
  const name = (control: string) => inSentence(controlOf(procedure.deck, control).label);
  const say = (control: string, action: string) => instruction(procedure, control, action);
  const withVerdict = (verdict: string) =>
    Object.keys(perControl).filter((control) => perControl[control]!.verdict === verdict);
  if (overriding)
    return `${missedOverriding ? 'missed' : 'right'}: ${say(overriding.control, overriding.action)}`;
  if (needless !== null) return `${say(needless, perControl[needless]!.chosen)}: not needed here`;
  const opposite = withVerdict('opposite');
  const wrong = withVerdict('wrong');
  if (opposite.length > 0) {
    const more = wrong.length > 0 ? `, missed on ${sayList(wrong.map(name))}` : '';
    return `wrong way on ${sayList(opposite.map(name))}${more}`;
  }
  if (wrong.length === 0) return withVerdict('right').length > 1 ? 'every control right' : 'right';
  const { required, verdict } = perControl[leading]!;
  if (verdict === 'wrong' && wrong.length > 1) {
    const others = wrong.filter((control) => control !== leading);
    return `missed on ${sayList([leading, ...others].map(name))}`;
  }
  if (verdict === 'wrong') return `missed on ${name(leading)}: ${say(leading, required!)}`;
  return `right on ${name(leading)}, not on ${sayList(wrong.map(name))}`;
}
