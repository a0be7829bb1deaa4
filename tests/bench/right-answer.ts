import type { Answer, Prompt } from '../../src/cards/types.ts';
import { decide } from '../../src/rules/decide.ts';
import type { Procedure } from '../../src/rules/types.ts';

/** What a pilot who knows it would answer. */
export function rightAnswer(procedure: Procedure, { ask }: Prompt): Answer {
  switch (ask.form) {
    case 'number':
      return { form: 'number', text: String(ask.band.target) };
    case 'sequence':
      return { form: 'sequence', chosen: ask.expected };
    case 'choice':
      return { form: 'choice', chosen: ask.correct };
    case 'controls': {
      const neutral = Object.fromEntries(ask.rows.map((row) => [row.id, row.neutral]));
      const { actions } = decide(procedure, ask.phase, ask.state);
      return { form: 'controls', chosen: { ...neutral, ...actions } };
    }
    case 'point':
      return { form: 'point', at: ask.spot.at };
    case 'text':
      return { form: 'text', text: ask.accept[0] ?? '' };
  }
}
