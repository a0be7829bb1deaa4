import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { loadDeck } from '../../../src/deck/load.ts';
import { edited } from './edited.ts';
import { fixtureDeckText } from './fixture.ts';

const codesOf = (text: string): string[] => loadDeck(text).findings.map(({ code }) => code);

/** Several edits, each of a piece that occurs once. */
const changed = (...edits: readonly (readonly [string, string])[]): string =>
  edits.reduce((text, [from, to]) => edited(from, to, text), fixtureDeckText);

describe('a deck without faults', () => {
  it('is loaded as it was written', () => {
    const { deck, findings } = loadDeck(fixtureDeckText);
    expect(findings).toEqual([]);
    expect(deck).toEqual(parse(fixtureDeckText));
  });

  it('may lack every optional part', () => {
    const text = `
format: gatecall-deck/1
id: least
title: The least deck
version: 1.0.0
language: en
cautions: [Not for flight.]
reference: { label: Spot, height: altitude }
defaultSource: notes
sources: [{ id: notes, title: Notes, kind: invented }]
quantities: [{ id: altitude, label: Altitude, unit: ft, range: [0, 1000], step: 10 }]
gates:
  - id: only
    label: The only gate
    cue: Here.
    position: { aheadFt: 0, rightFt: 0, courseDeg: 0 }
    values: { altitude: { target: 100, desired: [100, 100], adequate: [50, 150] } }
`;
    expect(loadDeck(text)).toMatchObject({ findings: [], deck: { id: 'least' } });
  });

  it('may have a byte order mark, Windows line ends and a document mark', () => {
    const text = `\uFEFF---\n${fixtureDeckText}`.replaceAll('\n', '\r\n');
    expect(codesOf(text)).toEqual([]);
  });

  it('may use an alias for a value written before', () => {
    const text = changed(
      ['altitude: { target: 600, desired: [580, 620], adequate: [550, 660] }', 'altitude: *high'],
      ['altitude: { target: 600, desired', 'altitude: &high { target: 600, desired'],
    );
    const { deck, findings } = loadDeck(text);
    expect(findings).toEqual([]);
    expect(deck!.gates[4]!.values['altitude']).toEqual(deck!.gates[0]!.values['altitude']);
  });

  it('is loaded when there are only warnings', () => {
    const { deck, findings } = loadDeck(edited('label: Middle gate', 'label: Far gate'));
    expect(findings.map(({ severity }) => severity)).toEqual(['warning']);
    expect(deck!.gates[1]!.label).toBe('Far gate');
  });

  it('reads YAML 1.2 even when the file asks for another version', () => {
    const text = `%YAML 1.1\n---\n${edited('spoken: altitude', 'spoken: no')}`;
    expect(loadDeck(text).deck!.quantities[0]!.spoken).toBe('no');
  });
});

