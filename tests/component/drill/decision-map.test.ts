import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import DecisionMap from '../../../src/app/parts/DecisionMap.svelte';
import MapPanel from '../../../src/app/prompt/MapPanel.svelte';
import { decisionMap } from '../../../src/drill/decision-map.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

const deck = shippedDecks.find(({ id }) => id === 'marram-recovery')!;
const procedure = compileRules(deck).procedure!;
const phase = 'abeam-leg';
/** Wide of the ship, else where it should be. */
const state = { altitude: 650, airspeed: 150, aoa: 9, range: 1.5, sink: 0 };
const map = decisionMap(procedure, phase, state, 'range', 'altitude');

describe('the decision map', () => {
  it('is a picture with a name, and says itself in words', () => {
    render(DecisionMap, { deck, phase, map, shown: state });
    const picture = screen.getByRole('img', {
      name: 'Decision map: Distance from the ship across, Altitude up',
    });
    const words = document.getElementById(picture.getAttribute('aria-describedby')!)!.textContent;
    expect(words).toContain(
      'You were at distance from the ship 1.5\u00a0nm and altitude 650\u00a0ft: come left.',
    );
    expect(words).toContain('At altitude 650\u00a0ft, distance from the ship:');
    expect(words).toMatch(
      /under \d\.\d\u00a0nm go around; [^;]+ come right; [^;]+ hold; over \d\.\d\u00a0nm come left\./,
    );
    expect(words).toContain('At distance from the ship 1.5\u00a0nm, altitude:');
  });

  it('has a word on each region, and hatches that differ', () => {
    const { container } = render(DecisionMap, { deck, phase, map, shown: state });
    const words = [...container.querySelectorAll('text.word')].map((word) =>
      [...word.querySelectorAll('tspan')].map(({ textContent }) => textContent).join(' '),
    );
    expect(words).toContain('go around');
    expect(words).toContain('hold');
    expect(words.length).toBeGreaterThanOrEqual(map.outcomes.length);
    const looks = new Map(
      [...container.querySelectorAll('rect[data-outcome]')].map((rect) => [
        rect.getAttribute('data-outcome'),
        rect.getAttribute('fill'),
      ]),
    );
    expect(new Set(looks.values()).size).toBe(map.outcomes.length);
    for (const fill of looks.values()) expect(container.querySelector(fill!.slice(4, -1))).not.toBeNull();
  });

  it('names both axes with their units', () => {
    render(DecisionMap, { deck, phase, map, shown: state });
    expect(screen.getByText(/Altitude, ft/)).toBeTruthy();
    expect(screen.getByText(/Distance from the ship, nm/)).toBeTruthy();
  });

  it('marks a twin that differs on the map, and says so of one that does not', async () => {
    const { rerender } = render(DecisionMap, {
      deck,
      phase,
      map,
      shown: state,
      twin: { ...state, range: 1.4 },
    });
    expect(screen.getByText('its twin, asked before')).toBeTruthy();
    await rerender({ twin: { ...state, sink: 210 } });
    expect(screen.queryByText('its twin, asked before')).toBeNull();
    expect(screen.getByText(/The twin differs in sink, which this map does not show/)).toBeTruthy();
  });

  it('says what is asked for all over it only once', () => {
    const fast = { ...state, aoa: 5 };
    render(DecisionMap, {
      deck,
      phase,
      map: decisionMap(procedure, phase, fast, 'range', 'altitude'),
      shown: fast,
    });
    expect(document.querySelector('.everywhere')!.textContent!.replace(/\s+/g, ' ').trim()).toBe(
      'Everywhere, short of go around: nose up. Besides:',
    );
    expect(screen.queryByText(/nose up, come/)).toBeNull();
  });
});

describe('the two inputs of the map', () => {
  it('can be picked, and change places when the other is picked twice', async () => {
    render(MapPanel, { procedure, phase, state });
    const up = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Up' });
    const across = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Across' });
    const before = [across.value, up.value];
    await userEvent.selectOptions(up, before[0]!);
    expect([across.value, up.value]).toEqual(before.toReversed());
    await userEvent.selectOptions(across, 'sink');
    expect(screen.getByRole('img').getAttribute('aria-labelledby')).toBeTruthy();
    expect(within(screen.getByRole('img')).getByText(/Decision map: Sink across/)).toBeTruthy();
  });

  it('begin with the one in which the twin differs', () => {
    render(MapPanel, { procedure, phase, state, twin: { ...state, aoa: 12 } });
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: 'Across' }).value).toBe('aoa');
  });
});
