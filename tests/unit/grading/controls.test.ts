import { describe, expect, it, test } from 'vitest';
import { promptForState } from '../../../src/cards/rule.ts';
import { cardNamed, changed } from '../cards/procedures.ts';
import { smallDeck } from '../cards/small-deck.ts';
import { correct, graded } from './small-calls.ts';

// Pitch: over 40 kt nose up, 10 to 40 hold, under 10 nose down. Power: sink over 400 more, else over 500 ft less,
// else hold. Under 150 ft go around, which beats the rest.
const highAndFast = { altitude: 600, closure: 60, sink: 100 };
const onProfile = { altitude: 300, closure: 20, sink: 100 };
const tooLow = { altitude: 120, closure: 60, sink: 500 };

describe('controls set in answer to a state', () => {
  test.each([
    [
      'all right',
      highAndFast,
      { pitch: 'nose-up', power: 'less-power', call: 'continue' },
      'desired',
      'every control right',
    ],
    [
      'all right, the neutral ones not touched',
      highAndFast,
      { pitch: 'nose-up', power: 'less-power' },
      'desired',
      'every control right',
    ],
    ['nothing called for, nothing done', onProfile, {}, 'desired', 'every control right'],
    [
      'the leading one right, another missed',
      highAndFast,
      { pitch: 'nose-up' },
      'adequate',
      'right on pitch, not on power',
    ],
    ['both missed', highAndFast, {}, 'outside', 'missed on pitch and power'],
    ['the leading one missed', highAndFast, { power: 'less-power' }, 'outside', 'missed on pitch: nose up'],
    [
      'the leading one the wrong way',
      highAndFast,
      { pitch: 'nose-down', power: 'less-power' },
      'outside',
      'wrong way on pitch',
    ],
    [
      'another one the wrong way',
      highAndFast,
      { pitch: 'nose-up', power: 'more-power' },
      'outside',
      'wrong way on power',
    ],
    [
      'both the wrong way',
      highAndFast,
      { pitch: 'nose-down', power: 'more-power' },
      'outside',
      'wrong way on pitch and power',
    ],
    [
      'a correction that is not called for',
      onProfile,
      { power: 'more-power' },
      'adequate',
      'right on pitch, not on power',
    ],
    ['going around without need', onProfile, { call: 'go-around' }, 'outside', 'go around: not needed here'],
    [
      'going around without need, all else right',
      highAndFast,
      { pitch: 'nose-up', power: 'less-power', call: 'go-around' },
      'outside',
      'go around: not needed here',
    ],
    ['going around in time', tooLow, { call: 'go-around' }, 'desired', 'right: go around'],
    [
      'going around, the rest not asked',
      tooLow,
      { call: 'go-around', pitch: 'nose-down', power: 'less-power' },
      'desired',
      'right: go around',
    ],
    [
      'going around missed',
      tooLow,
      { pitch: 'nose-up', power: 'more-power' },
      'outside',
      'missed: go around',
    ],
  ])('%s', (_name, state, chosen, performance, headline) => {
    expect(correct('approach', state, chosen as Record<string, string>)).toMatchObject({
      performance,
      headline,
    });
  });

  it('tells control by control what was right', () => {
    expect(correct('approach', highAndFast, { pitch: 'nose-up', power: 'more-power' }).detail).toMatchObject({
      form: 'controls',
      leading: 'pitch',
      missedOverriding: false,
      perControl: {
        pitch: { required: 'nose-up', chosen: 'nose-up', verdict: 'right' },
        power: { required: 'less-power', chosen: 'more-power', verdict: 'opposite' },
        call: { required: 'continue', chosen: 'continue', verdict: 'right' },
      },
    });
  });

  it('asks for nothing beside the overriding action', () => {
    expect(correct('approach', tooLow, { call: 'go-around', pitch: 'nose-down' }).detail).toMatchObject({
      leading: 'call',
      perControl: {
        pitch: { required: null, chosen: 'nose-down', verdict: 'not-asked' },
        power: { required: null, verdict: 'not-asked' },
        call: { required: 'go-around', verdict: 'right' },
      },
    });
  });

  it('takes a missed overriding action as critical, whatever the card', () => {
    expect(correct('approach', tooLow, {})).toMatchObject({
      critical: true,
      detail: { missedOverriding: true },
    });
    expect(correct('approach', onProfile, { call: 'go-around' })).toMatchObject({ critical: false });
  });

  it('gives the reason of what went wrong, the leading control first', () => {
    const powerMissed = correct('approach', highAndFast, { pitch: 'nose-up' });
    expect(powerMissed).toMatchObject({ because: 'High is high all the way.', source: { id: 'notes' } });
    const bothMissed = correct('approach', highAndFast, {});
    expect(bothMissed).toMatchObject({ because: 'The nose is the brake.', source: { id: 'book' } });
    expect(correct('approach', tooLow, {})).toMatchObject({ because: 'Too low to go on.' });
  });

  it('gives the reason of the leading control before that of an earlier one', () => {
    const state = { altitude: 300, closure: 20, sink: 500 };
    const { because, detail } = correct('approach', state, { pitch: 'nose-up', power: 'hold-power' });
    expect(detail).toMatchObject({ leading: 'power', perControl: { pitch: { verdict: 'wrong' } } });
    expect(because).toBe('Stop the sink.');
  });

  it('takes an action that may override for right where it is asked for without overriding', () => {
    const [speed, height, abandon] = smallDeck.tables!;
    const climbAway = {
      ...abandon!,
      control: 'power',
      rules: [{ ...abandon!.rules[0]!, then: 'more-power' }],
    };
    const procedure = changed({ tables: [speed!, height!, climbAway] });
    const card = cardNamed('rule/height/steep', procedure);
    const power = (altitude: number, sink: number, action: string) => {
      const prompt = promptForState(procedure, card, 'approach', { altitude, closure: 20, sink }, 1);
      return graded(prompt, { form: 'controls', chosen: { power: action } }, procedure);
    };
    expect(power(300, 500, 'more-power')).toMatchObject({
      performance: 'desired',
      headline: 'every control right',
    });
    expect(power(300, 100, 'more-power')).toMatchObject({ headline: 'more power: not needed here' });
    expect(power(120, 100, 'hold-power')).toMatchObject({ headline: 'missed: more power', critical: true });
  });

  it('is outside, and critical, when what a critical rule asks for is missed, however right the leading control', () => {
    // Fast and sinking hard: pitch leads, the power is critical.
    const state = { altitude: 300, closure: 60, sink: 450 };
    const missed = correct('approach', state, { pitch: 'nose-up', power: 'hold-power' });
    expect(missed).toMatchObject({ performance: 'outside', critical: true });
    const right = correct('approach', state, { pitch: 'nose-up', power: 'more-power' });
    expect(right).toMatchObject({ performance: 'desired' });
  });

  it('gives the card’s own reason when nothing went wrong', () => {
    const chosen = { pitch: 'nose-up', power: 'less-power' };
    expect(correct('approach', highAndFast, chosen, 'rule/height/high').because).toBe(
      'High is high all the way.',
    );
    expect(correct('approach', highAndFast, chosen, 'rule/speed/fast').because).toBe(
      'The nose is the brake.',
    );
  });

  test.each([
    ['corrections and what to hold', highAndFast, 'nose up, less power'],
    ['what to hold alone', onProfile, 'hold the nose, hold power'],
    ['the overriding action alone', tooLow, 'go around'],
  ])('expects %s', (_name, state, expected) => {
    expect(correct('approach', state, {}).expected).toBe(expected);
  });

  it('grades by the phase’s own controls', () => {
    expect(correct('arrival', { altitude: 200, closure: 50 }, { pitch: 'nose-up' })).toMatchObject({
      performance: 'desired',
      expected: 'nose up',
    });
  });

  it('tells how far the state lies from the edges of the decision', () => {
    const { detail } = correct('approach', highAndFast, {});
    if (detail.form !== 'controls') throw new Error(detail.form);
    const closure = detail.edges.find(({ quantity }) => quantity === 'closure');
    expect(closure?.below).toMatchObject({ at: 40, distance: 20 });
    expect(closure?.above).toBeNull();
  });
});
