/** The units a quantity may be written in, with the words and marks used on screen. */

export interface Unit {
  /** As printed beside a number. */
  readonly symbol: string;
  /** As read aloud by a screen reader. */
  readonly spoken: string;
  /** Other spellings a pilot may type after a number. */
  readonly typed: readonly string[];
}

export const units = {
  kt: { symbol: 'kt', spoken: 'knots', typed: ['kts', 'knot', 'knots'] },
  ft: { symbol: 'ft', spoken: 'feet', typed: ['feet', 'foot', "'"] },
  m: { symbol: 'm', spoken: 'metres', typed: ['metre', 'metres', 'meter', 'meters'] },
  nm: { symbol: 'nm', spoken: 'nautical miles', typed: ['nmi', 'miles'] },
  'ft/min': { symbol: 'ft/min', spoken: 'feet per minute', typed: ['fpm', 'ft/m'] },
  deg: { symbol: '°', spoken: 'degrees', typed: ['deg', 'degree', 'degrees'] },
  aoa: { symbol: 'units', spoken: 'units of angle of attack', typed: ['unit', 'units', 'u'] },
  lb: { symbol: 'lb', spoken: 'pounds', typed: ['lbs', 'pound', 'pounds'] },
  kg: { symbol: 'kg', spoken: 'kilograms', typed: ['kgs', 'kilo', 'kilos'] },
  l: { symbol: 'l', spoken: 'litres', typed: ['litre', 'litres', 'liter', 'liters'] },
  hPa: { symbol: 'hPa', spoken: 'hectopascals', typed: ['hpa', 'mb', 'mbar'] },
  inHg: { symbol: 'inHg', spoken: 'inches of mercury', typed: ['in', 'inch', 'inches'] },
  degC: { symbol: '°C', spoken: 'degrees Celsius', typed: ['c', 'degc'] },
  s: { symbol: 's', spoken: 'seconds', typed: ['sec', 'secs', 'second', 'seconds'] },
  g: { symbol: 'g', spoken: 'g', typed: [] },
  percent: { symbol: '%', spoken: 'per cent', typed: ['pct', 'percent'] },
  rpm: { symbol: 'rpm', spoken: 'revolutions per minute', typed: [] },
  count: { symbol: '', spoken: '', typed: [] },
} as const satisfies Record<string, Unit>;

export type UnitId = keyof typeof units;
export const unitIds = Object.keys(units) as [UnitId, ...UnitId[]];
