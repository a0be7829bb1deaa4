import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, it } from 'vitest';
import Brief from '../../../src/app/pages/brief/Brief.svelte';
import Legs from '../../../src/app/pages/brief/Legs.svelte';
import type { Deck } from '../../../src/deck/types.ts';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;
const rowsOf = () => {
  const [head, ...rows] = within(screen.getByRole('table', { name: 'Legs between the gates' })).getAllByRole(
    'row',
  );
  return { head: head!, rows };
};
const textOf = (element: Element): string => element.textContent.replace(/\s+/g, ' ').trim();

describe('the table of legs', () => {
  it('has a row from each gate to the next, named by both', () => {
    render(Legs, { deck: marram });
    const { rows } = rowsOf();
    expect(rows.map((row) => textOf(within(row).getByRole('rowheader')))).toEqual(
      marram.gates.slice(1).map((gate, i) => `${i + 1}–${i + 2} ${marram.gates[i]!.label} to ${gate.label}`),
    );
  });

  it('has a head over every value', () => {
    render(Legs, { deck: marram });
    const { head, rows } = rowsOf();
    const count = within(head).getAllByRole('columnheader').length;
    for (const row of rows) expect(within(row).getAllByRole('cell')).toHaveLength(count - 1);
  });

  it('is worked out anew for another day', async () => {
    const { rerender } = render(Legs, { deck: marram });
    const before = textOf(rowsOf().rows[0]!);
    await rerender({ day: { 'ship-speed': 30 } });
    expect(textOf(rowsOf().rows[0]!)).not.toBe(before);
  });

  it('says beside a value which limit it passes', () => {
    const flying = { ...marram.flying!, most: { ...marram.flying!.most, bankDeg: 20 } };
    const { container } = render(Legs, { deck: { ...marram, flying } });
    const over = [...container.querySelectorAll('td.over')];
    expect(over).toHaveLength(2);
    for (const cell of over) expect(textOf(cell)).toContain('over 20°');
  });

  it('says why a leg is not worked out', () => {
    const { legs: _, ...flying } = marram.flying!;
    render(Legs, { deck: { ...marram, flying } });
    expect(screen.getAllByText('Not worked out: flown aside, and no time given.')).toHaveLength(2);
  });
});

describe('the briefing sheet', () => {
  it('writes the legs’ times on the plan, and their mean sink on the profile', () => {
    const { container } = render(Brief, { deck: marram });
    const notes = [...container.querySelectorAll('.plan g.legs text')].map(textOf);
    expect(notes).toContain('48 s');
    expect(notes.some((note) => /^\d+ s, 25°$/.test(note))).toBe(true);
  });

  it('has no legs for a deck that doesn’t say how they are flown', () => {
    const { flying: _, ...bare } = marram;
    const { container } = render(Brief, { deck: bare satisfies Deck });
    expect(screen.queryByRole('heading', { name: 'Legs' })).toBeNull();
    expect(container.querySelector('g.legs text')).toBeNull();
  });
});
