/** Which rules it is that take a rule's states, for messages. */
import { sayList } from '../../deck/say.ts';
import type { Claims } from '../claims.ts';
import { doMeet, type Block } from '../space.ts';
import type { Rule } from '../types.ts';
import type { TableReport } from './report.ts';

/** Beyond this many a list of rules explains nothing. */
const mostTried = 40;

/** Rules picked by `test` that cover a block together, without those that can be spared. */
export function fewestThatCover(
  { budget }: TableReport,
  claims: Claims,
  block: Block,
  test: (rule: Rule) => boolean,
): Rule[] {
  const { space } = claims;
  let kept = claims.claims.filter((claim) => test(claim.rule) && doMeet(space, block, claim.block));
  if (kept.length > mostTried) return kept.map(({ rule }) => rule);
  for (const candidate of [...kept].reverse()) {
    const rest = kept.filter((claim) => claim !== candidate);
    const covers = [...claims.overridden, ...rest.map((claim) => claim.block)];
    const { blocks, stopped } = claims.left(block, covers, 1, budget);
    if (blocks.length === 0 && stopped === null) kept = rest;
  }
  return kept.map(({ rule }) => rule);
}

const mostNamed = 3;

/** "“a”", "“a” and “b”", "“a”, “b” and 4 other rules". */
export function sayNames(rules: readonly Rule[]): string {
  if (rules.length === 0) return 'the overriding tables';
  const names = rules.slice(0, mostNamed).map(({ id }) => `“${id}”`);
  const others = rules.length - names.length;
  return sayList(others === 0 ? names : [...names, `${others} other rule${others === 1 ? '' : 's'}`]);
}
