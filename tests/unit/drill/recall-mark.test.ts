import { describe, expect, it } from 'vitest';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import { promptForState } from '../../../src/cards/rule.ts';
import type { Answer, Prompt } from '../../../src/cards/types.ts';
import { quantityOf } from '../../../src/deck/lookup.ts';
import { coverage, edgeMissesIn, factsIn } from '../../../src/drill/coverage.ts';
import { markOfRecall } from '../../../src/drill/recall-mark.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { cardOf, targetsOf } from '../../../src/drill/targets.ts';
import { assess } from '../../../src/grading/assess.ts';
import type { Assessment } from '../../../src/grading/types.ts';
import { edgesOf } from '../../../src/rules/edges.ts';
import { seeded } from '../../../src/rules/random.ts';
import type { Procedure } from '../../../src/rules/types.ts';
import { shipped } from '../cards/procedures.ts';

function graded(procedure: Procedure, prompt: Prompt, answer: Answer): Assessment {
  const result = assess(procedure, prompt, answer, 1000, { desiredInARow: 0, timing: 1 });
  if (!result.ok) throw new Error(result.problem.message);
  return result.assessment;
}

const left: Answer = { form: 'controls', chosen: {} };

describe.each(shipped)('an answer in Recall, of %s', (_, procedure) => {
  const cards = cardsOf(procedure);
  const targets = targetsOf(procedure);

  it('to a rule’s card says in which phase it stood, and near which of the rule’s edges', () => {
    for (const [seed, card] of cards.filter(({ kind }) => kind === 'rule').entries()) {
      const prompt = promptFor(procedure, card, seed);
      if (prompt.ask.form !== 'controls') throw new Error('no controls');
      const { phase, state } = prompt.ask;
      const mark = markOfRecall(prompt, graded(procedure, prompt, left))!;
      expect(mark.phase).toBe(phase);
      expect(markOfRecall(prompt, graded(procedure, prompt, { form: 'none' }))).toEqual(mark);
      expect(mark.edge === undefined).toBe(mark.closeness === 'wide');
      if (!mark.edge) continue;
      const found = edgesOf(procedure, phase, state).find(({ quantity }) => quantity === mark.edge)!;
      const { step } = quantityOf(procedure.deck, mark.edge);
      expect(found[mark.side!]!.distance).toBeLessThanOrEqual(4 * step);
    }
  });

  it('is at an edge wherever a drill would say so and no other edge is nearer', () => {
    const random = seeded(2);
    for (const target of targets.edges.filter((_, i) => i % 5 === 0)) {
      const card = cards.find(({ id }) => id === cardOf(target))!;
      const { phase, state, edge } = drawScenario(procedure, target, 'near', random)!;
      const found = edgesOf(procedure, phase, state).find(({ quantity }) => quantity === target.quantity)!;
      // Another control's edge may be nearer along the same input, and hide the rule's.
      if (found[target.side]!.at !== edge!.at) continue;
      const prompt = promptForState(procedure, card, phase, state, 1);
      expect(markOfRecall(prompt, graded(procedure, prompt, left))!.edge).toBeDefined();
    }
  });

  it('counts for the rules and inputs drilled, and a miss for the edge', () => {
    const target = targets.edges.find(({ quantity, side, ...rule }) => {
      const { state } = drawScenario(procedure, { ...rule, quantity, side }, 'edge', seeded(1))!;
      const near = edgesOf(procedure, rule.phase, state).flatMap(({ below, above }) => [below, above]);
      return near.filter((edge) => edge && edge.distance <= 2).length === 1;
    })!;
    const { phase, state } = drawScenario(procedure, target, 'edge', seeded(1))!;
    const card = cards.find(({ id }) => id === cardOf(target))!;
    const prompt = promptForState(procedure, card, phase, state, 1);
    const { performance } = graded(procedure, prompt, { form: 'none' });
    const drill = markOfRecall(prompt, graded(procedure, prompt, { form: 'none' }))!;
    const facts = factsIn([[card.id, [{ performance, drill }]]]);
    const { rules, inputs, twins } = coverage(targets, facts);
    expect([rules.drilled, inputs.drilled, twins.drilled]).toEqual([1, 1, 0]);
    expect(edgeMissesIn(facts)(target)).toBe(1);
  });

  it('to any other card says nothing of the kind', () => {
    const prompt = promptFor(
      procedure,
      cards.find(({ kind }) => kind === 'value')!,
      1,
    );
    expect(markOfRecall(prompt, graded(procedure, prompt, { form: 'none' }))).toBeNull();
  });
});
