import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { cardsOf, groundOf, promptFor } from '../../../src/cards/registry.ts';
import { seeded, shuffled } from '../../../src/rules/random.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { cardNamed, changed, shipped, small } from './procedures.ts';
import { smallDeck } from './small-deck.ts';

const idsOf = (procedure: Procedure) => cardsOf(procedure).map((card) => card.id);
describe('the cards of a deck', () => {
  it('come in the order in which the procedure is flown', () => {
    expect(idsOf(small)).toEqual([
      'value/far/altitude',
      'value/far/airspeed',
      'limit/far/altitude/floor',
      'checklist/early-checks',
      'response/early-checks/fuel',
      'response/early-checks/wind',
      'response/early-checks/spot',
      'response/early-checks/fuel-again',
      'complete-by/early-checks',
      'limit/approach/sink/ceiling',
      'rule/speed/fast',
      'rule/speed/fair',
      'rule/speed/slow',
      'rule/height/steep',
      'rule/height/high',
      'rule/height/steady',
      'rule/abandon/too-low',
      'value/near/altitude',
      'value/near/drift',
      'value/near/angle',
      'limit/near/drift/ceiling',
      'order/gates',
      'note/first',
      'checklist/late-checks',
      'response/late-checks/wheels',
      'response/late-checks/fuel',
      'response/late-checks/flaps',
      'response/late-checks/harness',
      'response/late-checks/lights',
      'response/late-checks/hook',
      'complete-by/late-checks',
      'value/over/altitude',
      'spot/deck-plan/spot-one',
      'spot/deck-plan/spot-two',
      'note/height',
    ]);
  });

  it('keep two checklists of one gate apart', () => {
    const checklists = smallDeck.checklists!.map((list) => ({ ...list, completeBy: 'near' }));
    const lists = idsOf(changed({ checklists })).flatMap((id) =>
      /-by\/|list\/|response\//.exec(id) ? [id.split('/')[1]] : [],
    );
    expect(lists).toEqual([...Array(6).fill('early-checks'), ...Array(8).fill('late-checks')]);
  });

  it('leave out a rule that can never decide', () => {
    expect(idsOf(small)).not.toContain('rule/height/never');
  });

  test.each([
    ['value/far/altitude', 'far', 'gate/far', 'Far gate · altitude', true, 5_000, '600\u00a0ft'],
    ['value/far/airspeed', 'far', 'gate/far', 'Far gate · IAS', false, 5_000, '140\u00a0kt'],
    ['value/near/angle', 'near', 'gate/near', 'Near gate · angle of attack', true, 5_000, '10.0\u00a0units'],
    [
      'limit/far/altitude/floor',
      'far',
      'gate/far',
      'Far gate · altitude floor',
      true,
      6_000,
      'never below 500\u00a0ft',
    ],
    [
      'limit/approach/sink/ceiling',
      'far',
      'phase/approach',
      'Far to near · sink ceiling',
      true,
      6_000,
      'never above 600\u00a0ft/min',
    ],
    ['order/gates', null, 'order', 'Order of the gates', false, 9_000, 'Far gate, Near gate, Over the spot'],
    [
      'checklist/early-checks',
      'far',
      'checklist/early-checks',
      'Early checks',
      true,
      12_000,
      'Fuel, Wind, Spot, Fuel',
    ],
    ['response/late-checks/hook', 'near', 'checklist/late-checks', 'Late checks · IFF', false, 6_000, 'Off'],
    [
      'response/late-checks/wheels',
      'near',
      'checklist/late-checks',
      'Late checks · wheels',
      true,
      6_000,
      'Down, four locked',
    ],
    [
      'complete-by/late-checks',
      null,
      'checklist/late-checks',
      'Late checks · complete by',
      true,
      8_000,
      'Near gate',
    ],
    ['rule/speed/fast', 'far', 'phase/approach', 'Pitch by closure · fast', false, 5_000, 'nose up'],
    ['rule/height/steep', 'far', 'phase/approach', 'Power by height · steep', true, 5_000, 'more power'],
    ['rule/abandon/too-low', 'far', 'phase/approach', 'Go around · too low', true, 5_000, 'go around'],
    [
      'spot/deck-plan/spot-two',
      null,
      'plate/deck-plan',
      'Flight deck · spot 2',
      true,
      8_000,
      '200\u00a0ft across, 50\u00a0ft down',
    ],
    ['note/first', 'near', 'gate/near', 'Which correction comes first?', true, 12_000, 'Nose up'],
    ['note/height', null, 'notes', 'How high is the deck?', false, 12_000, '60 ft'],
  ] as const)('%s', (id, gate, group, label, critical, windowMs, expected) => {
    const [kind] = id.split('/');
    expect(cardNamed(id)).toEqual({ id, kind, gate, group, label, critical, windowMs, expected });
  });

  it('put a rule of several phases where it first can decide, whatever the phases’ order in the file', () => {
    const phases = [...smallDeck.phases!].reverse();
    expect(cardNamed('rule/speed/fast', changed({ phases })).group).toBe('phase/approach');
    const slowOnly = phases.map((phase) => ({
      ...phase,
      ...(phase.id === 'approach' ? { state: { ...phase.state, closure: [-10, 30] as const } } : {}),
    }));
    const procedure = changed({ phases: slowOnly });
    expect(cardNamed('rule/speed/fast', procedure)).toMatchObject({
      gate: 'near',
      group: 'phase/arrival',
      windowMs: 4_000,
    });
    expect(cardNamed('rule/speed/slow', procedure).group).toBe('phase/approach');
  });

  it('keep a phase’s limit apart from a gate’s of the same name', () => {
    const { gates, phases } = smallDeck;
    const procedure = changed({
      gates: gates.map((gate) => ({ ...gate, ...(gate.id === 'far' ? { id: 'approach' } : {}) })),
      phases: phases!.map((phase) => ({
        ...phase,
        ...(phase.id === 'approach' ? { from: 'approach', limits: { altitude: { floor: 50 } } } : {}),
      })),
      checklists: [],
    });
    expect(idsOf(procedure).filter((id) => id === 'limit/approach/altitude/floor')).toHaveLength(1);
    expect(cardNamed('limit/approach/altitude/floor', procedure).expected).toBe('never below 500\u00a0ft');
  });

  it('need something to choose between: one gate has no order, a list of one no sequence', () => {
    const procedure = changed({
      gates: smallDeck.gates.slice(0, 1),
      checklists: [{ ...smallDeck.checklists![0]!, items: smallDeck.checklists![0]!.items.slice(0, 1) }],
      phases: [],
      tables: [],
      notes: [],
    });
    expect(idsOf(procedure).filter((id) => !/^(value|limit|spot)/.test(id))).toEqual([
      'response/early-checks/fuel',
    ]);
    expect(promptFor(procedure, cardNamed('response/early-checks/fuel', procedure), 1).ask).toEqual({
      form: 'text',
      accept: ['1,900 lb or more'],
    });
  });

  it('keep their ids when the deck is reordered, relabelled or its numbers are changed', () => {
    const relabelled = (deck: typeof smallDeck): typeof smallDeck => ({
      ...deck,
      gates: deck.gates.map((gate) => ({
        ...gate,
        label: `New ${gate.label}`,
        values: Object.fromEntries(
          Object.entries(gate.values).map(([id, band]) => [
            id,
            { ...band, target: band.target + 1, because: 'New.' },
          ]),
        ),
      })),
      quantities: deck.quantities.map((quantity) => ({ ...quantity, label: `New ${quantity.label}` })),
      tables: deck.tables!.map((table) => ({ ...table, label: `New ${table.label}` })),
    });
    fc.assert(
      fc.property(fc.integer(), fc.boolean(), (seed, relabel) => {
        const random = seeded(seed);
        const deck = relabel ? relabelled(smallDeck) : smallDeck;
        const procedure = changed({
          ...deck,
          gates: shuffled(deck.gates, random),
          quantities: shuffled(deck.quantities, random),
          checklists: shuffled(deck.checklists!, random).map((list) => ({
            ...list,
            items: shuffled(list.items, random),
          })),
          tables: shuffled(deck.tables!, random),
          notes: shuffled(deck.notes!, random),
        });
        expect(idsOf(procedure).sort()).toEqual(idsOf(small).sort());
      }),
      { numRuns: 25 },
    );
  });

  it('differ in what they expect after a value was edited', () => {
    const [far, ...rest] = smallDeck.gates;
    const altitude = { ...far!.values.altitude!, target: 610 };
    const procedure = changed({ gates: [{ ...far!, values: { ...far!.values, altitude } }, ...rest] });
    const edited = cardsOf(procedure).filter((card) => card.expected !== cardNamed(card.id).expected);
    expect(edited.map(({ id, expected }) => [id, expected])).toEqual([['value/far/altitude', '610\u00a0ft']]);
  });
});

