import type { Finding } from '../../deck/findings.ts';
import { boxOf } from '../space.ts';
import { largePieces } from './pieces.ts';
import { finding, sayState, sayWhere, stateIn, type Part, type TableReport } from './report.ts';

/**
 * States of a phase in which no rule of the table fits and no overriding table decides, as disjoint
 * boxes. An overriding table need not be complete.
 */
export function gaps(report: TableReport): Part {
  const { table, places, limit, budget, path } = report;
  if (table.authored.overriding) return { findings: [], more: [] };
  const findings: Finding[] = [];
  const more: string[] = [];
  for (const claims of places) {
    const covers = [...claims.overridden, ...claims.blocksWhere(() => true)];
    const { blocks, stopped } = largePieces(claims.space, claims.whole(), covers, limit, budget);
    for (const block of blocks) {
      const example = stateIn(report, claims, block);
      const where = sayWhere(report, claims, boxOf(claims.space, block));
      const at = sayState(report, claims, example);
      const message = `Every state needs an answer, but no rule of “${table.authored.label}” fits ${where}${at && `, for example ${at}`}: add a rule there, or widen one.`;
      findings.push(finding('gap', 'error', path, message, example));
    }
    if (stopped === 'limit') more.push('gaps');
  }
  return { findings, more };
}
