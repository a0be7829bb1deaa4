import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import Finished from '../../../src/app/pages/recall/Finished.svelte';
import Home from '../../../src/app/pages/recall/Home.svelte';
import Recall from '../../../src/app/pages/recall/Recall.svelte';
import { nextUp } from '../../../src/app/state/next-up.ts';
import { RecallSession } from '../../../src/app/state/recall-session.svelte.ts';
import { LOOK_FROM_REPEAT } from '../../../src/memory/run.ts';
import type { SessionPlan } from '../../../src/memory/types.ts';
import { MOST_REPEATS } from '../../../src/memory/worth.ts';
import { noAnswer, pilotOf, type Pilot } from '../state/drilling.ts';

/** A session of one card, the height at the deck's first gate that has one. */
async function oneCard(): Promise<{ pilot: Pilot; session: RecallSession }> {
  const pilot = await pilotOf('marram-recovery');
  const { training } = pilot;
  const card = training.cards.find(({ kind, id }) => kind === 'value' && id.endsWith('/altitude'))!;
  const plan: SessionPlan = {
    items: [{ id: card.id, why: 'due', showings: 1 }],
    seconds: 20,
    leftOver: { due: 0, fresh: 0 },
    nextDueMs: null,
  };
  return { pilot, session: new RecallSession(plan, training, pilot.settings, () => pilot.nowMs) };
}

/** A call far off. */
function miss(pilot: Pilot, session: RecallSession): void {
  pilot.nowMs += 1000;
  session.answering!.submit({ form: 'number', text: '1' });
  pilot.nowMs += 1000;
  session.next();
}

describe('a card missed again and again', () => {
  it('is shown with its answer and reason before it is asked once more, and that is not recorded', async () => {
    const { pilot, session } = await oneCard();
    for (let i = 0; i < LOOK_FROM_REPEAT; i++) miss(pilot, session);
    expect(session.answering).toBeNull();
    expect(session.finished).toBe(false);
    const { card } = session.look!;
    const recorded = pilot.training.history(card.id)!.calls.length;
    render(Recall, {
      training: pilot.training,
      session,
      narrow: true,
      minutes: 10,
      onclose: () => {},
      ondrill: () => {},
    });
    const shown = screen.getByRole('region', { name: 'Look first' });
    expect(shown.textContent).toContain(card.expected);
    expect(shown.textContent).toContain('2 more tries');
    await userEvent.click(screen.getByRole('button', { name: /Go on/ }));
    expect(session.look).toBeNull();
    expect(session.answering?.prompt.card.id).toBe(card.id);
    expect(pilot.training.history(card.id)!.calls).toHaveLength(recorded);
  });

  it('ends after its last try and waits for the next session', async () => {
    const { pilot, session } = await oneCard();
    let tries = 0;
    while (!session.finished) {
      if (session.look) session.readOn();
      else {
        miss(pilot, session);
        tries++;
      }
    }
    expect(tries).toBe(1 + MOST_REPEATS);
    expect(session.givenUp).toHaveLength(1);
    render(Finished, { training: pilot.training, session, minutes: 10, onclose: () => {} });
    expect(screen.getByText('waits for the next session')).toBeTruthy();
  });

  it('can be gone back to from the look: the last answer is taken back', async () => {
    const { pilot, session } = await oneCard();
    for (let i = 0; i < LOOK_FROM_REPEAT; i++) miss(pilot, session);
    const { card } = session.look!;
    session.readOn();
    expect(session.takeBack()).toBe(true);
    expect(session.look?.card.id).toBe(card.id);
    expect(session.takeBack()).toBe(true);
    expect(session.look).toBeNull();
    expect(session.answering?.prompt.card.id).toBe(card.id);
    expect(pilot.training.history(card.id)!.calls).toHaveLength(LOOK_FROM_REPEAT - 1);
  });
});

