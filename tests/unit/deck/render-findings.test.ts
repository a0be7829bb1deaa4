import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/deck/findings.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { renderFindings } from '../../../src/deck/render-findings.ts';
import { edited } from './edited.ts';

const finding: Finding = {
  code: 'not-positive',
  severity: 'error',
  message: 'A radius must be more than 0, found 0; write a positive number.',
  path: ['plates', 0],
  where: 'plate “The raft”',
  at: { line: 2, column: 5 },
};

describe('a finding for a terminal', () => {
  it('shows file, line, column, severity, code, where, message, the line and a caret', () => {
    expect(renderFindings([finding], 'one\nat: 0\nthree\n', 'x.deck.yaml')).toBe(
      [
        'x.deck.yaml:2:5 error not-positive',
        '  plate “The raft”: A radius must be more than 0, found 0; write a positive number.',
        '  2 | at: 0',
        '    |     ^',
      ].join('\n'),
    );
  });

  it('parts several by empty lines, and is empty for none', () => {
    const text = 'one\nat: 0\n';
    expect(renderFindings([finding, finding], text, 'x').split('\n\n')).toHaveLength(2);
    expect(renderFindings([], text, 'x')).toBe('');
  });

  it('shows a state that proves it', () => {
    const said = renderFindings([{ ...finding, counterexample: { altitude: 140, sink: 20 } }], '', 'x');
    expect(said).toContain('For example: altitude 140, sink 20.');
  });

  it('does without place and words when it has none', () => {
    const { at: _at, where: _where, ...bare } = finding;
    expect(renderFindings([bare], 'one\n', 'x')).toBe(`x error not-positive\n  ${finding.message}`);
  });

  it('does without the line when the place lies outside of the text', () => {
    expect(renderFindings([finding], 'one', 'x').split('\n')).toHaveLength(2);
  });

  it('puts the caret under the place in a line of Windows, with tabs, and at its end', () => {
    const said = renderFindings(
      [{ ...finding, at: { line: 2, column: 6 } }],
      'one\r\n\tat:\t\r\n',
      'x',
    ).split('\n');
    expect(said.slice(2)).toEqual(['  2 |  at: ', '    |      ^']);
  });

  it('shows the stretch of a long line that the caret stands in', () => {
    const text = `${'a'.repeat(500)}X${'b'.repeat(500)}`;
    const [line, caret] = renderFindings([{ ...finding, at: { line: 1, column: 501 } }], text, 'x')
      .split('\n')
      .slice(2);
    expect(line!.length).toBeLessThan(120);
    expect(line![caret!.indexOf('^')]).toBe('X');
  });

  it('points to the value in a deck', () => {
    const text = edited('step: 5,', 'step: 0,');
    const said = renderFindings(loadDeck(text).findings, text, 'raft.deck.yaml').split('\n');
    expect(said[0]).toBe('raft.deck.yaml:18:90 error not-positive');
    expect(said[2]!.slice(said[3]!.indexOf('^'))).toMatch(/^0, above/);
  });
});
