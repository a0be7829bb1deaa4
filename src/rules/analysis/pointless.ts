import type { Claims } from '../claims.ts';
import { beats } from '../hit-policy.ts';
import { meet, type Block } from '../space.ts';
import type { Rule } from '../types.ts';
import { fewestThatCover } from './covering-rules.ts';
import type { TableReport } from './report.ts';

/**
 * The rules that make a rule pointless, which decides somewhere: taken out, it changes no decision of
 * any phase, neither action nor whether it is critical. Null when it is needed.
 * @param gone rules counted as taken out already.
 */
export function isPointless(report: TableReport, rule: Rule, gone: ReadonlySet<Rule>): Rule[] | null {
  const { table, places } = report;
  // Two that fit are no decision, and none that fits is none: a rule is never spared.
  if (table.authored.hit === 'unique') return null;
  const spared = places.flatMap((claims) => {
    const block = claims.blockOf(rule);
    return block ? [{ claims, block }] : [];
  });
  const stays = (other: Rule) => other !== rule && !gone.has(other);
  const isSpared = ({ claims, block }: (typeof spared)[number]) =>
    table.authored.hit === 'first'
      ? isSparedInOrder(report, claims, rule, block, stays)
      : isSparedByPeers(report, claims, rule, block, stays);
  if (!spared.every(isSpared)) return null;
  const named = spared.flatMap(({ claims, block }) =>
    fewestThatCover(
      report,
      claims,
      block,
      (other) => stays(other) && (beats(table, other, rule) || hasSameEffect(other, rule)),
    ),
  );
  return [...new Set(named)].filter((other) => hasSameEffect(other, rule));
}

const hasSameEffect = (one: Rule, other: Rule): boolean =>
  one.then === other.then && one.critical === other.critical;

/** Under “any” and “priority”: peers with the same action take its place, if they are as critical. */
function isSparedByPeers(
  { table, budget }: TableReport,
  claims: Claims,
  rule: Rule,
  block: Block,
  stays: (other: Rule) => boolean,
): boolean {
  const covers = claims.blocksWhere(
    (other) =>
      stays(other) &&
      (beats(table, other, rule) || (other.then === rule.then && (other.critical || !rule.critical))),
  );
  return isCovered(claims, block, [...claims.overridden, ...covers], budget);
}

/** Under “first”: whatever it decides falls to a later rule, which must have the same effect. */
function isSparedInOrder(
  { table, budget }: TableReport,
  claims: Claims,
  rule: Rule,
  block: Block,
  stays: (other: Rule) => boolean,
): boolean {
  const covers = [
    ...claims.overridden,
    ...claims.blocksWhere((other) => stays(other) && beats(table, other, rule)),
  ];
  const later = claims.claims.filter((claim) => stays(claim.rule) && beats(table, rule, claim.rule));
  const alike = later.filter((claim) => hasSameEffect(claim.rule, rule)).map((claim) => claim.block);
  if (!isCovered(claims, block, [...covers, ...alike], budget)) return false;
  return later.every((heir) => {
    if (hasSameEffect(heir.rule, rule)) {
      covers.push(heir.block);
      return true;
    }
    const both = meet(claims.space, block, heir.block);
    return both === null || isCovered(claims, both, covers, budget);
  });
}

function isCovered(
  claims: Claims,
  block: Block,
  covers: readonly Block[],
  budget: TableReport['budget'],
): boolean {
  const { blocks, stopped } = claims.left(block, covers, 1, budget);
  return blocks.length === 0 && stopped !== 'budget';
}