describe('what comes next', () => {
  it('is said alike at the end of a session and on the first page', async () => {
    const { pilot, session } = await oneCard();
    while (!session.finished) {
      pilot.nowMs += 1000;
      if (session.look) session.readOn();
      else {
        session.answering!.submit(noAnswer);
        pilot.nowMs += 1000;
        session.next();
      }
    }
    const { training, settings } = pilot;
    const { headline, lead } = nextUp(training.plan(settings.minutes));
    const end = render(Finished, { training, session, minutes: settings.minutes, onclose: () => {} });
    expect(end.container.querySelector('.next')?.textContent).toContain(
      `Next: ${headline.toLowerCase()}. ${lead}`,
    );
    end.unmount();
    const home = render(Home, { training, settings, narrow: true, onstart: () => {} });
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(headline);
    expect(home.container.textContent).toContain(lead);
  });

  it.each([
    [{ items: 'ddn', seconds: 130, due: 0, at: null }, '2 to rehearse, 1 new', 'About 2 minutes.'],
    [
      { items: 'd', seconds: 10, due: 1, at: null },
      '1 to rehearse',
      'About 1 minute. 1 more is due and will wait for the session after that.',
    ],
    [
      { items: '', seconds: 0, due: 0, at: Date.UTC(2026, 2, 3, 12) },
      'Nothing due today',
      'The next rehearsal is Tuesday 3 March.',
    ],
    [{ items: '', seconds: 0, due: 0, at: null }, 'Nothing due today', 'This deck has nothing to learn.'],
  ])('%j reads “%s”', ({ items, seconds, due, at }, headline, lead) => {
    const plan: SessionPlan = {
      items: [...items].map((why, i) => ({ id: `${i}`, why: why === 'd' ? 'due' : 'new', showings: 1 })),
      seconds,
      leftOver: { due, fresh: 0 },
      nextDueMs: at,
    };
    const said = nextUp(plan);
    expect(said.headline).toBe(headline);
    expect(said.lead.replace(',', '')).toBe(lead);
  });
});

describe('keys while nothing is asked', () => {
  it('B leads to the briefing and Escape pauses a look; E ends the session there', async () => {
    const { pilot, session } = await oneCard();
    for (let i = 0; i < LOOK_FROM_REPEAT; i++) miss(pilot, session);
    const onclose = vi.fn();
    render(Recall, {
      training: pilot.training,
      session,
      narrow: true,
      minutes: 10,
      onclose,
      ondrill: () => {},
    });
    location.hash = '';
    await userEvent.keyboard('b');
    expect(location.hash).toBe('#/brief');
    location.hash = '';
    await userEvent.keyboard('{Escape}');
    expect(screen.getByRole('heading', { name: 'Paused' })).toBeTruthy();
    expect(screen.queryByText(/Look first/)).toBeNull();
    await userEvent.keyboard('b');
    expect(location.hash).toBe('#/brief');
    await userEvent.keyboard('e');
    expect(onclose).toHaveBeenCalledOnce();
    location.hash = '';
  });
});

describe('a number that was refused', () => {
  it('gives way to what is typed next', async () => {
    const { pilot, session } = await oneCard();
    render(Recall, {
      training: pilot.training,
      session,
      narrow: true,
      minutes: 10,
      onclose: () => {},
      ondrill: () => {},
    });
    const field = screen.getByRole<HTMLInputElement>('textbox');
    pilot.nowMs += 1000;
    await userEvent.type(field, '99999{Enter}');
    expect(session.answering?.problem).not.toBeNull();
    expect([field.selectionStart, field.selectionEnd]).toEqual([0, 5]);
    await userEvent.keyboard('350');
    expect(field.value).toBe('350');
  });
});

describe('the cards left', () => {
  it('never grow with an answer', async () => {
    const { pilot, session } = await oneCard();
    const counts = [session.cardsLeft];
    while (!session.finished) {
      if (session.look) session.readOn();
      else miss(pilot, session);
      counts.push(session.cardsLeft);
    }
    expect(counts[0]).toBe(1);
    expect(counts.at(-1)).toBe(0);
    counts.slice(1).forEach((count, i) => expect(count).toBeLessThanOrEqual(counts[i]!));
  });
});
