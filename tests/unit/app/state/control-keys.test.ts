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
  row('call', null, 2),
];
const chosen = Object.fromEntries(rows.map(({ id, neutral }) => [id, neutral]));

describe('keys for controls', () => {
  test('the first row of each axis has the arrows, the second letters, the others their initial', () => {
    expect(Object.fromEntries([...keysFor(rows)].map(([id, { shown }]) => [id, shown]))).toEqual({
      pitch: '← →',
      power: '↑ ↓',
      nozzle: 'W S',
      lineup: 'A D',
      call: 'C',
    });
  });

  test('no two rows share a key', () => {
    const many = [...rows, row('check', null), row('cue', null), row('pitch-trim', null)];
    const keys = [...keysFor(many).values()].flatMap(({ back, on }) => (back === null ? [on] : [back, on]));
    expect(keys).toHaveLength(12);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test.each([
    ['ArrowUp', { row: 'power', action: 'power-2' }],
    ['ArrowDown', { row: 'power', action: 'power-0' }],
    ['ArrowRight', { row: 'pitch', action: 'pitch-2' }],
    ['a', { row: 'lineup', action: 'lineup-0' }],
    ['W', { row: 'nozzle', action: 'nozzle-2' }],
    ['c', { row: 'call', action: 'call-0' }],
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
