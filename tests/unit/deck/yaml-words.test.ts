import { describe, expect, it } from 'vitest';
import { loadDeck } from '../../../src/deck/load.ts';
import { edited } from './edited.ts';
import { fixtureDeckText } from './fixture.ts';

/** What the text says at the first finding, and that finding. */
function firstFault(text: string) {
  const [finding] = loadDeck(text).findings;
  const { line, column } = finding!.at!;
  return { ...finding!, from: text.split('\n')[line - 1]!.slice(column - 1) };
}

describe('an error of the YAML', () => {
  it.each([
    ['summary: Three gates, a', 'summary: @ gates', '@', 'A text can’t begin with “@”; put'],
    ['summary: Three gates, a', 'summary: % gates', '%', 'A text can’t begin with “%”; put'],
    ['summary: Three gates, a', 'summary: > 5 gates', '5', 'begins a text of several lines; put a value'],
    ['summary: Three gates, a', 'summary: |x gates', 'x', 'begins a text of several lines; put a value'],
    ['summary: Three gates, a', 'summary: - gates', '-', 'A list begins on a line of its own'],
    ['summary: Three gates, a', 'summary: "gates" three', 'three', 'ends at the second "'],
    ['summary: Three gates, a', 'summary: "gates\\q" ', '\\q', 'double the backslash'],
    ['summary: Three gates, a', "summary: 'gates", "'gates", "opened with ' must be closed with '"],
    ['summary: Three gates, a', 'summary three', 'summary', 'the colon or the space after it is missing'],
    ['summary: Three gates, a', ' summary: three', 'summary', 'take 1 space away'],
    ['    cue: The raft as', '   cue: The raft as', 'cue', 'put 1 space more before it'],
    ['summary: Three gates, a', 'summary: Gates: three, a', 'Gates', 'A value may hold no “: ” of its own'],
    ['sink: [0, 1000] }', 'sink: [0, 1000 }', '[0, 1000', 'A bracket must be closed, “[” here is not'],
    ['sink: [0, 1000] }', 'sink: [0, 1000] }}', '}', 'A closing “}” stands here without its opening one'],
    ['sink: [0, 1000] }', 'sink: [0, 1000],, }', ',', 'A comma stands here with nothing before it'],
    ['sink: [0, 1000] }', 'sink: [0, 1000] aoa: [0, 1] }', 'aoa', 'put a comma between entries in brackets'],
    ['altitude: "> 650" }', 'altitude: > 650 }', '>', 'A text can’t begin with “>”; put'],
    ['altitude: "> 650" }', 'altitude: (600..650] }', ']', 'A bracket opened before must close'],
  ])('in “%s” changed to “%s” is found and explained', (from, to, at, words) => {
    const { code, from: found, message } = firstFault(edited(from, to));
    expect(code).toBe('yaml-syntax');
    expect(found.slice(0, at.length)).toBe(at);
    expect(message).toContain(words);
  });

  it('is told once for each slip, however far the parser stumbles', () => {
    const text = edited('  - id: closure\n    label: Closure\n', '  - id: closure\n\tlabel: Closure\n');
    const nearby = loadDeck(text).findings.filter(({ at }) => at!.line < 29);
    expect(nearby.map(({ code }) => code)).toEqual(['tab-indentation']);
  });

  it('does not hide another one further down', () => {
    const one = edited('title: Landing on the raft', 'title: @Landing');
    const both = edited('answer: Nose up', 'answer: `Nose up', one);
    expect(loadDeck(both).findings.map(({ at }) => at!.line)).toEqual([4, 221]);
  });

  it('does not hide what is wrong before it', () => {
    const one = edited('step: 5,', 'step: -5,');
    const both = edited('answer: Nose up', 'answer: `Nose up', one);
    expect(loadDeck(both).findings.map(({ code }) => code)).toEqual(['not-positive', 'yaml-syntax']);
  });

  it('brings no complaint about what the parser lost behind it', () => {
    const text = edited('title: Landing on the raft\n', 'title: "Landing on the raft\n');
    expect(loadDeck(text).findings.map(({ code }) => code)).toEqual(['yaml-syntax']);
  });

  it('keeps its place behind an error after which the parser loses count of lines', () => {
    const [before, after] = [fixtureDeckText.slice(0, 4_984), fixtureDeckText.slice(4_998)];
    const text = `${before.slice(0, 4_848)}]${before.slice(4_848)}[${after}`;
    const lines = text.split('\n');
    for (const { at } of loadDeck(text).findings)
      expect(at!.column).toBeLessThanOrEqual(lines[at!.line - 1]!.length + 1);
  });
});
