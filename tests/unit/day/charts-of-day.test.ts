import { describe, expect, it } from 'vitest';
import { chartsOfDay } from '../../../src/day/charts-of-day.ts';
import { dayOf } from '../../../src/day/day-of.ts';
import type { Expression } from '../../../src/deck/computed.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import type { Deck } from '../../../src/deck/types.ts';
import { fixtureDeckText } from '../deck/fixture.ts';
import { brakeChart, liftChart } from './charts.ts';

const quantity = (id: string): Expression => ({ kind: 'quantity', quantity: id });
const plain = loadDeck(fixtureDeckText).deck!;
const kg = { unit: 'kg', range: [-20_000, 20_000], step: 50 } as const;
/** Lift is the chart itself; the margin takes a load off it. */
const deck: Deck = {
  ...plain,
  quantities: [
    ...plain.quantities,
    { id: 'pressure-altitude', label: 'Pressure altitude', unit: 'ft', range: [-2000, 10_000], step: 100 },
    { id: 'temperature', label: 'Temperature', unit: 'degC', range: [-40, 60], step: 1 },
    { id: 'lift', label: 'Lift', ...kg },
    { id: 'margin', label: 'Margin', ...kg },
  ],
  day: [
    { quantity: 'pressure-altitude', default: 300 },
    { quantity: 'temperature', default: 30 },
  ],
  charts: [liftChart, brakeChart],
  computed: {
    quantities: ['lift', 'margin'].map((id) => {
      const read: Expression = {
        kind: 'chart',
        chart: 'lift',
        of: [quantity('pressure-altitude'), quantity('temperature')],
      };
      const load: Expression = { kind: 'number', value: 8000 };
      return {
        quantity: id,
        text: id,
        expression: id === 'lift' ? read : { kind: 'difference', left: read, right: load },
      };
    }),
    numbers: [],
    positions: [],
  },
};

describe('the charts of a day', () => {
  it('are read by formulas', () => {
    expect(dayOf(deck)).toMatchObject({ lift: 8425, margin: 425 });
  });

  it('stand at the day’s inputs once, with the quantities that come from there', () => {
    expect(chartsOfDay(deck)[0]).toEqual({
      chart: liftChart,
      inputs: [300, 30],
      quantities: ['lift', 'margin'],
      step: 50,
    });
  });

  it('follow a changed day, out of the chart as well', () => {
    expect(chartsOfDay(deck, { temperature: 52 })[0]!.inputs).toEqual([300, 52]);
    expect(dayOf(deck, { temperature: 52 })).not.toHaveProperty('lift');
  });

  it('have no inputs where no formula reads them', () => {
    expect(chartsOfDay(deck)[1]).toEqual({
      chart: brakeChart,
      inputs: null,
      quantities: [],
      step: undefined,
    });
    expect(chartsOfDay(plain)).toMatchObject([{ inputs: null }, { inputs: null }]);
  });
});
