/** Units as a pilot may type them after a number, and what each measures. */
import { unitIds, units, type Unit, type UnitId } from '../deck/units.ts';

/** What a number in the unit is, as in "140 kt is a speed". */
const measures: Readonly<Record<UnitId, string>> = {
  kt: 'a speed',
  ft: 'a height or distance',
  m: 'a height or distance',
  nm: 'a distance',
  'ft/min': 'a rate of climb or descent',
  deg: 'an angle',
  aoa: 'an angle of attack',
  lb: 'a weight',
  kg: 'a weight',
  l: 'a volume',
  hPa: 'a pressure',
  inHg: 'a pressure',
  degC: 'a temperature',
  s: 'a time',
  g: 'a load factor',
  percent: 'a share',
  rpm: 'a speed of rotation',
  count: 'a count',
};

/** Units that a number may be given in without anyone taking one for the other: only the words differ. */
const sameMeasure: readonly (readonly UnitId[])[] = [
  ['ft', 'm', 'nm'],
  ['lb', 'kg'],
  ['hPa', 'inHg'],
];

export const measuredBy = (unit: UnitId): string => measures[unit];

/** True for feet and metres: the wrong unit for the right thing. */
export function areSameMeasure(one: UnitId, other: UnitId): boolean {
  return sameMeasure.some((group) => group.includes(one) && group.includes(other));
}

/** The marks and words for a unit, in lower case. A bare degree sign will do for a temperature. */
export function spellingsOf(id: UnitId): readonly string[] {
  const { symbol, spoken, typed }: Unit = units[id];
  const also = id === 'degC' ? ['°'] : [];
  return [symbol, spoken, id, ...typed, ...also]
    .filter((text) => text !== '')
    .map((text) => text.toLowerCase());
}

/** The unit that a text names, other than `except`; null when no unit is spelt so. */
export function unitSpelt(text: string, except: UnitId): UnitId | null {
  return unitIds.find((id) => id !== except && spellingsOf(id).includes(text)) ?? null;
}
