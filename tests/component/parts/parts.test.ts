import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import BandStrip from '../../../src/app/parts/BandStrip.svelte';
import ChoiceList from '../../../src/app/parts/ChoiceList.svelte';
import Notice from '../../../src/app/parts/Notice.svelte';
import NumberPad from '../../../src/app/parts/NumberPad.svelte';
import PerformanceMark from '../../../src/app/parts/PerformanceMark.svelte';
import PlatePicture from '../../../src/app/parts/PlatePicture.svelte';
import SequencePicker from '../../../src/app/parts/SequencePicker.svelte';
import Spark from '../../../src/app/parts/Spark.svelte';
import StripGauge from '../../../src/app/parts/StripGauge.svelte';
import TimeBar from '../../../src/app/parts/TimeBar.svelte';
import ValueReadout from '../../../src/app/parts/ValueReadout.svelte';
import type { Plate, Quantity } from '../../../src/deck/types.ts';

const altitude: Quantity = { id: 'altitude', label: 'Altitude', unit: 'ft', range: [0, 2000], step: 5 };
const band = {
  target: 140,
  desired: [130, 150] as const,
  adequate: [115, 170] as const,
  floor: 115,
};

describe('the band strip', () => {
  it('says the band and the call', () => {
    render(BandStrip, { band, quantity: altitude, value: 165 });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe(
      'Altitude: target 140\u00a0ft, desired 130 to 150\u00a0ft, adequate 115 to 170\u00a0ft, floor 115\u00a0ft, your call 165\u00a0ft',
    );
  });

  it('writes each bound once, the floor with its word', () => {
    render(BandStrip, { band, quantity: altitude });
    for (const text of ['115 floor', '130', '140', '150', '170']) expect(screen.getByText(text)).toBeTruthy();
  });
});

describe('a performance mark', () => {
  it.each([
    ['desired', 'Desired'],
    ['adequate', 'Adequate'],
    ['outside', 'Outside'],
  ] as const)('says %s in a word, also when the word is not shown', (performance, word) => {
    render(PerformanceMark, { performance, word: false });
    expect(screen.getByText(word).className).toContain('visually-hidden');
  });
});

describe('a strip gauge', () => {
  const reading = {
    quantity: 'sink',
    label: 'Sink',
    unit: 'ft/min',
    value: -120,
    span: { lo: -500, hi: 1000, loOpen: false, hiOpen: false },
    step: 10,
    trend: 'falling',
  } as const;

  it.each([false, true])('reads as number, unit and trend (compact: %s)', (compact) => {
    render(StripGauge, { reading, compact });
    expect(screen.getByRole('img', { name: 'Sink -120 feet per minute, falling' })).toBeTruthy();
    expect(screen.getByText('−120')).toBeTruthy();
    expect(screen.getByText('ft/min')).toBeTruthy();
  });

  it('has figures on its scale also as a row of a phone, and its trend as an arrow', () => {
    const { container } = render(StripGauge, { reading, compact: true });
    const figures = [...container.querySelectorAll('.strip text')].map(({ textContent }) => textContent);
    expect(figures.length).toBeGreaterThanOrEqual(2);
    expect(container.querySelector('.trend')!.textContent.trim()).toBe('');
  });

  it.each([
    [-120, 'falling', 'Sink 120 feet per minute climbing, growing'],
    [-120, 'rising', 'Sink 120 feet per minute climbing, shrinking'],
    [120, 'rising', 'Sink 120 feet per minute, growing'],
  ] as const)('says %d that is %s by its side where there are words for it', (value, trend, name) => {
    const sides = { above: null, below: 'climbing' };
    render(StripGauge, { reading: { ...reading, value, trend, sides } });
    expect(screen.getByRole('img', { name })).toBeTruthy();
    expect(screen.getByText('120')).toBeTruthy();
  });

  it('says nothing of a trend the deck does not know', () => {
    render(StripGauge, { reading: { ...reading, trend: null } });
    expect(screen.getByRole('img').getAttribute('aria-label')).toBe('Sink -120 feet per minute');
  });
});

