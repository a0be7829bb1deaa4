/** The least deck with a leg: two gates, a speed, a height, a wind. */
import type { Deck, Flying } from '../../../src/deck/types.ts';

export interface GateSketch {
  readonly aheadFt: number;
  readonly rightFt: number;
  readonly courseDeg: number;
  readonly airspeed?: number;
  readonly closure?: number;
  readonly height?: number;
  /** Either side of each target. */
  readonly adequate?: number;
}

export interface WindSketch {
  readonly speed: number;
  readonly angle: number;
  readonly ship: number;
}

const band = (target: number, adequate: number) => ({
  target,
  desired: [target, target] as const,
  adequate: [target - adequate, target + adequate] as const,
});

const gate = (id: string, label: string, sketch: GateSketch): Deck['gates'][number] => {
  const { aheadFt, rightFt, courseDeg, adequate = 0, ...values } = sketch;
  return {
    id,
    label,
    cue: 'Here.',
    position: { aheadFt, rightFt, courseDeg },
    values: Object.fromEntries(
      Object.entries(values).map(([quantity, target]) => [quantity, band(target, adequate)]),
    ),
  };
};

const quantity = (id: string, unit: 'kt' | 'ft' | 'deg') =>
  ({ id, label: id, unit, range: [-1e5, 1e5], step: 1 }) as const;

export function twoGates(
  from: GateSketch,
  to: GateSketch,
  flying: Partial<Flying> = {},
  wind: WindSketch = { speed: 0, angle: 0, ship: 0 },
): Deck {
  return {
    format: 'gatecall-deck/1',
    id: 'two-gates',
    title: 'Two gates',
    version: '1.0.0',
    language: 'en',
    cautions: ['Not for flight.'],
    reference: { label: 'Spot', height: 'height' },
    defaultSource: 'notes',
    sources: [{ id: 'notes', title: 'Notes', kind: 'invented' }],
    quantities: [
      ...['airspeed', 'closure', 'wind-speed', 'ship-speed', 'over-deck'].map((id) => quantity(id, 'kt')),
      quantity('height', 'ft'),
      quantity('wind-angle', 'deg'),
    ],
    day: [
      { quantity: 'wind-speed', default: wind.speed },
      { quantity: 'wind-angle', default: wind.angle },
      { quantity: 'ship-speed', default: wind.ship },
    ],
    wind: { speed: 'wind-speed', angle: 'wind-angle', ship: 'ship-speed', along: 'over-deck' },
    flying: { airspeed: 'airspeed', closure: 'closure', most: {}, ...flying },
    gates: [gate('one', 'One', from), gate('other', 'Other', to)],
  };
}
