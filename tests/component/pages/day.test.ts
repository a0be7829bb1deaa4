import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import Brief from '../../../src/app/pages/brief/Brief.svelte';
import { isOwn, soundDay, type DayInHand } from '../../../src/app/state/day-set.ts';
import { deckOfDay } from '../../../src/day/deck-of-day.ts';
import type { Deck } from '../../../src/deck/types.ts';
import type { DaySet } from '../../../src/record/types.ts';
import { formulaDeck, narrowDeck } from '../formula-deck.ts';

/** The sheet in a page that takes what is set, as the app does. */
function briefOf(own: Deck): { readonly set: () => DaySet } {
  let now: DaySet = {};
  const day = (set: DaySet): { deck: Deck; day: DayInHand } => {
    const today = isOwn(set) ? null : deckOfDay(own, set);
    return { deck: today?.deck ?? own, day: { own, set, today, onset } };
  };
  const onset = (wanted: DaySet): void => {
    now = soundDay(own, wanted);
    void rerender(day(now));
  };
  const { rerender } = render(Brief, day({}));
  return { set: () => now };
}

const card = (): ReturnType<typeof within> => within(screen.getByRole('region', { name: 'The day' }));
const wind = (): HTMLInputElement => card().getByRole('spinbutton', { name: 'Wind' });
const back = (): HTMLElement | null => card().queryByRole('button', { name: 'Back to the deck’s day' });
const valueRow = (): HTMLElement =>
  within(screen.getByRole('table', { name: 'Values at each gate' })).getAllByRole('row')[1]!;
const plain = (element: HTMLElement): string =>
  element.textContent.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');

async function type(text: string): Promise<void> {
  await userEvent.clear(wind());
  await userEvent.type(wind(), `${text}{Enter}`);
}

describe('a setting of the day', () => {
  it('is the deck’s own at first, with its range beside it and no way back needed', () => {
    briefOf(formulaDeck);
    expect(wind().value).toBe('10');
    expect(wind().getAttribute('aria-valuetext')).toBe('10\u00a0kt');
    expect(document.getElementById(wind().getAttribute('aria-describedby')!)?.textContent).toContain(
      '0 to 30',
    );
    expect(back()).toBeNull();
  });

  it('is set by typing, and by leaving the field', async () => {
    const brief = briefOf(formulaDeck);
    await type('18');
    expect(brief.set()).toEqual({ wind: 18 });
    await userEvent.clear(wind());
    await userEvent.type(wind(), '20 kt');
    await userEvent.tab();
    expect(brief.set()).toEqual({ wind: 20 });
    expect(wind().value).toBe('20');
  });

  it('goes up and down by steps, with keys and with buttons, to the ends of its range', async () => {
    const brief = briefOf(formulaDeck);
    wind().focus();
    await userEvent.keyboard('{ArrowUp}{ArrowUp}{ArrowDown}');
    expect(brief.set()).toEqual({ wind: 11 });
    await userEvent.keyboard('{PageUp}');
    expect(brief.set()).toEqual({ wind: 16 });
    const setting = within(card().getByRole('group', { name: 'Wind' }));
    await userEvent.click(setting.getByRole('button', { name: /1\s+kt less/ }));
    expect(brief.set()).toEqual({ wind: 15 });
    for (let i = 0; i < 5; i++) {
      wind().focus();
      await userEvent.keyboard('{PageUp}');
    }
    expect(brief.set()).toEqual({ wind: 30 });
    expect(setting.getByRole('button', { name: /1\s+kt more/ }).getAttribute('aria-disabled')).toBe('true');
  });

  it.each([
    ['80', '80 kt is outside what wind can be (0 to 30 kt).'],
    ['much', '“much” is not a number'],
    ['20 ft', 'Wind is called in kt'],
  ])('refuses %s, says why, and lets the day stand', async (typed, why) => {
    const brief = briefOf(formulaDeck);
    await type('18');
    await type(typed);
    expect(plain(card().getByRole('alert'))).toContain(why);
    expect(wind().getAttribute('aria-invalid')).toBe('true');
    expect(wind().value).toBe(typed);
    expect(brief.set()).toEqual({ wind: 18 });
    await userEvent.keyboard('{Escape}');
    expect(card().queryByRole('alert')).toBeNull();
    expect(wind().value).toBe('18');
  });

  it('that is emptied gets its value back', async () => {
    const brief = briefOf(formulaDeck);
    await type(' ');
    expect(wind().value).toBe('10');
    expect(brief.set()).toEqual({});
  });
});

describe('what a day moves', () => {
  it('is named with its reason, and marked in the table', async () => {
    briefOf(formulaDeck);
    expect(plain(valueRow())).not.toContain('was');
    await type('18');
    expect(card().getByText('1 value moves')).toBeTruthy();
    const why = plain(card().getByRole('button', { name: /far/i }));
    expect(why).toContain('8 kt more wind: 52 instead of 60 kt');
    expect(plain(valueRow())).toContain('52 kt');
    expect(plain(valueRow())).toContain('was 60');
  });

  it('is marked on the picture and told at its gate', async () => {
    briefOf(formulaDeck);
    await type('18');
    const { label } = formulaDeck.gates[0]!;
    const mark = screen.getByRole('button', { name: new RegExp(`^Gate 1 ${label}`) });
    expect(plain(mark)).toContain('60 → 52 kt');
    await userEvent.click(card().getByRole('button', { name: /far/i }));
    expect(plain(screen.getByRole('region', { name: label }))).toContain(
      'Today: 8 kt more wind: 52 instead of 60 kt',
    );
  });

  it('shows what follows from the day beside what it is on the deck’s own', async () => {
    briefOf(formulaDeck);
    const follows = (): string => {
      const list = document.querySelector<HTMLElement>('[aria-label="What follows from the day"]')!;
      return plain(list);
    };
    expect(follows()).toContain('Wind to fly for 15 kt');
    await type('18');
    expect(follows()).toContain('Wind to fly for 23 kt deck 15 kt');
    await userEvent.click(card().getByText('How they come about'));
    expect(plain(screen.getByRole('region', { name: 'The day' }))).toMatch(/18 kt \+ .*= 23 kt/);
  });

  it('says in place that a value has no number today, and why', async () => {
    briefOf(narrowDeck);
    await type('2');
    const gust = card().getByRole('spinbutton', { name: 'Gust' });
    await userEvent.clear(gust);
    await userEvent.type(gust, '0{Enter}');
    expect(plain(valueRow())).toContain('No value today the ceiling 72 kt lies inside adequate');
    expect(plain(card().getByRole('button', { name: /far/i }))).toContain(
      'No value today: the ceiling 72 kt',
    );
  });

  it('is nothing again on the deck’s own day', async () => {
    const brief = briefOf(formulaDeck);
    await type('18');
    await userEvent.click(back()!);
    expect(brief.set()).toEqual({});
    expect(back()).toBeNull();
    expect(plain(valueRow())).not.toContain('was');
    expect(document.activeElement?.id).toBe('brief-day');
    // Set to the deck's own number by hand it is the deck's own day too.
    await type('12');
    await type('10');
    expect(brief.set()).toEqual({});
  });
});