describe('all faults are told at once', () => {
  it('those of shape beside those of sense, in the order of the text', () => {
    const text = changed(
      ['format: gatecall-deck/1', 'format: gatecall-deck/2'],
      ['    cue: The raft as wide as a thumb.\n', ''],
      ['target: 60,', 'target: 66,'],
      ['completeBy: middle', 'completeBy: midle'],
      ['step: 5,', 'step: 5 ft,'],
      ['then: nose-up, because: The nose', 'then: nose-upp, because: The nose'],
    );
    expect(codesOf(text)).toEqual([
      'wrong-format',
      'number-as-text',
      'missing-key',
      'band-not-nested',
      'unknown-gate',
      'unknown-action',
    ]);
  });

  it('in one gate, beside the piece that is broken', () => {
    const text = changed(
      ['desired: [57, 63]', 'desired: [57]'],
      ['target: 10, desired: [9.5, 10.5]', 'target: 12, desired: [9.5, 10.5]'],
      ['detect: { kind: distance, ft: 6000 }', 'detect: { kind: distance, ft: -6000 }'],
    );
    expect(codesOf(text)).toEqual(['not-positive', 'wrong-count', 'band-not-nested']);
  });

  it('in one table, beside the rule that is broken', () => {
    const text = changed(
      ['when: { sink: "> 600" }, then: more-power,', 'when: { sink: "> 600" }, then: [more-power],'],
      ['when: { altitude: "> 650" }', 'when: { altitud: "> 650" }'],
      ['then: hold-power, because: Leave it.', 'then: hold, because: Leave it.'],
    );
    expect(codesOf(text)).toEqual(['wrong-type', 'condition-not-input', 'unknown-action']);
  });

  it('in elements of a list after a broken one, at their own places', () => {
    const text = changed(
      ['id: nose-down, label: Nose down, opposes: nose-up', 'id: 5, label: Nose down'],
      ['label: Nose up, opposes: nose-down', 'label: Nose up, opposes: nose-up'],
    );
    const { findings } = loadDeck(text);
    expect(findings.map(({ code, where }) => [code, where])).toEqual([
      ['bad-id', 'control “Pitch”, action “Nose down”, id'],
      ['opposes-itself', 'control “Pitch”, action “Nose up”, opposes'],
    ]);
  });
});

describe('a broken part', () => {
  it('still lends its id to those who name it', () => {
    const text = changed(
      ['    label: Closure\n', ''],
      ['label: Middle gate', 'label: 5'],
      ['title: A printed manual', 'titel: A printed manual'],
    );
    expect(codesOf(text)).toEqual(['unknown-key', 'missing-key', 'wrong-type']);
  });

  it('without an id makes nobody complain about the names that may have been its own', () => {
    expect(codesOf(edited('- id: closure\n', '- idd: closure\n'))).toEqual(['unknown-key']);
    expect(codesOf(edited('{ id: book, title', '{ title'))).toEqual(['missing-key']);
  });

  it('that is no list makes nobody complain about what it would have held', () => {
    expect(codesOf(edited('day:\n', 'plans:\n'))).toEqual(['unknown-key']);
    const text = fixtureDeckText.replace(/controls:\n[^]*?\nphases:/, 'controls: none\n\nphases:');
    expect(codesOf(text)).toEqual(['wrong-type']);
  });

  it('is not said to lack what was broken in it', () => {
    expect(codesOf(edited('closure: { floor: 0 }', 'closure: { floor: none }'))).toEqual(['wrong-type']);
    expect(codesOf(edited('priority: [more-power, hold-power, less-power]', 'priority: more-power'))).toEqual(
      ['wrong-type'],
    );
    expect(codesOf(edited('target: 200, desired: [180, 250]', 'target: true, desired: [180, 250]'))).toEqual([
      'wrong-type',
    ]);
    expect(codesOf(edited('label: Continue, neutral: true', 'label: Continue, neutral: 1'))).toEqual([
      'wrong-type',
    ]);
  });

  it('of two gates with the same id is not taken for both', () => {
    const text = changed(
      ['id: turned\n', 'id: far\n'],
      ['from: middle\n    to: near', 'from: near\n    to: far'],
    );
    expect(codesOf(text)).toEqual(['duplicate-id', 'phase-order']);
  });
});

describe('a control without a neutral action', () => {
  it('is only doubtful when a table answers for it in every phase', () => {
    const { deck, findings } = loadDeck(
      edited('spoken: hold the nose, neutral: true', 'spoken: hold the nose'),
    );
    expect(findings).toMatchObject([{ code: 'missing-neutral', severity: 'warning' }]);
    expect(deck).not.toBeNull();
  });

  it('needs one in a phase without a table for it', () => {
    const text = changed(
      ['spoken: hold the nose, neutral: true', 'spoken: hold the nose'],
      ['phases: [arrival]\n    control: pitch', 'phases: [arrival]\n    control: power'],
    );
    expect(loadDeck(text).findings[0]!.message).toContain('when a phase like “Middle to near” has no table');
  });
});
