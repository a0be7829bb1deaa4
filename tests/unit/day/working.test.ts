import { describe, expect, it } from 'vitest';
import { workingOf } from '../../../src/day/working.ts';
import type { Deck } from '../../../src/deck/types.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { edited } from '../deck/edited.ts';
import { formulaDeckText } from '../formulas/formula-deck.ts';

const loaded = (text: string): Deck => loadDeck(text, readFormulas).deck!;
const deck = loaded(formulaDeckText);
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const lines = (quantity: string, changed = {}, of = deck) =>
  workingOf(of, quantity, changed)?.map((line) => [line.says, line.with, line.gives].map(plain));

describe('the working of a quantity of the day', () => {
  it('goes from the inputs to the result, in names and in numbers', () => {
    expect(lines('run-in')).toEqual([
      [
        'Wind to fly for = wind + chart “Share of the gust” (gust)',
        '= 10 kt + chart “Share of the gust” (10 kt)',
        '= 15 kt',
      ],
      [
        'Time from the far gate = 6,000 ft / (70 kt − wind to fly for / 2)',
        '= 6,000 ft / (70 kt − 15 kt / 2)',
        '= 57 s',
      ],
    ]);
  });

  it('shows the numbers of the day that is asked for', () => {
    expect(lines('felt-wind', { wind: 18 })).toEqual([
      [
        'Wind to fly for = wind + chart “Share of the gust” (gust)',
        '= 18 kt + chart “Share of the gust” (10 kt)',
        '= 23 kt',
      ],
    ]);
  });

  it('is no line for what is only set', () => {
    expect(lines('wind')).toEqual([]);
  });

  it('is none for what has no value, or is not of the day', () => {
    const text = edited('least_closure(load, waves)', 'least_closure(load + 100 kg, waves)', formulaDeckText);
    expect(lines('digging-in', { load: 350 }, loaded(text))).toBeUndefined();
    expect(workingOf(loaded(text), 'digging-in', { load: 350 })).toBeNull();
    expect(workingOf(deck, 'altitude', {})).toBeNull();
  });

  it.each([
    ['(wind + gust) * 2 - wind / (gust / wind)', '(wind + gust) × 2 − wind / (gust / wind)'],
    ['wind - (gust - wind)', 'wind − (gust − wind)'],
    ['wind * (gust / 10 kt) ^ 2', 'wind × (gust / 10 kt)²'],
    ['(2 kt) ^ 2 / 4 kt * 1', '(2 kt)² / 4 kt × 1'],
    ['-(wind - 40 kt)', '−(wind − 40 kt)'],
    ['max(wind, gust) + 300 ft/min', 'max(wind, gust) + 300 ft/min'],
    ['sqrt(wind * gust)', 'sqrt(wind × gust)'],
    ['wind * sin(30 deg)', 'wind × sin(30°)'],
    ['wind > 5 kt ? wind : gust', 'wind'],
    ['wind < 5 kt ? wind : gust', 'gust'],
  ])('writes %s as %s', (expression, written) => {
    const text = edited(
      'expression: wind + gust_share(gust)',
      `expression: "${expression}"`,
      formulaDeckText,
    );
    expect(lines('felt-wind', {}, loaded(text))?.[0]?.[0]).toBe(`Wind to fly for = ${written}`);
  });
});
