/** Findings as text for people at a terminal: place, where, message, and the line with a caret under it. */
import type { Finding } from './findings.ts';

const mostColumns = 100;

/**
 * One block a finding, parted by empty lines: `file:line:column severity code`, where and message, the
 * line of the text and a caret. No findings give the empty text.
 * @param text the file's content, from which the lines are taken
 */
export function renderFindings(findings: readonly Finding[], text: string, fileName: string): string {
  const lines = text.split(/\r\n|\n|\r(?!\n)/);
  return findings.map((finding) => renderFinding(finding, lines, fileName)).join('\n\n');
}

function renderFinding(finding: Finding, lines: readonly string[], fileName: string): string {
  const { at, severity, code, where, message, counterexample } = finding;
  const place = at ? `${fileName}:${at.line}:${at.column}` : fileName;
  const rows = [`${place} ${severity} ${code}`, `  ${where ? `${where}: ` : ''}${message}`];
  if (counterexample)
    rows.push(
      `  For example: ${Object.entries(counterexample)
        .map(([id, value]) => `${id} ${value}`)
        .join(', ')}.`,
    );
  const line = at && lines[at.line - 1];
  if (at && line !== undefined) rows.push(...underlined(line, at.line, at.column));
  return rows.join('\n');
}

function underlined(line: string, lineNumber: number, column: number): string[] {
  // The end of a long line would hide the caret: show the stretch around it.
  const start = column > mostColumns ? column - mostColumns / 2 : 0;
  const shown = line.slice(start, start + mostColumns).replace(/\p{Cc}/gu, ' ');
  const [head, tail] = [start > 0 ? '…' : '', line.length > start + mostColumns ? '…' : ''];
  const gutter = String(lineNumber);
  return [
    `  ${gutter} | ${head}${shown}${tail}`,
    `  ${' '.repeat(gutter.length)} | ${' '.repeat(head.length + Math.max(0, column - 1 - start))}^`,
  ];
}
