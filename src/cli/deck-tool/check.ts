import { cardsOf } from '../../cards/registry.ts';
import type { Finding, Severity } from '../../deck/findings.ts';
import { renderFindings } from '../../deck/render-findings.ts';
import { sayList } from '../../deck/say.ts';
import { judge } from '../../motion/judge.ts';
import { inOrder, placed } from '../../rules/read.ts';
import type { Procedure } from '../../rules/types.ts';
import type { ExitCode, Io } from './io.ts';
import { openDeck } from './open-deck.ts';

/** `check`: every fault of every deck, and what each holds when it has none. */
export async function check(paths: readonly string[], json: boolean, io: Io): Promise<ExitCode> {
  let exitCode: ExitCode = 0;
  for (const path of paths) {
    const opened = await openDeck(path, io);
    if (opened === null) {
      exitCode = 1;
      continue;
    }
    const { procedure, text, loaded } = opened;
    const analysed = procedure === null ? [] : placed(loaded, judge(procedure));
    const findings = inOrder([...opened.findings, ...analysed]);
    if (findings.some(({ severity }) => severity === 'error')) exitCode = 1;
    if (json) for (const finding of findings) io.out(asJson(path, finding));
    else {
      if (findings.length > 0) io.out(`${renderFindings(findings, text, path)}\n`);
      io.out(`${path}: ${summary(findings, procedure)}`);
    }
  }
  return exitCode;
}

/** The form is a promise to other programs: one finding, with its place. */
function asJson(file: string, { code, severity, message, path, where, at, counterexample }: Finding): string {
  const { line, column } = at ?? {};
  return JSON.stringify({ file, line, column, severity, code, message, path, where, counterexample });
}

function summary(findings: readonly Finding[], procedure: Procedure | null): string {
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const [errors, warnings, notes] = [count('error'), count('warning'), count('note')];
  const faults = [
    errors > 0 ? many(errors, 'error') : 'no errors',
    ...(warnings > 0 ? [many(warnings, 'warning')] : []),
    ...(notes > 0 ? [many(notes, 'note')] : []),
  ];
  return `${sayList(faults)}${procedure === null ? '' : `; ${contents(procedure)}`}.`;
}

function contents(procedure: Procedure): string {
  const { gates, checklists = [], tables = [] } = procedure.deck;
  const rules = tables.reduce((sum, table) => sum + table.rules.length, 0);
  return sayList([
    many(gates.length, 'gate'),
    many(checklists.length, 'checklist'),
    `${many(rules, 'rule')} in ${many(tables.length, 'table')}`,
    many(cardsOf(procedure).length, 'card'),
  ]);
}

const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
