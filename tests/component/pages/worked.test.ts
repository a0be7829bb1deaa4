import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import Finished from '../../../src/app/pages/recall/Finished.svelte';
import LookFirst from '../../../src/app/pages/recall/LookFirst.svelte';
import Recall from '../../../src/app/pages/recall/Recall.svelte';
import { lookAt } from '../../../src/app/state/look-first.ts';
import { RecallSession } from '../../../src/app/state/recall-session.svelte.ts';
import { cardsOf, promptFor } from '../../../src/cards/registry.ts';
import { workedProcedure } from '../../unit/cards/worked-deck.ts';
import { pilotOf } from '../state/drilling.ts';

const procedure = workedProcedure();

/** A session that asks one worked value. */
async function asked(cardId: string) {
  const pilot = await pilotOf(procedure.deck);
  const item = { id: cardId, why: 'due', showings: 1 } as const;
  const plan = { items: [item], seconds: 30, leftOver: { due: 0, fresh: 0 }, nextDueMs: null };
  const session = new RecallSession(plan, pilot.training, pilot.settings, () => pilot.nowMs);
  const props = { training: pilot.training, session, narrow: false, minutes: 10 };
  render(Recall, { ...props, onclose: () => {}, ondrill: () => {} });
  const { ask } = session.answering!.prompt;
  if (ask.form !== 'number' || !ask.given) throw new Error('Nothing is given.');
  return { pilot, session, ask, given: ask.given };
}

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const given = (): string[] => {
  const list = document.querySelector<HTMLElement>('dl[aria-label="Given"]')!;
  return within(list)
    .getAllByRole('definition')
    .map(({ textContent }) => plain(textContent));
};

async function call(text: string, pilot: { nowMs: number }): Promise<void> {
  pilot.nowMs += 8_000;
  await userEvent.type(screen.getByRole('textbox'), text);
  await userEvent.click(screen.getByRole('button', { name: /Call it/ }));
}

describe('a worked value', () => {
  it('is asked with the day’s conditions in words, and the place to type the number', async () => {
    const { given: shown } = await asked('worked/over-deck');
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('What wind is there over the deck?');
    expect(given()).toEqual(shown.values.map(({ value }) => plain(value)));
    expect(screen.getByRole('textbox', { name: 'What wind is there over the deck?, in knots' })).toBeTruthy();
    expect(screen.queryByRole('img', { name: /^Chart/ })).toBeNull();
  });

  it('shows the chart that has to be read, without the day on it', async () => {
    await asked('worked/hover-margin');
    const chart = screen.getByRole('img', { name: /^Chart: / });
    expect(chart.querySelector('[data-part="lead"]')).toBeNull();
    expect(screen.getByText('The chart as a table')).toBeTruthy();
  });

  it('is answered with its grade, the result and the working, line by line', async () => {
    const { pilot, session, ask } = await asked('worked/final-closure');
    await call(String(ask.band.target + 3), pilot);
    expect(session.answering!.assessment).toMatchObject({
      performance: 'adequate',
      headline: '3\u00a0kt fast',
    });
    expect(screen.getByText(/It comes to/).textContent).toContain(`${ask.band.target}\u00a0kt`);
    const working = screen.getByRole('region', { name: 'The working' });
    const lines = within(working)
      .getAllByRole('listitem')
      .map(({ textContent }) => plain(textContent));
    expect(lines).toHaveLength(2);
    expect(lines[0]).toContain('Wind over deck = ');
    expect(lines[1]).toMatch(/^Closure = 60 kt − wind over deck\s*= 60 kt − \d+ kt = −?\d+ kt$/);
    expect(lines[1]).toContain(`= ${ask.band.target} kt`);
    expect(given()).toHaveLength(3);
    expect(screen.getByText('The airspeed on the final is 60 kt.')).toBeTruthy();
  });

  it('has the day led to the chart’s axes in the feedback', async () => {
    const { pilot } = await asked('worked/hover-margin');
    await call('0', pilot);
    const chart = screen.getByRole('img', { name: /^Chart: / });
    expect(chart.querySelector('[data-part="lead"]')).not.toBeNull();
    expect(
      screen.getByText(/^At pressure altitude 300 ft and temperature \d+ °C: [\d,]+ kg\.$/),
    ).toBeTruthy();
  });

  it('shows its result and working to who asks for the answer', async () => {
    const { pilot, session, ask } = await asked('worked/over-deck');
    pilot.nowMs += 8_000;
    session.answering!.submit({ form: 'none' });
    await screen.findByText(/It comes to/);
    expect(screen.getByText(/It comes to/).textContent).toContain(`${ask.band.target}\u00a0kt`);
    expect(screen.getByRole('region', { name: 'The working' })).toBeTruthy();
  });

  it('is asked afresh each time, without the numbers called before', async () => {
    const { pilot, session } = await asked('worked/over-deck');
    const first = session.answering!.prompt;
    await call('0', pilot);
    pilot.nowMs += 1_000;
    session.next();
    expect(session.answering!.prompt.ask).not.toEqual(first.ask);
    expect(session.earlierCalls).toEqual([]);
    expect(pilot.training.history('worked/over-deck')!.calls).toHaveLength(1);
  });

  it('is looked at, missed twice, by how it is worked out', () => {
    const card = cardsOf(procedure).find(({ id }) => id === 'worked/final-closure')!;
    const prompt = promptFor(procedure, card, 1);
    render(LookFirst, {
      look: lookAt(procedure, prompt),
      triesLeft: 2,
      onread: () => {},
      onend: () => {},
    });
    expect(screen.getByText('Closure = 60 kt − wind over deck')).toBeTruthy();
  });

  it('is told among what was missed by its name and how it is worked out', async () => {
    const { pilot, session } = await asked('worked/final-closure');
    session.missed.push('worked/final-closure');
    document.body.replaceChildren();
    render(Finished, { training: pilot.training, session, minutes: 10, onclose: () => {} });
    expect(screen.getByText(/Closure on the final/)).toBeTruthy();
    expect(screen.getByText('Closure = 60 kt − wind over deck')).toBeTruthy();
  });
});
