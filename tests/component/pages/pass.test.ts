import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import Pass from '../../../src/app/pages/pass/Pass.svelte';
import StripChart from '../../../src/app/parts/StripChart.svelte';
import { PassFlight } from '../../../src/app/state/pass-flight.svelte.ts';
import { chartedTraces } from '../../../src/app/state/pass-summary.ts';
import { sayError } from '../../../src/deck/say.ts';
import { quantityOf } from '../../../src/deck/lookup.ts';
import { pilotOf, type Pilot } from '../state/drilling.ts';

let pilot: Pilot;
let clockMs = 0;
const handlers = () => ({ onstart: vi.fn(), onagain: vi.fn(), ondrill: vi.fn(), onclose: vi.fn() });

beforeEach(async () => {
  pilot = await pilotOf('marram-recovery');
});

function flown(call: 'nothing' | 'rules' | 'go-around', fromGate = 'alongside'): PassFlight {
  const flight = new PassFlight({
    training: pilot.training,
    start: { fromGate, seed: 2 },
    pace: 'steps',
    timing: 1,
    tells: false,
    monotonicMs: () => clockMs,
    still: () => true,
  });
  while (flight.stage !== 'ended') {
    clockMs += 1000;
    flight.tick();
    const { asked } = flight;
    if (!asked) continue;
    if (call === 'go-around') flight.choose('call', 'go-around');
    if (call === 'rules')
      for (const [control, action] of Object.entries(asked.decision.actions)) flight.choose(control, action);
    clockMs += 1000;
    flight.call();
  }
  clockMs += 5000;
  return flight;
}

function show(flight: PassFlight | null, gate = '') {
  const on = handlers();
  const { training, settings } = pilot;
  render(Pass, { training, settings, flight, gate, narrow: false, ...on });
  return on;
}

describe('before a pass', () => {
  it('offers the gates it can begin at, and begins at the one in the address', async () => {
    const on = show(null, 'groove');
    const links = within(screen.getByRole('navigation', { name: 'Begin at' })).getAllByRole('link');
    expect(links.map((link) => link.getAttribute('href'))).toContain('#/pass/abeam');
    expect(links.find((link) => link.getAttribute('aria-current'))?.textContent).toContain('Groove');
    await userEvent.keyboard('{Enter}');
    expect(on.onstart).toHaveBeenCalledWith('groove');
  });

  it('lets pace, air and the time of telling be chosen, and keeps the choice', async () => {
    show(null);
    await userEvent.click(screen.getByRole('radio', { name: 'Step by step' }));
    await userEvent.click(screen.getByRole('radio', { name: 'Rough' }));
    await userEvent.click(screen.getByRole('radio', { name: 'After each call' }));
    const { passPace, passRoughness, passTells } = pilot.settings;
    expect([passPace, passRoughness, passTells]).toEqual(['steps', 2, true]);
  });
});

