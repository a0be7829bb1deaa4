/** A path in the document in words: `gate “Alongside”, altitude, desired`. */
import type { DocumentPath } from './findings.ts';
import { isMapping, valueAt, type Plain } from './plain-data.ts';
import { quoted, uncapitalised } from './quoting.ts';

/** One element of a list, by the name of the list. */
const elements: Readonly<Record<string, string>> = {
  sources: 'source',
  quantities: 'quantity',
  words: 'words',
  day: 'day setting',
  formulas: 'formula',
  charts: 'chart',
  rows: 'row',
  gates: 'gate',
  legs: 'leg',
  checklists: 'checklist',
  items: 'item',
  controls: 'control',
  actions: 'action',
  phases: 'phase',
  through: 'gate on the way',
  tables: 'table',
  rules: 'rule',
  plates: 'plate',
  shapes: 'shape',
  points: 'point',
  spots: 'spot',
  notes: 'note',
  worked: 'worked value',
  cautions: 'caution',
  inputs: 'input',
  priority: 'priority',
  accept: 'accepted answer',
  choices: 'choice',
};

/** Keys whose own spelling is no word. */
const keys: Readonly<Record<string, string>> = {
  defaultSource: 'default source',
  completeBy: 'complete by',
  windowS: 'window (s)',
  lagS: 'lag (s)',
  holdS: 'hold (s)',
  longestS: 'longest (s)',
  overS: 'over (s)',
  decideEveryS: 'decide every (s)',
  bankDeg: 'bank (deg)',
  loadFactor: 'load factor (g)',
  sinkFtMin: 'sink (ft/min)',
  climbFtMin: 'climb (ft/min)',
  decelerationKtS: 'deceleration (kt/s)',
  accelerationKtS: 'acceleration (kt/s)',
  aheadFt: 'ahead (ft)',
  rightFt: 'right (ft)',
  courseDeg: 'course (deg)',
  relativeDeg: 'relative bearing (deg)',
  desiredWithin: 'desired within',
  adequateWithin: 'adequate within',
};

/** Mappings whose keys are ids of quantities. */
const byQuantity: ReadonlySet<string> = new Set([
  'values',
  'state',
  'effects',
  'rates',
  'factors',
  'limits',
  'when',
  'entry',
  'start',
  'gusts',
  'draw',
]);
/** Of these the name is left out: the quantity says enough. */
const silent: ReadonlySet<string> = new Set(['values']);
const intervals: ReadonlySet<string> = new Set(['range', 'desired', 'adequate', 'state']);

export function wordsForPath(data: Plain | undefined, path: DocumentPath): string {
  const words: string[] = [];
  for (const [depth, step] of path.entries()) {
    const parent = path[depth - 1];
    if (typeof step === 'number') {
      if (depth > 0 && path.length > depth && typeof parent === 'string')
        pushElement(words, data, path, depth);
      else words.push(`number ${step + 1}`);
    } else if (typeof parent === 'string' && byQuantity.has(parent)) words.push(nameOfQuantity(data, step));
    else if (depth < path.length - 1 && (silent.has(step) || isListAhead(path, depth))) continue;
    else
      words.push(
        Object.hasOwn(keys, step) ? keys[step]! : step === '' ? 'a key without a name' : short(step),
      );
  }
  return words.length > 0 ? words.join(', ') : 'the deck';
}

/** True when the next step names an element of this list: "gate 3" says that it is one of the gates. */
const isListAhead = (path: DocumentPath, depth: number): boolean =>
  typeof path[depth + 1] === 'number' && Object.hasOwn(elements, String(path[depth]));

function pushElement(words: string[], data: Plain | undefined, path: DocumentPath, depth: number): void {
  const index = path[depth] as number;
  const list = String(path[depth - 1]);
  const grandparent = path[depth - 2];
  const isEnd = intervals.has(list) || (typeof grandparent === 'string' && intervals.has(grandparent));
  if (isEnd && index < 2) return void words.push(index === 0 ? 'lower end' : 'upper end');
  if (!Object.hasOwn(elements, list)) return void words.push(`number ${index + 1}`);
  const name = elements[list]!;
  const label = labelOf(valueAt(data, path.slice(0, depth + 1)));
  words.push(label ? `${name} ${quoted(label)}` : `${name} ${index + 1}`);
}

function labelOf(element: Plain | undefined): string | null {
  if (!isMapping(element)) return null;
  const named = ['label', 'challenge', 'title', 'id', 'quantity', 'from']
    .filter((key) => Object.hasOwn(element, key))
    .map((key) => element[key]);
  return named.find((name): name is string => typeof name === 'string' && name.trim() !== '') ?? null;
}

function nameOfQuantity(data: Plain | undefined, id: string): string {
  const quantities = valueAt(data, ['quantities']);
  if (!Array.isArray(quantities)) return short(id);
  const quantity = (quantities as readonly Plain[]).find((one) => isMapping(one) && one['id'] === id);
  const spoken = valueAt(quantity, ['spoken']);
  const label = valueAt(quantity, ['label']);
  if (typeof spoken === 'string' && spoken !== '') return short(spoken);
  return typeof label === 'string' && label !== '' ? short(uncapitalised(label)) : short(id);
}

const short = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);
