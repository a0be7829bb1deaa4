/** Published values beside what the program's own formulas give for them. */
import { decimalsOf } from '../../../deck/say.ts';
import type { PublishedValue } from '../../../reference/types.ts';

export type Verdict = 'agrees' | 'differs' | 'as it stands';

export interface CheckedValue extends PublishedValue {
  /** In the row's unit; null where there is nothing to work out. */
  readonly computed: number | null;
  readonly verdict: Verdict;
  /** By which formula, as it would be written down; null as above. */
  readonly formula: string | null;
}

export interface Topic {
  readonly topic: string;
  readonly values: readonly CheckedValue[];
}

/** So much is lost in floating point on the way: an exact 480 may come out as 480.0000000001. */
const slack = 1e-9;

/** What the program works out for a row, and by which formula; null where it works out nothing. */
export interface Arithmetic {
  readonly computedFor: (id: string) => number | null;
  readonly formulaOf: (id: string) => string | null;
}

export function checkValues(
  values: readonly PublishedValue[],
  { computedFor, formulaOf }: Arithmetic,
): readonly CheckedValue[] {
  return values.map((row) => {
    const computed = computedFor(row.id);
    if (computed === null) return { ...row, computed, formula: null, verdict: 'as it stands' };
    const within = Math.abs(computed - row.value) <= row.tolerance + slack * Math.max(1, Math.abs(row.value));
    return { ...row, computed, formula: formulaOf(row.id), verdict: within ? 'agrees' : 'differs' };
  });
}

/** By topic, both in the order in which they are first met. */
export function topicsOf(values: readonly CheckedValue[]): readonly Topic[] {
  const topics = new Map<string, CheckedValue[]>();
  for (const value of values) {
    const list = topics.get(value.topic);
    if (list) list.push(value);
    else topics.set(value.topic, [value]);
  }
  return [...topics].map(([topic, list]) => ({ topic, values: list }));
}

const symbols: Readonly<Record<string, string>> = {
  deg: '°',
  degC: ' °C',
  percent: ' %',
  'deg/s': ' °/s',
  '°F': ' °F',
  share: ' of the wind',
};

const withUnit = (said: string, unit: string): string =>
  said + (symbols[unit] ?? ` ${unit === 'mile' && said !== '1' ? 'miles' : unit}`).replace(' ', '\u00a0');

/** "1,000 ft", "5.25 °/s". */
export const sayPublished = ({ value, unit }: PublishedValue): string =>
  withUnit(write(value, mostDecimals), unit);

/** "± 5", "exactly". */
export const sayTolerance = ({ tolerance }: PublishedValue): string =>
  tolerance === 0 ? 'exactly' : `±\u00a0${write(tolerance, mostDecimals)}`;

/** One decimal finer than what it is compared with. */
export const sayComputed = (row: PublishedValue, computed: number): string =>
  withUnit(write(computed, finerThan(row)), row.unit);

/** "agrees", "differs by 3.2 ft"; what can't be worked out is taken as it stands. */
export function sayVerdict(row: CheckedValue): string {
  if (row.computed === null) return 'as it stands';
  if (row.verdict === 'agrees') return 'agrees';
  return `differs by ${withUnit(write(Math.abs(row.computed - row.value), finerThan(row)), row.unit)}`;
}

/** Where a value is from and how far that can be trusted: "FAA …, from memory". */
export function sayStatus({ status, source }: PublishedValue): string {
  const named = source === 'none' ? '' : source;
  if (status === 'printed') return named;
  const how = status === 'common practice' ? 'common practice, no source' : status;
  return named.toLowerCase().includes(status) ? named : [named, how].filter(Boolean).join(', ');
}

const mostDecimals = 6;

const finerThan = ({ value, tolerance }: PublishedValue): number =>
  Math.min(mostDecimals, Math.max(decimalsOf(value), decimalsOf(tolerance)) + 1);

const write = (value: number, decimals: number): string =>
  value.toLocaleString('en-US', { maximumFractionDigits: decimals }).replace(/^-/, '−').replace(/^−0$/, '0');

/** At the head of its rows. */
export const titled = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Id of a topic's element, to jump to. */
export const topicAnchor = (topic: string): string => `topic-${topic.replaceAll(/[^a-z]+/gi, '-')}`;
