import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/rules/analyse.ts';
import { placed, readProcedure } from '../../../src/rules/read.ts';
import { fixtureDeckText } from '../deck/fixture.ts';

const lineOf = (part: string) => fixtureDeckText.slice(0, fixtureDeckText.indexOf(part)).split('\n').length;

describe('reading a procedure', () => {
  it('gives what a sound deck decides with', () => {
    const { loaded, procedure, findings } = readProcedure(fixtureDeckText);
    expect(findings).toEqual([]);
    expect(procedure!.deck).toBe(loaded.deck);
    expect([...procedure!.phases.keys()]).toEqual(['approach', 'arrival']);
  });

  it('says of a bad condition where it stands, in the text and in words', () => {
    const { procedure, findings } = readProcedure(fixtureDeckText.replace('"[50..70]"', '"[70..50]"'));
    expect(procedure).toBeNull();
    expect(findings).toMatchObject([
      {
        code: 'bad-condition',
        severity: 'error',
        path: ['tables', 0, 'rules', 1, 'when', 'closure'],
        at: { line: lineOf('id: far-fair') },
      },
    ]);
    expect(findings[0]!.where).toContain('Pitch by closure, far out');
  });

  it('says all bad conditions at once, among the loader’s own findings, from top to bottom', () => {
    const text = fixtureDeckText
      .replace('when: "> 45"', 'when: "> 45 kt"')
      .replace('"[50..70]"', '"50-70"')
      .replace('sink: "> 600"', 'sink: "> 6000"')
      .replace('  - { id: trade,', '  - { id: unused, title: Not named, kind: invented }\n  - { id: trade,');
    const { findings } = readProcedure(text);
    expect(findings.map(({ code }) => code)).toEqual([
      'unused-source',
      'bad-condition',
      'bad-condition',
      'condition-outside-range',
    ]);
  });

  it('judges conditions also in a deck that is broken elsewhere', () => {
    const text = fixtureDeckText
      .replace('  - { id: door, challenge: Door, response: Unlatched }', '  - { id: door, challenge: Door }')
      .replace('then: hold-nose, because: The closure fits. }', 'then: hold-nose }')
      .replace('closure: "< 50" }', 'closure: "under 50" }')
      .replace('when: "> 45"', 'when: "45+"');
    const { procedure, findings } = readProcedure(text);
    expect(procedure).toBeNull();
    expect(findings.map(({ code, path }) => [code, ...path].join(' '))).toEqual([
      'bad-condition quantities 1 words 1 when',
      'missing-key checklists 0 items 1 response',
      'missing-key tables 0 rules 1 because',
      'bad-condition tables 0 rules 2 when closure',
    ]);
  });

  it('says nothing of a condition whose quantity is unknown or has no range', () => {
    const codes = (text: string) => readProcedure(text).findings.map(({ code }) => code);
    expect(
      codes(fixtureDeckText.replace('when: { sink: "> 600" }', 'when: { sinc: "> 600" }')),
    ).not.toContain('bad-condition');
    expect(codes(fixtureDeckText.replace('range: [-20, 100]', 'range: [100, -20]'))).not.toContain(
      'condition-outside-range',
    );
  });

  it('leaves a broken deck to the loader', () => {
    const { procedure, findings } = readProcedure('format: gatecall-deck/1');
    expect(procedure).toBeNull();
    expect(findings.length).toBeGreaterThan(0);
  });

  it('places what the analysis finds', () => {
    const { loaded, procedure } = readProcedure(
      fixtureDeckText.replace('closure: "< 50" }', 'closure: "< 40" }'),
    );
    const [gap] = placed(loaded, analyse(procedure!));
    expect(gap).toMatchObject({ code: 'gap', at: { line: lineOf('id: far-speed') } });
  });
});