describe('the number and the time', () => {
  it('shows a dash for a number not given', () => {
    render(ValueReadout, { value: '', unit: 'ft' });
    expect(screen.getByText('–')).toBeTruthy();
  });

  it('shows the seconds left, or that it is untimed or paused', async () => {
    const { rerender } = render(TimeBar, { remaining: 0.5, seconds: 3.42 });
    expect(screen.getByRole('timer').textContent).toBe('3.4 s');
    await rerender({ remaining: 0.5, seconds: 3.42, paused: true });
    expect(screen.getByRole('timer').textContent).toBe('paused');
    await rerender({ remaining: null });
    expect(screen.getByRole('timer').textContent).toBe('untimed');
  });

  it('closes the bar by the share that is left, never beyond its ends', async () => {
    const { container, rerender } = render(TimeBar, { remaining: 0.25 });
    const left = container.querySelector<HTMLElement>('.left')!;
    expect(left.style.inlineSize).toBe('25.00%');
    await rerender({ remaining: -1 });
    expect(left.style.inlineSize).toBe('0.00%');
  });
});

describe('the number pad', () => {
  it('gives each press as the key it stands for', async () => {
    const keys: string[] = [];
    render(NumberPad, { onkey: (key: string) => keys.push(key) });
    for (const name of ['1', '0', 'decimal point', '5', 'change sign', 'take back a digit', 'Call it'])
      await userEvent.click(screen.getByRole('button', { name }));
    expect(keys).toEqual(['1', '0', '.', '5', '±', 'Backspace', 'Enter']);
  });

  it('has no sign and no point where they make no sense', () => {
    render(NumberPad, { onkey: () => {}, sign: false, decimal: false });
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'change sign' }).disabled).toBe(true);
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'decimal point' }).disabled).toBe(true);
  });
});

describe('picking a sequence', () => {
  const options = ['Fuel', 'Wheels', 'Flaps'].map((label) => ({ id: label.toLowerCase(), label }));

  it('adds what is tapped at the end and takes out what is tapped again', async () => {
    const onchange = vi.fn();
    const { rerender } = render(SequencePicker, { options, chosen: ['wheels'], onchange });
    await userEvent.click(screen.getByRole('button', { name: 'Fuel' }));
    expect(onchange).toHaveBeenLastCalledWith(['wheels', 'fuel']);
    await rerender({ chosen: ['wheels', 'fuel'] });
    await userEvent.click(screen.getByRole('button', { name: /Wheels/ }));
    expect(onchange).toHaveBeenLastCalledWith(['fuel']);
    await userEvent.click(screen.getByRole('button', { name: /Take one back/ }));
    expect(onchange).toHaveBeenLastCalledWith(['wheels']);
  });

  it('keeps the pool in place and shows the number of each picked one', () => {
    render(SequencePicker, { options, chosen: ['flaps', 'fuel'], onchange: () => {} });
    const pool = within(screen.getByRole('list', { name: 'To pick from' })).getAllByRole('button');
    expect(pool.map((button) => button.getAttribute('aria-pressed'))).toEqual(['true', 'false', 'true']);
    expect(pool[2]!.textContent?.replace(/\s+/g, ' ')).toContain('Flaps number 1');
    expect(pool[0]!.getAttribute('aria-keyshortcuts')).toBe('1');
  });

  it('can not be taken back before anything is picked', () => {
    render(SequencePicker, { options, chosen: [], onchange: () => {} });
    expect(screen.getByRole<HTMLButtonElement>('button', { name: /Take one back/ }).disabled).toBe(true);
    expect(screen.getByText('Nothing picked yet.')).toBeTruthy();
  });
});

describe('a choice', () => {
  const options = [
    { id: 'a', label: 'Below 240 kt' },
    { id: 'b', label: 'Full, 50°' },
  ];

  it('is made with one press', async () => {
    const onchoose = vi.fn();
    render(ChoiceList, { options, onchoose });
    await userEvent.click(screen.getByRole('button', { name: 'Full, 50°' }));
    expect(onchoose).toHaveBeenCalledExactlyOnceWith('b');
  });

  it('shows in words which was yours and which was right, and takes no more presses', async () => {
    const onchoose = vi.fn();
    render(ChoiceList, { options, onchoose, chosen: 'b', correct: 'a' });
    expect(screen.getByText('the answer')).toBeTruthy();
    expect(screen.getByText('your answer')).toBeTruthy();
    await userEvent.click(screen.getByRole('button', { name: /Below/ }));
    expect(onchoose).not.toHaveBeenCalled();
  });
});

