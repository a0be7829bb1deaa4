import type { Finding } from '../../deck/findings.ts';
import { actionOf, controlOf } from '../../deck/lookup.ts';
import type { Claims } from '../claims.ts';
import { beats, clash } from '../hit-policy.ts';
import { boxOf, meet, type Block } from '../space.ts';
import type { Rule } from '../types.ts';
import { largePieces } from './pieces.ts';
import { finding, sayState, sayWhere, stateIn, type Part, type TableReport } from './report.ts';

/**
 * Pairs of rules that the hit policy does not let fit the same state, but that do where nothing
 * overrides them: each pair once, with a box and a state that show it.
 */
export function conflicts(report: TableReport): Part {
  const found: { later: Rule; finding: Finding }[] = [];
  const shown = new Set<string>();
  let more = false;
  for (const claims of report.places) {
    for (const [one, other] of clashingPairs(claims)) {
      const name = `${one.index}/${other.index}`;
      if (shown.has(name)) continue;
      const block = conflictOf(report, claims, one, other);
      if (!block) continue;
      if (shown.size >= report.limit) {
        more = true;
        break;
      }
      shown.add(name);
      found.push({ later: other, finding: describe(report, claims, one, other, block) });
    }
  }
  found.sort((a, b) => a.later.index - b.later.index);
  return { findings: found.map((entry) => entry.finding), more: more ? ['conflicts'] : [] };
}

/** In the table's order, whichever of the two has precedence. */
function* clashingPairs({ table, claims }: Claims): Generator<[Rule, Rule]> {
  const rules = claims.map(({ rule }) => rule).sort((a, b) => a.index - b.index);
  for (const [i, one] of rules.entries())
    for (const other of rules.slice(i + 1)) if (clash(table, one, other)) yield [one, other];
}

/** A part of what both fit, less what others take from both of them. */
function conflictOf({ budget }: TableReport, claims: Claims, one: Rule, other: Rule): Block | null {
  const { table, space } = claims;
  const both = meet(space, claims.blockOf(one)!, claims.blockOf(other)!);
  if (!both) return null;
  const better = claims.blocksWhere((rule) => beats(table, rule, one) && beats(table, rule, other));
  return largePieces(space, both, [...claims.overridden, ...better], 1, budget).blocks[0] ?? null;
}

function describe(report: TableReport, claims: Claims, one: Rule, other: Rule, block: Block): Finding {
  const { procedure, table, path } = report;
  const control = controlOf(procedure.deck, table.control);
  const example = stateIn(report, claims, block);
  const label = (rule: Rule) => actionOf(control, rule.then).label;
  const broken =
    table.authored.hit === 'unique'
      ? 'Under “unique” rules must not overlap'
      : `Under “${table.authored.hit}” rules that overlap must ask for the same action`;
  const asked = one.then === other.then ? '' : ` and ask for “${label(one)}” and “${label(other)}”`;
  const where = sayWhere(report, claims, boxOf(claims.space, block));
  const at = sayState(report, claims, example);
  const message = `${broken}, but “${one.id}” and “${other.id}” both fit ${where}${at && `, for example ${at}`}${asked && `${at && ','}${asked}`}: narrow one of them, or take another hit policy.`;
  return finding('conflict', 'error', [...path, 'rules', other.index], message, example);
}