describe('after a pass', () => {
  it('shows each gate crossed with its errors in words, and with nothing missed Enter is done', async () => {
    const flight = flown('rules');
    const on = show(flight);
    const { crossings, headline } = flight.assessment!;
    expect(screen.getAllByText(headline).length).toBeGreaterThan(0);
    const { deck } = pilot.training;
    const section = screen.getByRole('region', { name: 'Gate by gate' }).textContent;
    for (const { values } of crossings)
      for (const { quantity, grade } of values)
        expect(section).toContain(sayError(grade.signedError, quantityOf(deck, quantity)));
    expect(screen.getByText('None: every call was as the rules ask.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /Drill the rules/ })).toBeNull();
    expect(screen.getByRole('button', { name: /^Done/ }).classList.contains('primary')).toBe(true);
    await userEvent.keyboard('{Enter}');
    expect(on.onclose).toHaveBeenCalledOnce();
  });

  it('names each rule missed, why, and what was called, and Enter, as the dark button says, drills just those', async () => {
    const on = show(flown('nothing'));
    const section = within(screen.getByRole('region', { name: 'Rules missed' }));
    expect(
      section.getAllByText(/missed (both|all \d+|\d+ of the \d+) times it was due|due once, and missed/)
        .length,
    ).toBeGreaterThan(0);
    expect(section.getAllByText(/it was left at/).length).toBeGreaterThan(0);
    const drill = screen.getByRole('button', { name: /Drill the rules missed/ });
    expect([drill.classList.contains('primary'), drill.textContent]).toEqual([
      true,
      expect.stringContaining('Enter'),
    ]);
    await userEvent.keyboard('{Enter}');
    expect(on.ondrill).toHaveBeenCalledOnce();
    await userEvent.keyboard('{Escape}');
    expect(on.onclose).toHaveBeenCalledOnce();
  });

  it('says that a go-around that the rules demand was right', () => {
    const flight = flown('nothing');
    const point = flight.pass.decisions.find(({ decision }) => decision.overriding);
    const assessment = {
      ...flight.assessment!,
      ended: { kind: 'go-around' as const, tMs: point?.tMs ?? 0, demanded: true },
      performance: 'desired' as const,
    };
    flight.assessment = assessment;
    show(flight);
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Went around, rightly');
  });

  it('is flown again by S through the same air and by N through another, and left by Escape', async () => {
    const on = show(flown('go-around'));
    await userEvent.keyboard('sn');
    expect(on.onagain.mock.calls).toEqual([[true], [false]]);
    await userEvent.keyboard('{Escape}');
    expect(on.onclose).toHaveBeenCalledOnce();
  });

  it('can be taken off the record, and says so', async () => {
    const flight = flown('go-around');
    show(flight);
    expect(pilot.training.passes).toHaveLength(1);
    await userEvent.keyboard('z');
    expect(pilot.training.passes).toHaveLength(0);
    expect(screen.getByText(/nothing of it is on record/)).toBeTruthy();
  });
});

describe('a strip chart', () => {
  it('says of each quantity how it was at the gates, and how often something was done to it', () => {
    const flight = flown('rules');
    const traces = chartedTraces(flight.pass);
    const { deck } = pilot.training;
    const { crossings } = flight.assessment!;
    render(StripChart, {
      ...{ deck, traces, crossings, endMs: flight.pass.nowMs, missedAtMs: [2000] },
      widthPx: 340,
    });
    const charts = screen.getAllByRole('img');
    expect(charts).toHaveLength(traces.length);
    const words = charts[0]!.getAttribute('aria-label')!;
    expect(words).toMatch(/^Altitude over the pass\. At the gates: .*Over the spot /);
    expect(words).toMatch(/\d+ calls? moved it\.$/);
    expect(screen.getByText('a call that missed a rule')).toBeTruthy();
  });
});

describe('a pass that was over where it began', () => {
  it('has no charts, and calls a go-around that nothing asked for needless', () => {
    const flight = flown('go-around', 'over-spot');
    expect(flight.pass.nowMs).toBe(0);
    show(flight);
    const flownSection = screen.getByRole('region', { name: 'What was flown' });
    expect(within(flownSection).queryAllByRole('img')).toEqual([]);
    expect(flownSection.textContent).toContain('Nothing: the pass was over where it began.');
    const rules = screen.getByRole('region', { name: 'Rules missed' }).textContent!.replace(/\s+/g, ' ');
    expect(rules).toContain('you called go around, without need.');
  });
});

describe('the legend of a strip chart', () => {
  it('names only what is drawn', () => {
    const flight = flown('go-around', 'over-spot');
    const traces = chartedTraces(flight.pass);
    const { crossings } = flight.assessment!;
    expect(crossings).toEqual([]);
    render(StripChart, {
      ...{ deck: pilot.training.deck, traces, crossings, endMs: flight.pass.nowMs, missedAtMs: [] },
      widthPx: 340,
    });
    expect(screen.queryByText(/adequate and desired stretch/)).toBeNull();
    expect(screen.queryByText(/raised or lowered/)).toBeNull();
  });

  it('says why a band stands after its gate, where what came in was still on its way', () => {
    const flight = flown('rules', 'abeam');
    render(StripChart, {
      deck: pilot.training.deck,
      traces: chartedTraces(flight.pass),
      crossings: flight.assessment!.crossings,
      endMs: flight.pass.nowMs,
      missedAtMs: [],
      widthPx: 340,
    });
    expect(screen.getByText(/after the gate where it still came in/)).toBeTruthy();
  });
});

describe('a deck that doesn’t say how its phases move', () => {
  it('has no pass, and says why', async () => {
    const other = await pilotOf('light-aircraft-circuit');
    const { training } = other;
    const grounded = {
      ...training.procedure,
      deck: { ...training.deck, phases: training.deck.phases!.map(({ pass: _, ...phase }) => phase) },
    };
    const phases = new Map(
      [...training.procedure.phases].map(([id, rules]) => {
        const { pass: _, ...phase } = rules.phase;
        return [id, { ...rules, phase }];
      }),
    );
    render(Pass, {
      training: Object.create(training, { procedure: { value: { ...grounded, phases } } }),
      ...{ settings: other.settings, flight: null, gate: '', narrow: false },
      ...handlers(),
    });
    expect(screen.getByText('No pass to fly')).toBeTruthy();
  });
});
