import { describe, expect, test } from 'vitest';
import { keysFor, moveFor } from '../../../../src/app/state/control-keys.ts';
import type { ControlRow } from '../../../../src/cards/types.ts';

const row = (id: string, axis: ControlRow['axis'], count = 3): ControlRow => ({
  id,
  label: id,
  axis,
  actions: Array.from({ length: count }, (_, i) => ({ id: `${id}-${i}`, label: `${i}` })),
  neutral: `${id}-1`,
});
const rows = [
  row('pitch', 'horizontal'),
  row('power', 'vertical'),
  row('nozzle', 'vertical'),
  row('lineup', 'horizontal'),
  {
    id: 'call',
    label: 'Call',
    axis: null,
    actions: [
      { id: 'continue', label: 'Continue' },
      { id: 'go-around', label: 'Go around' },
    ],
    neutral: 'continue',
  } satisfies ControlRow,
];
const chosen = Object.fromEntries(rows.map(({ id, neutral }) => [id, neutral]));

describe('keys for controls', () => {
  test('the first row of each axis has the arrows, the second letters, the others their own', () => {
    const shown = [...keysFor(rows)].map(([id, keys]) => [id, keys.shown || [...keys.direct!.values()]]);
    expect(Object.fromEntries(shown)).toEqual({
      pitch: '← →',
      power: '↑ ↓',
      nozzle: 'W S',
      lineup: 'A D',
      call: ['c', 'g'],
    });
  });

  test('going around is one key away', () => {
    expect(moveFor('g', rows, chosen, keysFor(rows))).toEqual({ row: 'call', action: 'go-around' });
    expect(moveFor('G', rows, { ...chosen, call: 'go-around' }, keysFor(rows))).toEqual({
      row: 'call',
      action: 'go-around',
    });
    expect(moveFor('c', rows, { ...chosen, call: 'go-around' }, keysFor(rows))).toEqual({
      row: 'call',
      action: 'continue',
    });
  });

  test('one key steps through the actions where they have no letters left', () => {
    const numbered = [row('lever', null, 2)];
    expect(keysFor([{ id: 'lever', label: 'Lever' }]).get('lever')).toEqual({
      back: null,
      on: 'l',
      shown: 'L',
    });
    const same = [{ ...row('xx', null, 2), actions: ['a', 'b'].map((id) => ({ id, label: 'X' })) }];
    const keys = keysFor(same);
    expect(moveFor('x', same, { xx: 'a' }, keys)).toEqual({ row: 'xx', action: 'b' });
    expect(moveFor('x', same, { xx: 'b' }, keys)).toEqual({ row: 'xx', action: 'a' });
    expect(keysFor(numbered).get('lever')!.direct!.size).toBe(2);
  });

  test('no two rows share a key', () => {
    const many = [...rows, row('check', null), row('cue', null), row('pitch-trim', null)];
    const keys = [...keysFor(many).values()].flatMap(({ back, on, direct }) =>
      direct ? [...direct.values()] : back === null ? [on] : [back, on],
    );
    expect(keys.length).toBeGreaterThanOrEqual(13);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test.each([
    ['ArrowUp', { row: 'power', action: 'power-2' }],
    ['ArrowDown', { row: 'power', action: 'power-0' }],
    ['ArrowRight', { row: 'pitch', action: 'pitch-2' }],
    ['a', { row: 'lineup', action: 'lineup-0' }],
    ['W', { row: 'nozzle', action: 'nozzle-2' }],
    ['c', { row: 'call', action: 'continue' }],
    ['q', null],
  ])('%s', (key, move) => {
    expect(moveFor(key, rows, chosen, keysFor(rows))).toEqual(move);
  });

  test('a pair of keys stops at the ends', () => {
    expect(moveFor('ArrowUp', rows, { ...chosen, power: 'power-2' }, keysFor(rows))).toEqual({
      row: 'power',
      action: 'power-2',
    });
  });

  test('a key means the same in a phase that shows fewer controls, and nothing where its control is away', () => {
    const keys = keysFor(rows);
    const few = rows.filter(({ id }) => id === 'nozzle' || id === 'lineup');
    expect(moveFor('d', few, chosen, keys)).toEqual({ row: 'lineup', action: 'lineup-2' });
    expect(moveFor('ArrowUp', few, chosen, keys)).toBeNull();
  });
});
