import { describe, expect, it } from 'vitest';
import { promptFor } from '../../../src/cards/registry.ts';
import type { Answer } from '../../../src/cards/types.ts';
import { assess } from '../../../src/grading/assess.ts';
import { cardNamed } from '../cards/procedures.ts';
import { workedProcedure } from '../cards/worked-deck.ts';

const procedure = workedProcedure();
// 24 kt of wind and 5 kt of way leave 31 of 60 kt.
const prompt = promptFor(procedure, cardNamed('worked/final-closure', procedure), 1);
const assessed = (answer: Answer, elapsedMs = 12_000) =>
  assess(procedure, prompt, answer, elapsedMs, { desiredInARow: 0, timing: 1 });

describe('the answer to a worked value', () => {
  it('is asked for 24 kt of wind and 5 kt of way', () => {
    expect(prompt.ask).toMatchObject({
      given: { day: { 'wind-speed': 24, 'wind-angle': 0, 'barge-speed': 5 } },
    });
  });

  it.each([
    ['31', 'desired', 'on target'],
    ['32 kt', 'desired', '1\u00a0kt fast'],
    ['35', 'adequate', '4\u00a0kt fast'],
    ['25', 'outside', '6\u00a0kt slow'],
  ])('%s is %s: %s', (text, performance, headline) => {
    expect(assessed({ form: 'number', text })).toMatchObject({
      ok: true,
      assessment: { performance, headline, expected: '31\u00a0kt', timeliness: 'prompt' },
    });
  });

  it('has half a minute, not the seconds of a value that is known', () => {
    expect(assessed({ form: 'number', text: '31' }, 40_000)).toMatchObject({
      assessment: { performance: 'desired', timeliness: 'late' },
    });
  });

  it('is told as a number when none was given, too', () => {
    expect(assessed({ form: 'none' })).toMatchObject({
      assessment: { performance: 'outside', expected: '31\u00a0kt' },
    });
  });

  it('is refused in another unit or out of range, and the prompt stays open', () => {
    expect(assessed({ form: 'number', text: '31 ft' })).toMatchObject({ problem: { code: 'wrong-unit' } });
    expect(assessed({ form: 'number', text: '400' })).toMatchObject({ problem: { code: 'out-of-range' } });
  });
});
