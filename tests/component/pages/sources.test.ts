import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import Sources from '../../../src/app/pages/sources/Sources.svelte';
import { publishedValues } from '../../../src/reference/published.ts';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

const circuit = shippedDecks.find(({ id }) => id === 'light-aircraft-circuit')!;
const [first] = publishedValues.filter(({ compute }) => compute);
const fact = publishedValues.find(({ compute }) => !compute)!;

const arithmetic = (computed: number | null) => ({
  computedFor: (id: string) => (id === first!.id ? computed : null),
  formulaOf: () => 'speed × sin(angle)',
});

function rowOf(text: string): HTMLElement {
  const table = screen.getByRole('table', { name: 'Published values and what is worked out here' });
  return within(table)
    .getAllByRole('row')
    .find((row) => row.textContent?.toLowerCase().includes(text.toLowerCase()))!;
}

describe('the page of sources', () => {
  it('lists each source of the deck once, with its kind and what rests on it', () => {
    render(Sources, { deck: circuit });
    const list = screen.getByRole('heading', { name: 'This deck’s sources' }).parentElement!;
    const entries = within(list).getAllByRole('listitem');
    expect(entries).toHaveLength(circuit.sources.length);
    circuit.sources.forEach((source, i) => {
      expect(entries[i]!.textContent).toContain(source.title);
      expect(entries[i]!.textContent).toContain(source.kind);
      if (source.place) expect(entries[i]!.textContent).toContain(source.place);
      expect(entries[i]!.textContent).toMatch(
        /\d+ (value|limit|checklist|correction|note|plate|chart|formula)/,
      );
    });
  });

  it('shows every published value under its topic', () => {
    render(Sources, { deck: circuit });
    const topics = new Set(publishedValues.map(({ topic }) => topic));
    const table = screen.getByRole('table', { name: /Published values/ });
    expect(within(table).getAllByRole('row')).toHaveLength(publishedValues.length + topics.size + 1);
    expect(within(screen.getByRole('navigation', { name: 'Topics' })).getAllByRole('link')).toHaveLength(
      topics.size,
    );
  });

  it('says that a value agrees, with what was worked out and how', () => {
    render(Sources, { deck: circuit, values: [first!, fact], arithmetic: arithmetic(first!.value) });
    const row = rowOf(first!.what);
    expect(row.textContent).toContain('agrees');
    expect(row.textContent).toContain('speed × sin(angle)');
    expect(
      screen.getByText(/Of 2 published values 1 can be worked out here, and every one agrees/),
    ).toBeTruthy();
    expect(rowOf(fact.what).textContent).toContain('as it stands');
  });

  it('does not hide a difference', () => {
    const off = first!.value + first!.tolerance + 1;
    render(Sources, { deck: circuit, values: [first!], arithmetic: arithmetic(off) });
    expect(rowOf(first!.what).textContent).toContain('differs by');
    expect(screen.getByText(/0 agree within their tolerance, 1 differs\./)).toBeTruthy();
  });

  it('goes to a topic without touching the address', async () => {
    render(Sources, { deck: circuit });
    const before = location.href;
    await userEvent.click(screen.getByRole('link', { name: /^Wind over deck/ }));
    expect(location.href).toBe(before);
    expect(document.activeElement?.textContent?.trim()).toBe('Wind over deck');
  });
});
