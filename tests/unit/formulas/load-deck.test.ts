import { describe, expect, it } from 'vitest';
import { loadDeck } from '../../../src/deck/load.ts';
import { loadWholeDeck } from '../../../src/formulas/load-deck.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { edited } from '../deck/edited.ts';
import { fixtureDeckText } from '../deck/fixture.ts';
import { formulaDeckText } from './formula-deck.ts';

const far = (text: string) => loadDeck(text, readFormulas).deck!.gates[0]!.values['closure'];

describe('a deck with formulas', () => {
  it('is loaded with what they come to on its own day', () => {
    // 10 kt of wind, a gust of 10 kt counts 5: 75 - 15.
    expect(far(formulaDeckText)).toMatchObject({
      target: 60,
      desired: [57, 63],
      adequate: [50, 70],
      ceiling: 90,
    });
  });

  it('keeps the formulas as plain data, in an order in which they can be worked out', () => {
    const { computed } = loadDeck(formulaDeckText, readFormulas).deck!;
    expect(computed!.quantities.map(({ quantity }) => quantity)).toEqual([
      'felt-wind',
      'run-in',
      'digging-in',
    ]);
    expect(computed!.numbers).toHaveLength(5);
    expect(JSON.parse(JSON.stringify(computed))).toEqual(computed);
  });

  it('rounds the numbers of a band to the step in which they are called', () => {
    expect(far(edited('75 kt - felt_wind,', '75.4 kt - felt_wind,', formulaDeckText))!.target).toBe(60);
  });

  it('loads the same when the parser comes later', async () => {
    const { deck, findings } = await loadWholeDeck(formulaDeckText);
    expect(findings).toEqual([]);
    expect(deck).toEqual(loadDeck(formulaDeckText, readFormulas).deck);
  });

  it('can’t be opened without a reader of formulas', () => {
    const { deck, findings } = loadDeck(formulaDeckText);
    expect(deck).toBeNull();
    expect(findings).toMatchObject([
      { code: 'formulas-not-read', severity: 'error', where: 'formula “run-in”' },
    ]);
  });

  it('lets a quantity of a band stand for its target at the same gate', () => {
    const text = edited(
      'closure: { target: 10, desired: [8, 12], adequate: [5, 15], ceiling: 20 }',
      'closure: { target: altitude / 8 ft * 1 kt, desired: [8, 12], adequate: [5, 15], ceiling: 20 }',
      formulaDeckText,
    );
    expect(loadDeck(text, readFormulas).deck!.gates[2]!.values['closure']!.target).toBe(10);
  });
});

describe('a deck without formulas', () => {
  it('is loaded without asking for their reader', async () => {
    const loaded = loadDeck(fixtureDeckText, () => {
      throw new Error('asked');
    });
    expect(loaded.deck).not.toHaveProperty('computed');
    expect((await loadWholeDeck(fixtureDeckText)).deck).toEqual(loaded.deck);
  });
});
