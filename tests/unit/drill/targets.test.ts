import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import { drawTwin } from '../../../src/drill/twin.ts';
import type { Targets } from '../../../src/drill/types.ts';
import { seeded } from '../../../src/rules/random.ts';
import type { Procedure, State } from '../../../src/rules/types.ts';
import { shipped } from '../cards/procedures.ts';
import { procedureOf, smallDeck, type SmallDeck } from '../rules/small-procedure.ts';
import { bruteForce, claimsOf, nameOf, notAmong, Seen, valuesOf } from './brute-force.ts';
import { plainDecide } from './plain-decide.ts';

/** Every state of a small procedure with every change of one input. */
function everything(procedure: Procedure, { box }: SmallDeck): Seen {
  const seen = new Seen(procedure);
  const rules = procedure.phases.get('here')!;
  let states: State[] = [{}];
  for (const id of Object.keys(box))
    states = states.flatMap((state) =>
      valuesOf(procedure, rules, id).map((value) => ({ ...state, [id]: value })),
    );
  for (const state of states)
    for (const id of Object.keys(box))
      for (const value of valuesOf(procedure, rules, id)) seen.note('here', state, id, value);
  return seen;
}

const closenesses = ['wide', 'near', 'edge'] as const;

/** Names of rules, inputs and edges of which what was drawn isn't what was asked for. */
function wrongDraws(procedure: Procedure, targets: Targets, seed: number): string[] {
  const random = seeded(seed);
  const { deck } = procedure;
  const wrong: string[] = [];
  for (const target of targets.rules)
    for (const closeness of closenesses) {
      const drawn = drawScenario(procedure, target, closeness, random);
      const decides = drawn && plainDecide(deck, target.phase, drawn.state).rules;
      if (!decides?.includes(`${target.table}/${target.rule}`)) wrong.push(`${nameOf(target)} ${closeness}`);
    }
  for (const target of targets.edges)
    for (const closeness of closenesses) {
      const drawn = drawScenario(procedure, target, closeness, random);
      const decides = drawn && plainDecide(deck, target.phase, drawn.state).rules;
      const there = drawn?.edge?.quantity === target.quantity && drawn.edge.side === target.side;
      if (!there || !decides?.includes(`${target.table}/${target.rule}`))
        wrong.push(`${nameOf(target)} ${target.quantity} ${target.side} ${closeness}`);
    }
  for (const target of targets.twins) {
    const twin = drawTwin(procedure, target, random);
    if (!twin || !isTwin(procedure, twin)) wrong.push(`${nameOf(target)} ${target.quantity} twin`);
  }
  return wrong;
}

function isTwin({ deck }: Procedure, twin: NonNullable<ReturnType<typeof drawTwin>>): boolean {
  const { phase, state, other, quantity, table, rule } = twin;
  const [here, there] = [plainDecide(deck, phase, state), plainDecide(deck, phase, other)];
  const differing = Object.keys(state).filter((id) => state[id] !== other[id]);
  return (
    differing.join() === quantity &&
    here.rules.includes(`${table}/${rule}`) &&
    !there.rules.includes(`${table}/${rule}`) &&
    JSON.stringify([here.overriding, here.actions]) !== JSON.stringify([there.overriding, there.actions])
  );
}

describe('the targets of small procedures', () => {
  it('are exactly those that trying every state and every change of it finds', () => {
    fc.assert(
      fc.property(smallDeck(2), (deck) => {
        const procedure = procedureOf(deck);
        const claims = claimsOf(targetsOf(procedure));
        const seen = everything(procedure, deck);
        expect([...claims.rules].sort()).toEqual([...seen.rules].sort());
        expect([...claims.inputs].sort()).toEqual([...seen.inputs].sort());
        expect([...claims.edges].sort()).toEqual([...seen.edges].sort());
      }),
      { numRuns: 150 },
    );
  });

  it('name every rule of every phase once, as reachable or with the reason why not', () => {
    fc.assert(
      fc.property(smallDeck(2), (deck) => {
        const { rules, unreachable } = targetsOf(procedureOf(deck));
        const named = [...rules, ...unreachable].map(nameOf).sort();
        const all = deck.tables.flatMap((table) => table.rules.map(({ id }) => `here ${table.id}/${id}`));
        expect(named).toEqual(all.sort());
      }),
      { numRuns: 100 },
    );
  });

  it('can all be drawn, at every closeness, from the states they name', () => {
    fc.assert(
      fc.property(smallDeck(3), fc.nat(), (deck, seed) => {
        const procedure = procedureOf(deck);
        expect(wrongDraws(procedure, targetsOf(procedure), seed)).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });

  it('have twins as close as any two states of the kind', () => {
    fc.assert(
      fc.property(smallDeck(2), fc.nat(), (deck, seed) => {
        const procedure = procedureOf(deck);
        const { twins } = targetsOf(procedure);
        for (const target of twins) {
          const twin = drawTwin(procedure, target, seeded(seed))!;
          const gap = Math.abs(twin.state[target.quantity]! - twin.other[target.quantity]!);
          expect(gap).toBe(leastGap(procedure, deck, target));
        }
      }),
      { numRuns: 40 },
    );
  });
});

function leastGap(procedure: Procedure, deck: SmallDeck, target: Targets['twins'][number]): number {
  const rules = procedure.phases.get('here')!;
  const { quantity } = target;
  const values = valuesOf(procedure, rules, quantity);
  const others = Object.keys(deck.box).filter((id) => id !== quantity);
  let states: State[] = [{}];
  for (const id of others)
    states = states.flatMap((state) => valuesOf(procedure, rules, id).map((v) => ({ ...state, [id]: v })));
  const name = `${nameOf(target)} ${quantity}`;
  let least = Infinity;
  for (const state of states)
    for (const one of values)
      for (const other of values) {
        if (Math.abs(one - other) >= least) continue;
        const seen = new Seen(procedure);
        seen.note('here', { ...state, [quantity]: one }, quantity, other);
        if (seen.inputs.has(name)) least = Math.abs(one - other);
      }
  return least;
}

describe.each(shipped)('the targets of %s', (_, procedure) => {
  const targets = targetsOf(procedure);

  it('are all reached: rules, edges and twins, at every closeness', () => {
    for (let seed = 0; seed < 5; seed++) expect(wrongDraws(procedure, targets, seed)).toEqual([]);
  });

  it('are what random states show, none more and no rule called unreachable among them', () => {
    const seen = bruteForce(procedure, 20_000, seeded(7));
    const claims = claimsOf(targets);
    expect(notAmong(seen.rules, claims.rules)).toEqual([]);
    expect(notAmong(seen.inputs, claims.inputs)).toEqual([]);
    expect(notAmong(seen.edges, claims.edges)).toEqual([]);
  });

  it('hold every rule that can decide, and at least one input for each of a deck whose tables are all needed', () => {
    expect(targets.rules.length).toBeGreaterThan(10);
    const withInput = new Set(targets.inputs.map(nameOf));
    expect(targets.rules.filter((rule) => !withInput.has(nameOf(rule)))).toEqual([]);
  });
});
