/** A deck with one table too tangled to be proved: many rules that overlap along every one of many inputs. */
import type { Deck } from '../../../src/deck/types.ts';
import { seeded } from '../../../src/rules/random.ts';

export function tangledDeck(ruleCount: number, inputCount = 12, hit: 'first' | 'priority' = 'first'): Deck {
  const random = seeded(7);
  const inputs = Array.from({ length: inputCount }, (_, i) => `input-${i + 1}`);
  const stretch = (): string => {
    const lo = Math.floor(random() * 700);
    return `[${lo}..${lo + 100 + Math.floor(random() * 500)}]`;
  };
  const actions = ['less', 'hold', 'more'];
  const rules = Array.from({ length: ruleCount - 1 }, (_, i) => ({
    id: `rule-${i + 1}`,
    when: Object.fromEntries(inputs.flatMap((id) => (random() < 0.5 ? [[id, stretch()]] : []))),
    then: actions[i % 3]!,
    because: 'Made.',
  }));
  const gate = (id: string) => ({
    id,
    label: id,
    cue: 'None.',
    position: { aheadFt: 0, rightFt: 0, courseDeg: 0 },
    values: {},
  });
  return {
    format: 'gatecall-deck/1',
    id: 'tangled',
    title: 'Tangled',
    version: '1.0.0',
    language: 'en',
    cautions: ['Made by a program, for testing one.'],
    reference: { label: 'Spot', height: 'input-1' },
    defaultSource: 'made',
    sources: [{ id: 'made', title: 'Made from a seed', kind: 'invented' }],
    quantities: inputs.map((id) => ({ id, label: id, unit: 'ft', range: [0, 1300], step: 1 })),
    gates: [gate('start'), gate('end')],
    controls: [
      {
        id: 'power',
        label: 'Power',
        actions: actions.map((id) => ({ id, label: id, neutral: id === 'hold' })),
      },
    ],
    phases: [
      {
        id: 'leg',
        label: 'Leg',
        from: 'start',
        to: 'end',
        windowS: 5,
        state: Object.fromEntries(inputs.map((id) => [id, [0, 1300]])),
        controls: ['power'],
      },
    ],
    tables: [
      {
        id: 'large',
        label: 'Large table',
        phases: ['leg'],
        control: 'power',
        hit,
        ...(hit === 'priority' ? { priority: ['less', 'hold', 'more'] } : {}),
        inputs,
        rules: [...rules, { id: 'rest', when: {}, then: 'hold', because: 'Made.' }],
      },
    ],
  } as Deck;
}
