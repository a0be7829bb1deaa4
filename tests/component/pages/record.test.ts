import { render, screen, waitFor, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import Keeping from '../../../src/app/pages/record/Keeping.svelte';
import Record from '../../../src/app/pages/record/Record.svelte';
import { troublesOf } from '../../../src/app/state/troubles.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { eventIds } from '../../../src/record/event-id.ts';
import { openRecord } from '../../../src/record/live.ts';
import type { RecordProblem } from '../../../src/record/problem.ts';
import { memoryStore } from '../../../src/record/store/memory-store.ts';
import { pilotOf } from '../state/drilling.ts';

const recordOf = () =>
  openRecord({
    store: memoryStore(),
    scheduler: createScheduler(),
    ids: eventIds((count) => new Uint8Array(count)),
  });

const nowMs = () => Date.UTC(2026, 8, 1, 19);

async function page() {
  const { training } = await pilotOf('marram-recovery');
  const record = await recordOf();
  render(Record, { training, record, nowMs, settings: {} });
  return { record, user: userEvent.setup() };
}

const bring = (text: string) =>
  userEvent.upload(
    screen.getByLabelText('Saved record'),
    new File([text], 'record.json', { type: 'application/json' }),
  );

describe('what the record page says of the last thing done', () => {
  it('is gone when the next is done', async () => {
    const { record, user } = await page();
    await bring('not a record');
    await screen.findByText(/The file is not JSON/);
    const { text } = await record.exportBackup(nowMs());
    await bring(text);
    await screen.findByText(/Brought in: 0 answers, 0 new/);
    expect(screen.queryByText(/The file is not JSON/)).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Erase all answers…' }));
    const dialog = screen.getByRole('dialog', { name: 'Erase all answers?' });
    await user.click(within(dialog).getByRole('button', { name: 'Erase all answers' }));
    await screen.findByText('All answers on this device were erased.');
    expect(screen.queryByText(/Brought in/)).toBeNull();
  });

  it('takes the focus after bringing in and after erasing; cancelling gives it back', async () => {
    const { user } = await page();
    await bring('not a record');
    await waitFor(() =>
      expect(document.activeElement).toBe(screen.getByRole('group', { name: 'What came of it' })),
    );
    const erase = screen.getByRole('button', { name: 'Erase all answers…' });
    await user.click(erase);
    await user.click(screen.getByRole('button', { name: 'Cancel' }));
    await waitFor(() => expect(document.activeElement).toBe(erase));
  });

  it('uses the words of its buttons, whatever the file', async () => {
    await page();
    for (const text of ['', '{', '[]', '{"format":"gatecall-record/99"}', '{"format":"else/1"}']) {
      await bring(text);
      await screen.findAllByRole('alert');
      for (const notice of screen.getAllByRole('alert'))
        expect(notice.textContent).not.toMatch(/backup|import|export/i);
    }
  });
});

describe('damaged entries', () => {
  const unreadable = (why: string): RecordProblem => ({ code: 'unreadable-event', message: why });

  it('are counted in one sentence, with what to do', () => {
    const [trouble, ...rest] = troublesOf([unreadable('one'), unreadable('two'), unreadable('one')]);
    expect(rest).toEqual([]);
    expect(trouble).toMatchObject({ kind: 'warning', retry: false });
    expect(trouble!.what).toBe(
      '3 entries of the training record can’t be read and don’t count. All other answers do.',
    );
    expect(trouble!.mend).toContain('bring it in on the Record page');
  });

  it('are said once where one sentence says it, and can be tried again only when writing failed', () => {
    const lost: RecordProblem = { code: 'not-saved', message: 'No room.' };
    expect(troublesOf([lost, lost])).toMatchObject([{ what: 'No room.', kind: 'error', retry: true }]);
  });

  it('stay to be read on the record page', async () => {
    render(Keeping, {
      record: await recordOf(),
      report: null,
      saved: null,
      troubles: troublesOf([unreadable('cut off')]),
      onsave: () => {},
      onbring: () => {},
      onclear: () => {},
    });
    expect(screen.getByText(/1 entry of the training record can’t be read/)).toBeTruthy();
  });
});
