/** Rules that never decide anything, or whose loss would change nothing. */
import type { Finding } from '../../deck/findings.ts';
import { sayList } from '../../deck/say.ts';
import type { Claims } from '../claims.ts';
import type { RuleCode } from '../codes.ts';
import { beats } from '../hit-policy.ts';
import { onSteps } from '../on-steps.ts';
import { meet, type Block } from '../space.ts';
import type { Rule } from '../types.ts';
import { fewestThatCover, sayNames } from './covering-rules.ts';
import { isPointless } from './pointless.ts';
import { finding, type Part, type TableReport } from './report.ts';

/** What becomes of a rule in one phase. */
type Fate = 'fits nowhere' | 'masked' | 'overridden' | 'fires';

export function idleRules(report: TableReport): Part {
  const findings: Finding[] = [];
  const pointless = new Set<Rule>();
  // From the last to the first, so that of two that make each other pointless the first stays.
  for (const rule of report.table.rules.toReversed()) {
    const found = idleness(report, rule) ?? pointlessness(report, rule, pointless) ?? unaskable(report, rule);
    if (!found) continue;
    if (found.code === 'pointless-rule') pointless.add(rule);
    const path = [...report.path, 'rules', rule.index];
    findings.unshift(finding(found.code, 'warning', path, found.message));
  }
  return { findings, more: [] };
}

interface Fault {
  readonly code: RuleCode;
  readonly message: string;
}

function pointlessness(report: TableReport, rule: Rule, gone: ReadonlySet<Rule>): Fault | null {
  const others = isPointless(report, rule, gone);
  if (!others) return null;
  const ask = others.length === 1 ? 'asks' : 'ask';
  return {
    code: 'pointless-rule',
    message: `Every rule should change some decision, but without “${rule.id}” all would be the same, for ${sayNames(others)} ${ask} for the same action wherever it decides: take it out, or change its conditions or its action.`,
  };
}

function unaskable({ procedure, places, budget }: TableReport, rule: Rule): Fault | null {
  let decides = false;
  for (const claims of places) {
    const block = claims.blockOf(rule);
    const rivals = claims.rivalsOf(rule);
    if (!block || claims.left(block, rivals, 1, budget).blocks.length === 0) continue;
    decides = true;
    const askable = meet(claims.space, block, onSteps(procedure.deck, claims.space));
    if (!askable) continue;
    const { blocks, stopped } = claims.left(askable, rivals, 1, budget);
    if (blocks.length > 0 || stopped === 'budget') return null;
  }
  if (!decides) return null;
  return {
    code: 'between-steps',
    message: `Every rule should decide some state that can be asked, but “${rule.id}” decides only values between two steps of its quantities: widen its conditions, or make the step finer.`,
  };
}

function idleness(report: TableReport, rule: Rule): Fault | null {
  const { places, table } = report;
  const fates = places.map((claims) => fateOf(report, claims, rule));
  if (fates.includes('fires')) return null;
  if (fates.includes('overridden'))
    return {
      code: 'always-overridden',
      message: `Every rule should decide somewhere, but wherever “${rule.id}” fits, an overriding table decides: take it out, or narrow what overrides it.`,
    };
  const masked = places[fates.indexOf('masked')];
  if (!masked) {
    const phases = sayList(
      places.map(({ rules }) => `“${rules.phase.label}”`),
      'or',
    );
    return {
      code: 'never-fires',
      message: `Every rule should fit some state, but “${rule.id}” fits none that can occur in ${phases}: mend its conditions, or take it out.`,
    };
  }
  const maskers = fewestThatCover(report, masked, masked.blockOf(rule)!, (other) =>
    beats(table, other, rule),
  );
  const why = table.authored.hit === 'priority' ? 'of a higher priority' : 'before it';
  return {
    code: 'never-fires',
    message: `Every rule should decide somewhere, but ${sayNames(maskers)} ${why} take${maskers.length === 1 ? 's' : ''} every state that “${rule.id}” fits: move it up, narrow the others, or take it out.`,
  };
}

function fateOf({ table, budget }: TableReport, claims: Claims, rule: Rule): Fate {
  const block = claims.blockOf(rule);
  if (!block) return 'fits nowhere';
  const better = claims.blocksWhere((other) => beats(table, other, rule));
  const isLeft = (others: readonly Block[]) => {
    const { blocks, stopped } = claims.left(block, others, 1, budget);
    // What can't be told counts as left: nothing is said of the rule, but that the analysis stopped.
    return blocks.length > 0 || stopped === 'budget';
  };
  if (isLeft([...better, ...claims.overridden])) return 'fires';
  return isLeft(better) ? 'overridden' : 'masked';
}
