import { describe, expect, it } from 'vitest';
import type { DocumentPath } from '../../../src/deck/findings.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { edited } from './edited.ts';
import { fixtureDeckText } from './fixture.ts';

const { locate, describe: inWords } = loadDeck(fixtureDeckText);

function textAt(path: DocumentPath): string {
  const { line, column } = locate(path);
  return fixtureDeckText.split('\n')[line - 1]!.slice(column - 1);
}

describe('the place of a path', () => {
  it.each([
    [['title'], 'Landing on the raft'],
    [['gates', 0], 'id: far'],
    [['gates', 0, 'position'], '{ aheadFt: -6000'],
    [['gates', 0, 'position', 'aheadFt'], '-6000'],
    [['gates', 0, 'values', 'closure', 'desired'], '[57, 63]'],
    [['gates', 0, 'values', 'closure', 'desired', 1], '63]'],
    [['tables', 0, 'rules', 1, 'when', 'closure'], '"[50..70]"'],
    [['phases', 0, 'controls', 2], 'call]'],
  ] as [DocumentPath, string][])('%j is that of its value', (path, start) => {
    expect(textAt(path).startsWith(start)).toBe(true);
  });

  it.each([
    [['gates', 0, 'position', 'height'], '{ aheadFt: -6000'],
    [['gates', 0, 'nothing', 'below', 5], 'id: far'],
    [['gates', 99, 'id'], '- id: far'],
    [['title', 'below'], 'Landing'],
    [['nothing'], 'format:'],
    [[], 'format:'],
  ] as [DocumentPath, string][])('%j is that of the nearest thing that is there', (path, start) => {
    expect(textAt(path).startsWith(start)).toBe(true);
  });

  it('of an empty value is its key', () => {
    const { findings } = loadDeck(
      edited('summary: Three gates, a checklist and the corrections on the way down.', 'summary:'),
    );
    expect(findings).toMatchObject([{ code: 'wrong-type', at: { line: 7, column: 1 } }]);
  });

  it('inside an alias is the alias', () => {
    const text = edited('adequate: [150, 300] }', 'adequate: *wide }').replace(
      '[580, 620]',
      '&wide [580, 620]',
    );
    const { findings } = loadDeck(text);
    const column = text.split('\n')[68]!.indexOf('*wide') + 1;
    expect(findings).toMatchObject([{ code: 'band-not-nested', at: { line: 69 } }]);
    expect(loadDeck(text).locate(['gates', 3, 'values', 'altitude', 'adequate', 1])).toEqual({
      line: 69,
      column,
    });
  });

  it('counts lines whatever ends them', () => {
    const text = edited('step: 5,', 'step: 0,').replaceAll('\n', '\r\n');
    expect(loadDeck(text).findings).toMatchObject([{ at: { line: 18, column: 90 } }]);
  });
});

describe('the words for a path', () => {
  it.each([
    [[], 'the deck'],
    [['title'], 'title'],
    [['defaultSource'], 'default source'],
    [['gates'], 'gates'],
    [['gates', 0], 'gate “Far gate”'],
    [['gates', 99], 'gate 100'],
    [['gates', 0, 'values', 'altitude', 'desired'], 'gate “Far gate”, altitude, desired'],
    [['gates', 0, 'values', 'closure', 'adequate', 1], 'gate “Far gate”, closure, adequate, upper end'],
    [['gates', 0, 'values', 'flaps'], 'gate “Far gate”, flaps'],
    [['gates', 0, 'values'], 'gate “Far gate”, values'],
    [['gates', 0, 'position', 'aheadFt'], 'gate “Far gate”, position, ahead (ft)'],
    [['quantities', 0, 'range', 0], 'quantity “Altitude”, range, lower end'],
    [['quantities', 1, 'words', 0, 'when'], 'quantity “Closure”, words 1, when'],
    [['sources', 2, 'edition'], 'source “A printed manual”, edition'],
    [['day', 0, 'default'], 'day setting “wind”, default'],
    [['checklists', 0, 'items', 1, 'response'], 'checklist “Final checks”, item “Door”, response'],
    [
      ['controls', 0, 'actions', 0, 'effects', 'closure'],
      'control “Pitch”, action “Nose down”, effects, closure',
    ],
    [['phases', 0, 'state', 'to-go', 0], 'phase “Far to middle”, state, distance to go, lower end'],
    [
      ['phases', 0, 'rates', 'altitude', 'factors', 'sink'],
      'phase “Far to middle”, rates, altitude, factors, sink',
    ],
    [['phases', 0, 'windowS'], 'phase “Far to middle”, window (s)'],
    [
      ['tables', 0, 'rules', 0, 'when', 'closure'],
      'table “Pitch by closure, far out”, rule “far-fast”, when, closure',
    ],
    [['tables', 3, 'priority', 1], 'table “Power by height, close in”, priority 2'],
    [['plates', 0, 'shapes', 0, 'points', 2, 1], 'plate “The raft”, shape 1, point 3, number 2'],
    [['plates', 0, 'spots', 0, 'at', 1], 'plate “The raft”, spot “The centre”, at, number 2'],
    [['notes', 0, 'accept', 1], 'note “raft-height”, accepted answer 2'],
    [['__proto__'], '__proto__'],
    [['constructor', 0], 'constructor, number 1'],
  ] as [DocumentPath, string][])('%j are “%s”', (path, words) => {
    expect(inWords(path)).toBe(words);
  });
});
