import { describe, expect, it, test } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import type { Prompt } from '../../../src/cards/types.ts';
import { cardNamed, changed, shipped, small } from './procedures.ts';
import { smallDeck } from './small-deck.ts';

const prompt = (id: string, seed = 1): Prompt => promptFor(small, cardNamed(id), seed);

describe('a prompt', () => {
  it('for a value asks for its number at its gate', () => {
    expect(prompt('value/near/drift')).toMatchObject({
      seed: 1,
      place: 'Gate 2 of 3 · Near gate',
      title: 'Drift',
      detail: 'Stern abeam.',
      ask: { form: 'number', quantity: 'drift', band: { target: 0, ceiling: 4 }, limit: null },
    });
  });

  it('for a floor asks what not to go below, with a band that opens to the safe side', () => {
    expect(prompt('limit/far/altitude/floor')).toMatchObject({
      title: 'Altitude: never below?',
      ask: {
        quantity: 'altitude',
        limit: 'floor',
        band: { target: 500, desired: [500, 502.5], adequate: [500, 505] },
      },
    });
  });

  it('for a ceiling likewise, and a phase says where it lies', () => {
    expect(prompt('limit/approach/sink/ceiling')).toMatchObject({
      place: 'After gate 1 of 3 · Far to near',
      title: 'Sink: never above?',
      detail: 'On the approach',
      ask: { limit: 'ceiling', band: { target: 600, desired: [595, 600], adequate: [590, 600] } },
    });
  });

  it('for the order of the gates shuffles all of them', () => {
    const { ask } = prompt('order/gates');
    if (ask.form !== 'sequence') throw new Error(ask.form);
    expect(ask.expected).toEqual(['far', 'near', 'over']);
    expect(ask.pool.map((option) => option.id).sort()).toEqual(['far', 'near', 'over']);
  });

  it('for a checklist adds strangers that can’t be taken for its own', () => {
    for (let seed = 0; seed < 50; seed++) {
      const { ask } = prompt('checklist/late-checks', seed);
      if (ask.form !== 'sequence') throw new Error(ask.form);
      const own = ask.pool.filter((option) => ask.expected.includes(option.id));
      const strangers = ask.pool.filter((option) => !ask.expected.includes(option.id));
      expect(own).toHaveLength(6);
      // "Fuel" of the other list reads like this list's own.
      expect(strangers.map((option) => option.label).sort()).toEqual(['Spot', 'Wind']);
      expect(ask.critical).toEqual(['wheels']);
    }
  });

  it('for a checklist adds three strangers at most', () => {
    for (const [, procedure] of shipped)
      for (const card of cardsOf(procedure).filter(({ kind }) => kind === 'checklist')) {
        const { ask } = promptFor(procedure, card, 1);
        expect(ask.form === 'sequence' && ask.pool.length - ask.expected.length, card.id).toBe(3);
      }
  });

  it('tells a challenge that comes twice by its response', () => {
    const { ask } = prompt('checklist/early-checks');
    if (ask.form !== 'sequence') throw new Error(ask.form);
    const labels = new Map(ask.pool.map((option) => [option.id, option.label]));
    expect(labels.get('fuel')).toBe('Fuel: 1,900 lb or more');
    expect(labels.get('fuel-again')).toBe('Fuel: Balanced');
    expect(labels.get('wind')).toBe('Wind');
  });

  it('for a response offers five, the same challenge’s other responses among them', () => {
    for (let seed = 0; seed < 50; seed++) {
      const { ask, place, title } = prompt('response/late-checks/fuel', seed);
      expect([place, title]).toEqual(['Checklist · Late checks', 'Fuel']);
      if (ask.form !== 'choice') throw new Error(ask.form);
      const labels = ask.options.map((option) => option.label);
      expect(new Set(labels).size).toBe(5);
      expect(labels).toEqual(expect.arrayContaining(['1,400 lb or more', '1,900 lb or more', 'Balanced']));
      expect(ask.options.find((option) => option.id === ask.correct)?.label).toBe('1,400 lb or more');
    }
  });

  it('for a response offers no second one that reads like the right one', () => {
    const procedure = changed({
      checklists: smallDeck.checklists!.map((list) => ({
        ...list,
        items: list.items.map((item) =>
          item.id === 'spot' ? { ...item, response: 'down,  four LOCKED' } : item,
        ),
      })),
    });
    for (let seed = 0; seed < 20; seed++) {
      const { ask } = promptFor(procedure, cardNamed('response/late-checks/wheels', procedure), seed);
      const like = ask.form === 'choice' && ask.options.filter(({ label }) => /four/i.test(label));
      expect(like).toEqual([{ id: 'late-checks/wheels', label: 'Down, four locked' }]);
    }
  });

  it('for a checklist’s gate offers all gates in order and does not give it away', () => {
    const { ask, ...rest } = prompt('complete-by/late-checks');
    expect(ask).toMatchObject({ form: 'choice', correct: 'near' });
    expect(ask.form === 'choice' && ask.options.map((option) => option.id)).toEqual(['far', 'near', 'over']);
    const { expected: _expected, ...shown } = rest.card;
    expect(JSON.stringify([rest.place, rest.title, rest.detail, shown])).not.toMatch(/near/i);
  });

  it('for a note is a choice where there are wrong answers, none of which reads like the right one', () => {
    const { ask } = prompt('note/first');
    if (ask.form !== 'choice') throw new Error(ask.form);
    expect(ask.options.map((option) => option.label).sort()).toEqual(['Both', 'Less power', 'Nose up']);
    expect(ask.options.find((option) => option.id === ask.correct)?.label).toBe('Nose up');
  });

  it('for a note without choices is typed', () => {
    expect(prompt('note/height')).toMatchObject({
      place: 'Small pattern',
      ask: { form: 'text', accept: ['60 ft', '60', 'sixty feet'] },
    });
  });

  it('for a spot shows its plate', () => {
    expect(prompt('spot/deck-plan/spot-two')).toMatchObject({
      place: 'Flight deck',
      title: 'Spot 2',
      ask: { form: 'point', spot: { id: 'spot-two' }, plate: { id: 'deck-plan' } },
    });
  });
});

