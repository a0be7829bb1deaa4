/** What the decision tables leave open or say twice, found exactly, over all states of each phase. */
import type { Finding } from '../deck/findings.ts';
import { sayList } from '../deck/say.ts';
import { conflicts } from './analysis/conflicts.ts';
import { gaps } from './analysis/gaps.ts';
import { idleRules } from './analysis/idle-rules.ts';
import { finding, type Part, type TableReport } from './analysis/report.ts';
import { workedFindings } from './analysis/worked.ts';
import { Claims } from './claims.ts';
import type { Budget } from './cover.ts';
import type { Procedure, Table } from './types.ts';

export interface AnalysisOptions {
  /** Findings of one kind, table and phase before the rest is left out, and that said. */
  readonly limit?: number;
  /** Work for one table, in words of 32 atoms looked at; about two seconds' worth unless told. */
  readonly work?: number;
}

const usualLimit = 10;
const usualWork = 60_000_000;

/** Each looks for one kind of fault, the quickest first; a new kind of finding is one more entry. */
const parts: readonly ((report: TableReport) => Part)[] = [conflicts, gaps, idleRules];

/**
 * Analyses every table in every phase it decides, over the whole box of states that can occur there.
 * What an overriding table takes is no gap and no conflict. Findings have the path of the table or the
 * rule, gaps and conflicts a state that shows the fault, on the quantities' steps where such a state
 * exists. A table too tangled for the work allowed gets an `analysis-incomplete` besides what was found.
 * Behind the tables comes what is said of worked values.
 */
export function analyse(procedure: Procedure, options: AnalysisOptions = {}): readonly Finding[] {
  return [...tableFindings(procedure, options), ...workedFindings(procedure.deck)];
}

function tableFindings(procedure: Procedure, options: AnalysisOptions): readonly Finding[] {
  return (procedure.deck.tables ?? []).flatMap(({ id }, index) => {
    const budget: Budget = { left: options.work ?? usualWork };
    const places = [...procedure.phases.values()].flatMap((rules) => {
      const table = [...rules.overriding, ...rules.base].find((one) => one.id === id);
      return table ? [new Claims(rules, table, budget)] : [];
    });
    const table = places[0]?.table;
    if (!table) return [];
    const path = ['tables', index];
    return analyseTable({ procedure, table, path, places, limit: options.limit ?? usualLimit, budget });
  });
}

function analyseTable(report: TableReport): Finding[] {
  const results = parts.map((part) => part(report));
  // What is said of the table first, then rule by rule.
  const place = ({ path }: Finding) => Number(path[3] ?? -1);
  const findings = results.flatMap((part) => part.findings).sort((a, b) => place(a) - place(b));
  return [...findings, ...whatIsLeftOut(report, results)];
}

function whatIsLeftOut(
  { table, path, limit, budget, places }: TableReport,
  results: readonly Part[],
): Finding[] {
  const label = labelOf(table);
  const more = [...new Set(results.flatMap((part) => part.more))];
  const findings: Finding[] = [];
  if (more.length > 0) {
    const message = `${label} has more ${sayList(more)} than the first ${limit} shown: mend these and check again.`;
    findings.push(finding('analysis-incomplete', 'note', path, message));
  }
  if (budget.left < 0 || places.some(({ incomplete }) => incomplete)) {
    const message = `${label} is too tangled to be proved: what is said of it is true, but there may be more. Split it into tables with fewer inputs, or make its rules overlap less.`;
    findings.push(finding('analysis-incomplete', 'warning', path, message));
  }
  return findings;
}

const labelOf = ({ authored }: Table): string => `“${authored.label}”`;
