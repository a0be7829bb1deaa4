import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import Brief from '../../../src/app/pages/brief/Brief.svelte';
import type { Deck } from '../../../src/deck/types.ts';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;

describe.each(shippedDecks.map((deck) => ({ title: deck.title, deck })))(
  'the briefing sheet of “$title”',
  ({ deck }) => {
    it('shows title, every caution and every source', () => {
      render(Brief, { deck });
      expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(deck.title);
      const cautions = screen.getByRole('complementary', { name: 'Cautions' });
      for (const caution of deck.cautions) expect(cautions.textContent).toContain(caution.trim());
      for (const source of deck.sources) expect(screen.getAllByText(source.title).length).toBeGreaterThan(0);
    });

    it('has a row with the values of every gate', () => {
      render(Brief, { deck });
      const rows = within(screen.getByRole('table', { name: 'Values at each gate' }))
        .getAllByRole('row')
        .slice(1);
      expect(rows).toHaveLength(deck.gates.length);
      deck.gates.forEach((gate, i) => {
        expect(rows[i]!.textContent).toContain(gate.label);
        const targets = rows[i]!.querySelectorAll('.target');
        expect(targets).toHaveLength(Object.keys(gate.values).length);
      });
    });

    it('tells every rule and its reason, under the phases it holds in', () => {
      const { container } = render(Brief, { deck });
      const reasons = [...container.querySelectorAll('.because')].map((element) => element.textContent);
      for (const table of deck.tables ?? [])
        for (const rule of table.rules) expect(reasons).toContain(rule.because);
    });
  },
);

describe('the gate shown in full', () => {
  it('is the first one at the start, or the one asked for', () => {
    const { unmount } = render(Brief, { deck: marram });
    expect(screen.getByRole('heading', { level: 2, name: 'Initial' })).toBeTruthy();
    unmount();
    render(Brief, { deck: marram, gate: 'abeam' });
    expect(screen.getByRole('heading', { level: 2, name: 'Abeam' })).toBeTruthy();
  });

  it('changes with the picture, the table and the buttons to its neighbours', async () => {
    render(Brief, { deck: marram });
    await userEvent.click(screen.getByRole('button', { name: /^Gate 7 Groove/ }));
    expect(screen.getByRole('heading', { level: 2, name: 'Groove' })).toBeTruthy();
    await userEvent.click(
      within(screen.getByRole('table', { name: 'Values at each gate' })).getByRole('button', {
        name: /Abeam/,
      }),
    );
    expect(screen.getByRole('heading', { level: 2, name: 'Abeam' })).toBeTruthy();
    const steps = within(screen.getByRole('navigation', { name: 'Gates' }));
    await userEvent.click(steps.getByRole('button', { name: '5 Turn-in' }));
    expect(screen.getByRole('heading', { level: 2, name: 'Turn-in' })).toBeTruthy();
  });

  it('says what must be complete by there', () => {
    render(Brief, { deck: marram, gate: 'abeam' });
    const { items } = marram.checklists!.find(({ completeBy }) => completeBy === 'abeam')!;
    expect(screen.getByText(`complete by here, ${items.length} items.`, { exact: false })).toBeTruthy();
  });
});

describe('a mark of a source', () => {
  it('leads to its place in the list without touching the address', async () => {
    const circuit = shippedDecks.find((deck) => deck.id === 'light-aircraft-circuit')!;
    const { container } = render(Brief, { deck: circuit });
    const before = location.href;
    const [mark] = within(screen.getByRole('table', { name: 'Values at each gate' })).getAllByRole('link', {
      name: /^source \d+$/,
    });
    await userEvent.click(mark!);
    expect(location.href).toBe(before);
    const number = Number(/\d+/.exec(mark!.textContent)![0]);
    expect(document.activeElement).toBe(container.querySelector(`#source-${number}`));
    expect(document.activeElement?.textContent).toContain(circuit.sources[number - 1]!.title);
  });
});

describe('the briefing sheet', () => {
  it('prints when asked, and offers no print where there is none', async () => {
    const onprint = vi.fn();
    const { rerender } = render(Brief, { deck: marram, onprint });
    await userEvent.click(screen.getByRole('button', { name: 'Print' }));
    expect(onprint).toHaveBeenCalledOnce();
    await rerender({ onprint: undefined });
    expect(screen.queryByRole('button', { name: 'Print' })).toBeNull();
  });

  it('unfolds all corrections on paper, and folds them again after', async () => {
    const { container } = render(Brief, { deck: marram });
    const open = (): number => container.querySelectorAll('details[open]').length;
    expect(open()).toBe(0);
    window.dispatchEvent(new Event('beforeprint'));
    await vi.waitFor(() => expect(open()).toBe(marram.phases!.length));
    window.dispatchEvent(new Event('afterprint'));
    await vi.waitFor(() => expect(open()).toBe(0));
  });

  it('begins with links to its parts; one to a phase unfolds it', async () => {
    const { container } = render(Brief, { deck: marram });
    const contents = within(container.querySelector<HTMLElement>('nav[aria-label="On this sheet"]')!);
    for (const label of ['Gates', 'Values', 'Checklists', 'Corrections', 'Sources'])
      expect(contents.getByRole('link', { name: label, hidden: true })).toBeTruthy();
    const before = location.href;
    const { label } = marram.phases![1]!;
    await userEvent.click(contents.getByRole('link', { name: label, hidden: true }));
    expect(location.href).toBe(before);
    const unfolded = container.querySelectorAll('details[open]');
    expect([...unfolded].map((one) => one.querySelector('h3')?.textContent)).toEqual([label]);
    expect(document.activeElement).toBe(unfolded[0]!.querySelector('summary'));
  });

  it('leaves out what the deck does not have', () => {
    const { checklists: _c, phases: _p, tables: _t, day: _d, summary: _s, plates: _l, ...rest } = marram;
    const bare: Deck = { ...rest, gates: marram.gates.slice(0, 1) };
    render(Brief, { deck: bare });
    expect(screen.queryByRole('heading', { name: 'Checklists' })).toBeNull();
    expect(screen.queryByRole('heading', { name: 'Corrections' })).toBeNull();
    expect(screen.getByRole('heading', { level: 2, name: 'Initial' })).toBeTruthy();
  });
});
