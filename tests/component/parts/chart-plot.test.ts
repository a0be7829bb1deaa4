import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import ChartPlot from '../../../src/app/parts/ChartPlot.svelte';
import { brakeChart, liftChart } from '../../unit/day/charts.ts';

const picture = (): HTMLElement => screen.getByRole('img', { name: /^Chart: / });
const describedBy = (): string =>
  document.getElementById(picture().getAttribute('aria-describedby')!)!.textContent;

describe('the plot of a chart', () => {
  it('is a picture with a name and a description that holds the day’s value', () => {
    render(ChartPlot, { chart: liftChart, at: [300, 30] });
    expect(picture().querySelector('title')!.textContent).toBe(
      'Chart: Vertical lift by pressure altitude and temperature',
    );
    expect(describedBy()).toContain('temperature 30\u00a0°C: 8,425\u00a0kg.');
    expect(describedBy()).toContain('From 7,300 to 9,000\u00a0kg');
  });

  it('leads the day’s point to both axes by dashes, with its value beside it', () => {
    render(ChartPlot, { chart: liftChart, at: [300, 30], widthPx: 358 });
    const lead = picture().querySelector('[data-part="lead"]')!.getAttribute('d')!;
    expect(lead).toMatch(/^M[\d.]+ [\d.]+V[\d.]+H[\d.]+$/);
    expect(within(picture()).getByText('8,425 kg')).toBeTruthy();
  });

  it('says in words why there is no value, and draws no point', () => {
    render(ChartPlot, { chart: liftChart, at: [300, 52] });
    expect(screen.getByText('No value today: temperature 52 °C; the chart ends at 45 °C.')).toBeTruthy();
    expect(picture().querySelector('[data-part="lead"], circle')).toBeNull();
  });

  it('is drawn without a day as well', () => {
    render(ChartPlot, { chart: brakeChart });
    expect(picture().querySelectorAll('path.line')).toHaveLength(1);
    expect(describedBy()).toContain('it rises with speed');
  });

  it('names its axes with their units, and what tells its lines apart', () => {
    render(ChartPlot, { chart: liftChart });
    for (const name of ['↑ Vertical lift, kg', 'Lines: temperature, °C', 'Pressure altitude, ft →'])
      expect(screen.getByText(name)).toBeTruthy();
  });

  it('gives its numbers as a table, with the break points as headings', async () => {
    render(ChartPlot, { chart: liftChart });
    await userEvent.click(screen.getByText('The chart as a table'));
    const table = screen.getByRole('table');
    expect(within(table).getAllByRole('row')).toHaveLength(5);
    const row = within(table).getByRole('rowheader', { name: '1,000' }).closest('tr')!;
    expect(
      within(row)
        .getAllByRole('cell')
        .map(({ textContent }) => textContent),
    ).toEqual(['8,900', '8,600', '7,900']);
    expect(within(table).getByRole('columnheader', { name: '45' })).toBeTruthy();
  });
});