describe('prompts of one card', () => {
  const random = /^(order|checklist|response|rule|note\/first)/;

  test.each([['small', small] as const, ...shipped])(
    '%s: the same seed gives the same prompt',
    (_name, procedure) => {
      for (const card of cardsOf(procedure))
        for (const seed of [0, 1, 4294967295])
          expect(promptFor(procedure, card, seed)).toEqual(promptFor(procedure, card, seed));
    },
  );

  it('are fresh for another seed', () => {
    for (const card of cardsOf(small).filter(({ id }) => random.test(id))) {
      const shown = Array.from({ length: 20 }, (_, seed) => JSON.stringify(promptFor(small, card, seed).ask));
      expect(new Set(shown).size, card.id).toBeGreaterThan(1);
    }
  });

  it('are not drawn alike for two cards asked with one seed', () => {
    for (let seed = 0; seed < 10; seed++) {
      const orders = ['speed/fast', 'speed/fair', 'speed/slow'].map((id) => {
        const { ask } = prompt(`rule/${id}`, seed);
        return ask.form === 'controls' ? ask.state.altitude : null;
      });
      expect(new Set(orders).size, `seed ${seed}`).toBeGreaterThan(1);
    }
  });

  it('take gate and window from the phase drawn', () => {
    const cards = Array.from({ length: 20 }, (_, seed) => prompt('rule/speed/fast', seed)).map(
      ({ card, ask }) => (ask.form === 'controls' ? [ask.phase, card.gate, card.windowMs].join() : ''),
    );
    expect([...new Set(cards)].sort()).toEqual(['approach,far,5000', 'arrival,near,4000']);
  });

  it('show a rule in a new state nearly every time', () => {
    for (const [, procedure] of shipped)
      for (const card of cardsOf(procedure).filter(({ kind }) => kind === 'rule')) {
        const states = Array.from({ length: 10 }, (_, seed) => {
          const { ask } = promptFor(procedure, card, seed);
          return ask.form === 'controls' ? JSON.stringify([ask.phase, ask.state]) : '';
        });
        expect(new Set(states).size, card.id).toBeGreaterThanOrEqual(8);
      }
  });
});
