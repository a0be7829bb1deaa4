import { describe, expect, it } from 'vitest';
import { edgeSentences } from '../../../src/app/prompt/edge-sentences.ts';
import { decide } from '../../../src/rules/decide.ts';
import { edgesOf } from '../../../src/rules/edges.ts';
import type { State } from '../../../src/rules/types.ts';
import { procedureOf } from '../../reference/passes.ts';

const procedure = procedureOf('marram-recovery');
const said = (phase: string, state: State): string =>
  edgeSentences(procedure.deck, phase, {
    decision: decide(procedure, phase, state),
    edges: edgesOf(procedure, phase, state),
  })
    .join(' ')
    // Numbers hold on to their units.
    .replaceAll('\u00a0', ' ');

describe('the edges near a state', () => {
  const settled = { across: 40, drift: 3, altitude: 132, sink: 20 };

  it('are said by the side of a value that is said by its side: more of it is further to that side', () => {
    expect(said('crossing', { ...settled, closure: -6 })).toContain('falling back 6 kt; any more and it is');
    const sliding = { across: 45, drift: 4, altitude: 127, sink: 0 };
    expect(said('crossing', { ...sliding, closure: -5 })).toContain(
      'the edge is falling back 6 kt, 1 kt more; past it',
    );
  });

  it('are said as they read otherwise', () => {
    expect(said('crossing', { ...settled, closure: 6 })).toContain('6 kt; any more and it is');
  });
});