describe('why an answer is right', () => {
  test.each([
    ['value/far/altitude', 'Room to descend.', 'book'],
    ['value/far/airspeed', null, 'notes'],
    ['limit/far/altitude/floor', 'Room to descend.', 'book'],
    ['limit/approach/sink/ceiling', 'The engine answers late.', 'notes'],
    ['order/gates', null, 'notes'],
    ['checklist/early-checks', 'Later there is no hand free.', 'notes'],
    ['checklist/late-checks', null, 'book'],
    ['response/early-checks/fuel', 'Two patterns.', 'notes'],
    ['response/early-checks/wind', 'Later there is no hand free.', 'notes'],
    ['complete-by/early-checks', 'Later there is no hand free.', 'notes'],
    ['rule/speed/fast', 'The nose is the brake.', 'book'],
    ['spot/deck-plan/spot-two', 'Half way.', 'notes'],
    ['note/first', null, 'notes'],
    ['note/height', null, 'book'],
  ])('%s: %s (%s)', (id, because, source) => {
    expect(groundOf(small, cardNamed(id))).toMatchObject({ because, source: { id: source } });
  });
});

describe('ids', () => {
  test.each(shipped)('%s: no two cards share one', (_file, procedure) => {
    const ids = idsOf(procedure);
    expect(ids.length).toBeGreaterThan(50);
    expect(new Set(ids).size).toBe(ids.length);
  });
});
