import { describe, expect, it } from 'vitest';
import {
  calledOf,
  passLines,
  recentAnswers,
  tookOf,
  valueRows,
} from '../../../../src/app/state/record-view.ts';
import { quantityOf } from '../../../../src/deck/lookup.ts';
import { sayValue } from '../../../../src/deck/say.ts';
import type { Card } from '../../../../src/cards/types.ts';
import type { Call, CardHistory, PassEvent } from '../../../../src/record/types.ts';
import { shippedDeck } from '../../../reference/shipped-deck.ts';
import { evening, eveningMs, testIds } from '../../record/examples.ts';

const deck = shippedDeck('marram-recovery');
const ids = testIds();

const pass = (change: Partial<PassEvent>): PassEvent => ({
  kind: 'pass',
  id: ids.next(eveningMs),
  atMs: eveningMs,
  deck: deck.id,
  deckVersion: deck.version,
  fromGate: 'groove',
  seed: 1,
  roughness: 1,
  pace: 'real',
  end: 'complete',
  performance: 'adequate',
  gates: [],
  rules: [],
  gatesMissed: [],
  headline: 'Flown to the end.',
  ...change,
});

const rule = (missed: number) => ({
  card: `rule/a/${missed}`,
  asked: 4,
  missed,
  critical: false,
  expected: '',
});

describe('the passes on the record page', () => {
  it('are the newest first, so many at most', () => {
    const passes = [1, 2, 3].map((seed) => pass({ seed }));
    expect(passLines(deck, passes, 2).map(({ id }) => id)).toEqual([passes[2]!.id, passes[1]!.id]);
  });

  it.each([
    [{}, ''],
    [{ rules: [rule(0)] }, ''],
    [{ rules: [rule(1)] }, '1 rule missed'],
    [{ rules: [rule(1), rule(2), rule(0)] }, '2 rules missed'],
    [
      { rules: [rule(1)], gatesMissed: [{ gate: 'groove', quantities: ['sink'] }] },
      '1 rule missed, outside at 1 gate',
    ],
  ])('say what was missed: %j', (change, words) => {
    expect(passLines(deck, [pass(change)], 9)[0]).toMatchObject({ from: 'Groove', missed: words });
  });

  it('name a gate that the deck no longer has by its id', () => {
    expect(passLines(deck, [pass({ fromGate: 'gone' })], 9)[0]!.from).toBe('gone');
  });
});

describe('the last answers', () => {
  it('leave out calls made in a pass', () => {
    const calls = evening(2).map(({ id, ...event }, i): Call => ({
      event: id,
      ...event,
      ...(i === 0 ? { pass: true as const } : {}),
    }));
    const history: CardHistory = { memory: null, calls, desiredInARow: 0 };
    const card = { id: 'rule/a/b' } as Card;
    expect(recentAnswers([card], () => history, 9).map(({ call }) => call.event)).toEqual([calls[1]!.event]);
  });
});

describe('a value on the record page', () => {
  const gate = deck.gates.find(({ values }) => values['altitude'])!;
  const card = {
    id: `value/${gate.id}/altitude`,
    kind: 'value',
    gate: gate.id,
  } as Card;
  const { target } = gate.values['altitude']!;
  const call = (change: Partial<Call>): Call => ({
    event: ids.next(eveningMs),
    atMs: eveningMs,
    performance: 'outside',
    timeliness: 'prompt',
    elapsedMs: 1000,
    expected: `${target} ft`,
    ...change,
  });

  it('counts as outside only what was called, and the rest as without a call', () => {
    const calls = [call({}), call({ value: target + 300, signedError: 300 }), call({})];
    const history: CardHistory = { memory: null, calls, desiredInARow: 0 };
    const [row] = valueRows(deck, [card], () => history);
    expect(row).toMatchObject({ values: [target + 300], outside: 1, unanswered: 2, meanAbsoluteError: 300 });
  });

  it('says what was called beside what was due', () => {
    expect(calledOf(deck, card, call({ value: target + 50 }))).toBe(
      `Called ${sayValue(target + 50, quantityOf(deck, 'altitude'))}. Due: ${target} ft`,
    );
  });

  const wrong = { headline: 'wrong way on power', expected: 'less power' };
  it.each([
    [
      'the controls that were worked, and all that was due',
      { ...wrong, called: 'more power', due: 'come right, less power' },
      'Called more power. Due: come right, less power',
    ],
    [
      'what was called right, once',
      { performance: 'desired', headline: 'right', called: 'less power', expected: 'less power' },
      'Called less power, as due',
    ],
    ['how it went, where the call was not kept', wrong, 'Wrong way on power. Due: less power'],
    [
      'what was forgotten of a checklist',
      { headline: '2 of 3: flaps missing', expected: 'gear, flaps, hook' },
      '2 of 3: flaps missing. Due: gear, flaps, hook',
    ],
    [
      'that a checklist was right, without its items',
      { performance: 'desired', headline: 'all 3 in order', expected: 'gear, flaps, hook' },
      'All 3 in order',
    ],
    [
      'that nobody answered',
      { headline: 'no answer in time', expected: 'go around' },
      'No answer in time. Due: go around',
    ],
    ['what was due, of a record that keeps no more', { expected: 'nose up' }, 'Due: nose up'],
  ] as const)('says %s', (_, change, words) => {
    expect(calledOf(deck, { ...card, id: 'rule/a/b', kind: 'rule' }, call(change))).toBe(words);
  });

  it.each([
    ['prompt', '7.5 s'],
    ['late', '7.5 s, late'],
    ['timed-out', 'timed out'],
  ] as const)('says how long it took: %s', (timeliness, words) => {
    expect(tookOf(call({ timeliness, elapsedMs: 7500 }))).toBe(words);
  });
});
