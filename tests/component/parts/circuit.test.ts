import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import CircuitPicture from '../../../src/app/parts/CircuitPicture.svelte';
import HeightProfile from '../../../src/app/parts/HeightProfile.svelte';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;

describe('the circuit picture', () => {
  it('says in words what it shows and where you are', () => {
    render(CircuitPicture, { deck: marram, current: 'abeam' });
    const picture = screen.getByRole('img', { name: /circuit from above/ });
    expect(picture.getAttribute('aria-label')).toContain('You are at gate 4, Abeam');
    expect(picture.getAttribute('aria-label')).toContain("ship's course up");
  });

  it('puts the numbers of gates over one point under each other, at that point', () => {
    const { container } = render(CircuitPicture, { deck: marram, heightPx: 440, widthPx: 400 });
    const numberAt = (number: string) => {
      const text = [...container.querySelectorAll('text.number')].find((one) => one.textContent === number)!;
      return { x: Number(text.getAttribute('x')), y: Number(text.getAttribute('y')) };
    };
    const [over, down] = [numberAt('12'), numberAt('13')];
    expect(over.x).toBe(down.x);
    expect(down.y - over.y).toBeGreaterThan(13);
    const stack = container.querySelector('rect.stack')!;
    const middle = Number(stack.getAttribute('y')) + Number(stack.getAttribute('height')) / 2;
    expect((over.y + down.y) / 2).toBeCloseTo(middle);
  });

  it('names only the current gate where there are too many for all', () => {
    const gates = Array.from({ length: 120 }, (_, i) => {
      const angle = (i / 120) * 2 * Math.PI;
      const position = { aheadFt: 9000 * Math.cos(angle), rightFt: 5000 * Math.sin(angle), courseDeg: 0 };
      return { ...marram.gates[0]!, id: `gate-${i}`, label: `Name ${i}`, position };
    });
    const { container } = render(CircuitPicture, {
      deck: { ...marram, gates },
      current: 'gate-7',
      labels: 'all',
    });
    expect([...container.querySelectorAll('text.name')].map((name) => name.textContent)).toEqual(['Name 7']);
    expect(container.querySelectorAll('text.number')).toHaveLength(120);
  });

  it('says when distances are not true', () => {
    render(CircuitPicture, { deck: marram });
    expect(screen.getByText(/Not to scale/)).toBeTruthy();
  });

  it('has one button a gate, of which the current one is reached by Tab', async () => {
    const onselect = vi.fn();
    render(CircuitPicture, { deck: marram, current: 'groove', onselect });
    const gates = screen.getAllByRole('button');
    expect(gates).toHaveLength(marram.gates.length);
    await userEvent.tab();
    expect(document.activeElement).toBe(screen.getByRole('button', { name: /Gate 7 Groove/ }));
    expect(document.activeElement?.getAttribute('aria-pressed')).toBe('true');
  });

  it('goes from gate to gate by arrow key, round the end, and selects by Enter and Space', async () => {
    const onselect = vi.fn();
    render(CircuitPicture, { deck: marram, current: 'initial', onselect });
    await userEvent.tab();
    await userEvent.keyboard('{ArrowRight}{Enter}');
    expect(onselect).toHaveBeenLastCalledWith('break');
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft} ');
    expect(onselect).toHaveBeenLastCalledWith('touchdown');
  });

  it('keeps the keys it uses from the page', async () => {
    const onPage = vi.fn();
    document.addEventListener('keydown', onPage);
    render(CircuitPicture, { deck: marram, current: 'initial', onselect: () => {} });
    await userEvent.tab();
    onPage.mockClear();
    await userEvent.keyboard('{Enter}');
    expect(onPage).not.toHaveBeenCalled();
    await userEvent.keyboard('p');
    expect(onPage).toHaveBeenCalledOnce();
    document.removeEventListener('keydown', onPage);
  });

  it('selects by pointer', async () => {
    const onselect = vi.fn();
    render(CircuitPicture, { deck: marram, onselect });
    await userEvent.click(screen.getByRole('button', { name: /Gate 4 Abeam/ }));
    expect(onselect).toHaveBeenCalledExactlyOnceWith('abeam');
  });

  it('tells how a gate went', () => {
    render(CircuitPicture, { deck: marram, marks: { abeam: 'adequate' }, onselect: () => {} });
    expect(screen.getByRole('button', { name: 'Gate 4 Abeam, adequate' })).toBeTruthy();
  });

  it('folds to the current gate and its neighbours', () => {
    render(CircuitPicture, { deck: marram, current: 'groove', compact: true });
    const steps = within(screen.getByRole('list', { name: 'Where you are' })).getAllByRole('listitem');
    expect(steps.map((step) => step.textContent?.replace(/\s+/g, ' ').trim())).toEqual([
      '6 The ninety',
      '7 Groove',
      '8 Deceleration',
    ]);
    expect(steps[1]!.getAttribute('aria-current')).toBe('step');
  });

  it.each([
    ['initial', '1 Initial'],
    ['touchdown', '13 Touchdown'],
  ])('keeps three gates in the fold at the end, at %s', (current, own) => {
    render(CircuitPicture, { deck: marram, current, compact: true });
    const steps = screen.getAllByRole('listitem');
    expect(steps).toHaveLength(3);
    const here = steps.find((step) => step.getAttribute('aria-current') === 'step');
    expect(here?.textContent?.replace(/\s+/g, ' ').trim()).toBe(own);
  });
});

describe('the height profile', () => {
  it('names every height', () => {
    render(HeightProfile, { deck: marram });
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain('Abeam 650\u00a0ft');
    expect(screen.getByText('340')).toBeTruthy();
  });

  it('gives no height away when numbers are off', () => {
    const { container } = render(HeightProfile, { deck: marram, numbers: false });
    expect(container.textContent).not.toContain('650');
    expect(screen.getByRole('img').getAttribute('aria-label')).not.toMatch(/\d/);
  });

  it('draws no heights while one of them is asked: the same picture for any heights', () => {
    const flat = {
      ...marram,
      gates: marram.gates.map((gate) => ({
        ...gate,
        values: Object.fromEntries(
          Object.entries(gate.values).map(([id, band]) => [
            id,
            id === marram.reference.height
              ? { target: 9, desired: [9, 9] as const, adequate: [9, 9] as const }
              : band,
          ]),
        ),
      })),
    };
    const html = (deck: typeof marram) =>
      render(HeightProfile, { deck, current: 'abeam', shape: false }).container.querySelector('svg')!
        .innerHTML;
    expect(html(marram)).toBe(html(flat));
  });
});