describe('a plate', () => {
  const plate: Plate = {
    id: 'deck',
    label: 'Flight deck',
    size: [760, 230],
    unit: 'ft',
    shapes: [{ shape: 'label', at: [100, 20], text: 'Bow' }],
    spots: [{ id: 's', label: 'Spot 4', at: [300, 150], desiredWithin: 15, adequateWithin: 40 }],
  };

  it('is picked by arrow keys and Enter', async () => {
    const [onmove, onpick] = [vi.fn(), vi.fn()];
    render(PlatePicture, { plate, at: [300, 100], onmove, onpick });
    await userEvent.tab();
    expect(document.activeElement?.getAttribute('aria-label')).toContain('Arrow keys move the cross');
    await userEvent.keyboard('{ArrowRight}');
    expect(onmove.mock.lastCall?.[0][0]).toBeGreaterThan(300);
    await userEvent.keyboard('{Enter}');
    expect(onpick).toHaveBeenCalledExactlyOnceWith([300, 100]);
  });

  it('first brings the cross in by Enter, and lets later Enters through to the page', async () => {
    const [onpick, onPage] = [vi.fn(), vi.fn()];
    document.addEventListener('keydown', onPage);
    const { rerender } = render(PlatePicture, { plate, onmove: () => {}, onpick });
    await userEvent.tab();
    onPage.mockClear();
    await userEvent.keyboard('{Enter}');
    expect(onpick).toHaveBeenLastCalledWith([380, 115]);
    expect(onPage).not.toHaveBeenCalled();
    await rerender({ at: [380, 115] });
    await userEvent.keyboard('{ArrowLeft}');
    expect(onPage).not.toHaveBeenCalled();
    await userEvent.keyboard('{Enter}');
    expect(onPage).toHaveBeenCalledOnce();
    document.removeEventListener('keydown', onPage);
  });

  it('is picked where the pointer is lifted', async () => {
    const [onmove, onpick] = [vi.fn(), vi.fn()];
    render(PlatePicture, { plate, onmove, onpick });
    const picture = screen.getByRole('application');
    await userEvent.pointer([{ keys: '[MouseLeft>]', target: picture }, { keys: '[/MouseLeft]' }]);
    expect(onmove).toHaveBeenCalled();
    expect(onpick).toHaveBeenCalledOnce();
  });

  it('shows the answer and how far off the cross was, and takes no more picks', () => {
    render(PlatePicture, { plate, at: [300, 100], spot: plate.spots[0]!, onmove: () => {} });
    expect(screen.queryByRole('application')).toBeNull();
    expect(screen.getByRole('img').getAttribute('aria-label')).toContain(
      'Spot 4 shown, 50 ft from the cross',
    );
  });
});

describe('notices and small pictures', () => {
  it('interrupts for an error, with what is wrong, the mend and the way out', async () => {
    const onclick = vi.fn();
    render(Notice, {
      kind: 'error',
      what: 'The file has no gates.',
      mend: 'Add one.',
      action: { label: 'Open again', onclick },
    });
    const alert = screen.getByRole('alert');
    expect(alert.textContent).toContain('Not done: The file has no gates.');
    expect(alert.textContent).toContain('Add one.');
    await userEvent.click(screen.getByRole('button', { name: 'Open again' }));
    expect(onclick).toHaveBeenCalledOnce();
  });

  it('does not interrupt for anything less', () => {
    render(Notice, { what: 'A new version is ready.' });
    expect(screen.queryByRole('alert')).toBeNull();
    expect(screen.getByRole('status')).toBeTruthy();
  });

  it('reads the last calls out', () => {
    render(Spark, { calls: [140, 165], band, quantity: altitude });
    expect(screen.getByRole('img', { name: 'Altitude, last calls: 140 and 165; target 140' })).toBeTruthy();
  });
});
