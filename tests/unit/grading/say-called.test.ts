import { describe, expect, it } from 'vitest';
import type { Ask, Prompt } from '../../../src/cards/types.ts';
import { sayCalled } from '../../../src/grading/say-called.ts';
import type { AnswerDetail } from '../../../src/grading/types.ts';
import { shippedDeck } from '../../reference/shipped-deck.ts';
import { controlsAsk } from '../../../src/cards/rule.ts';
import { phaseOf } from '../../../src/deck/lookup.ts';

const deck = shippedDeck('marram-recovery');
const said = (ask: Ask, detail: AnswerDetail) => sayCalled(deck, { ask } as Prompt, detail);

describe('what was called, in words', () => {
  const phase = phaseOf(deck, 'final-turn');
  const ask = controlsAsk(deck, phase, {});
  const worked = (chosen: Readonly<Record<string, string>>): AnswerDetail =>
    ({
      form: 'controls',
      perControl: Object.fromEntries(
        ask.rows.map(({ id, neutral }) => [id, { chosen: chosen[id] ?? neutral }]),
      ),
    }) as unknown as AnswerDetail;

  it.each([
    ['the controls that were worked', { power: 'more-power', pitch: 'nose-up' }, 'nose up, more power'],
    ['a call that beats all others', { call: 'go-around' }, 'go around'],
    ['that nothing was', {}, 'everything left as it was'],
  ])('says %s', (_, chosen, words) => {
    expect(said(ask, worked(chosen))).toBe(words);
  });

  it('says the answer that was chosen or typed, by its words', () => {
    const options = [
      { id: 'a', label: 'Break' },
      { id: 'b', label: 'Abeam' },
    ];
    const choice = { form: 'choice', options, correct: 'a' } as unknown as Ask;
    expect(said(choice, { form: 'choice', chosen: 'b', correct: 'a' })).toBe('Abeam');
    expect(said({ form: 'text' } as Ask, { form: 'text', text: 'less lift' })).toBe('less lift');
  });

  it('says nothing of a value, which is kept as a number, and of no answer', () => {
    const number = { form: 'number', value: 5, signedError: 0, steps: 0, passedLimit: null } as const;
    expect(said({ form: 'number' } as Ask, number)).toBeNull();
    expect(said(ask, { form: 'none' })).toBeNull();
  });
});
