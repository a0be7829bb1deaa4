/** Answers to cards of the small deck, graded. */
import { promptFor } from '../../../src/cards/registry.ts';
import { promptForState } from '../../../src/cards/rule.ts';
import type { Answer, Prompt } from '../../../src/cards/types.ts';
import { assess } from '../../../src/grading/assess.ts';
import type { AssessContext, Assessment } from '../../../src/grading/types.ts';
import type { Procedure, State } from '../../../src/rules/types.ts';
import { cardNamed, small } from '../cards/procedures.ts';

export const untroubled: AssessContext = { desiredInARow: 0, timing: 1 };

export function graded(prompt: Prompt, answer: Answer, procedure: Procedure = small): Assessment {
  const result = assess(procedure, prompt, answer, 3_000, untroubled);
  if (!result.ok) throw new Error(result.problem.message);
  return result.assessment;
}

/** A number called for a value or limit card. */
export const call = (id: string, text: string): Assessment =>
  graded(promptFor(small, cardNamed(id), 1), { form: 'number', text });

/** Controls set in a given state of a phase. */
export const correct = (
  phase: string,
  state: State,
  chosen: Readonly<Record<string, string>>,
  card = 'rule/speed/fast',
): Assessment =>
  graded(promptForState(small, cardNamed(card), phase, state, 1), { form: 'controls', chosen });
