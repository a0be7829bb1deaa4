import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import DrillEnd from '../../../src/app/pages/drill/DrillEnd.svelte';
import type { DrillRun } from '../../../src/app/state/drill-run.svelte.ts';
import { noAnswer, pilotOf, type Pilot } from '../state/drilling.ts';

async function flown(missed: number): Promise<{ pilot: Pilot; run: DrillRun }> {
  const pilot = await pilotOf('marram-recovery');
  const run = pilot.startRun();
  for (let i = 0; i < 10; i++) {
    pilot.answer(run, i < missed ? noAnswer : undefined);
    run.next();
  }
  pilot.nowMs += 1000;
  return { pilot, run };
}

function show({ pilot, run }: Awaited<ReturnType<typeof flown>>) {
  const told = { onrepeat: vi.fn(), onagain: vi.fn(), onclose: vi.fn() };
  render(DrillEnd, { training: pilot.training, run, ...told });
  return told;
}

describe('the end of a run', () => {
  it('lists what was missed under its gate and the direction of the error, as sentences', async () => {
    const at = await flown(4);
    show(at);
    const lists = screen.getAllByRole('region').filter((one) => /^From /.test(one.textContent!.trim()));
    const gates = at.run.missGroups.map(
      ({ gate }) => at.pilot.training.deck.gates.find(({ id }) => id === gate)!.label,
    );
    expect(lists.map((one) => within(one).getByRole('heading', { level: 2 }).textContent)).toEqual(
      [...new Set(gates)].map((label) => `From ${label}`),
    );
    expect(screen.getAllByRole('heading', { name: /^No answer/ }).length).toBeGreaterThan(0);
    const items = lists.flatMap((one) => within(one).getAllByRole('listitem'));
    expect(items).toHaveLength(4);
    for (const item of items) {
      expect(item.textContent).toMatch(/Called for: .+\./);
      // The rule in words, not by the name it has in the file.
      expect(item.textContent).toMatch(/\. [A-Z].+: [a-z]/);
      expect(item.textContent).not.toMatch(/[a-z]-[a-z]+-[a-z]/);
    }
  });

  it('drills just what was missed by one key, and ends by another', async () => {
    const told = show(await flown(2));
    const [first] = screen.getAllByRole('button');
    expect(first!.className).toContain('primary');
    await userEvent.keyboard('{Enter}');
    expect(told.onrepeat).toHaveBeenCalledOnce();
    await userEvent.keyboard('{Escape}');
    expect(told.onclose).toHaveBeenCalledOnce();
  });

  it('has nothing to repeat when all was right', async () => {
    const told = show(await flown(0));
    expect(screen.getByText('Nothing missed: every control right, and in time.')).toBeTruthy();
    await userEvent.keyboard('{Enter}');
    expect(told.onclose).toHaveBeenCalledOnce();
    expect(told.onrepeat).not.toHaveBeenCalled();
    expect(screen.queryByRole('button', { name: /missed/ })).toBeNull();
  });

  it('says how much of the deck has been drilled', async () => {
    show(await flown(0));
    const section = screen.getByRole('region', { name: 'Drilled so far' });
    expect(section.textContent!.replace(/\s+/g, ' ')).toMatch(
      /Rules .*\d+ of \d+.*Close calls.*One value apart/,
    );
  });

  it('takes a key only once it has been seen', async () => {
    const at = await flown(0);
    at.run.takeBack();
    at.run.end();
    const told = show(at);
    await userEvent.keyboard('{Enter}');
    expect(told.onclose).not.toHaveBeenCalled();
  });
});
