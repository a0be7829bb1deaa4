/** The decision map in words: what each region asks for, and what lies along the two lines through a state. */
import { instructionOf } from '../../cards/wording.ts';
import { inSentence, spokenOf } from '../../cards/wording.ts';
import { actionOf, controlOf, neutralOf, phaseOf, quantityOf } from '../../deck/lookup.ts';
import { sayList, sayValue } from '../../deck/say.ts';
import type { Deck, Quantity } from '../../deck/types.ts';
import { units } from '../../deck/units.ts';
import type { DecisionMap, MapCell, MapOutcome } from '../../drill/types.ts';
import { holds } from '../../rules/intervals.ts';
import { sayIntervals } from '../../rules/say-intervals.ts';
import type { Interval, State } from '../../rules/types.ts';

export interface MapWords {
  /** For each outcome its phrases: only of controls on which the outcomes differ. */
  readonly outcomes: readonly (readonly string[])[];
  /** Asked for all over the map, where nothing overrides it; empty when there is nothing of the kind. */
  readonly everywhere: readonly string[];
  /** Whether an outcome asks for no correction besides what is asked for everywhere. */
  readonly isQuiet: readonly boolean[];
}

export function mapWords(deck: Deck, phase: string, { outcomes }: DecisionMap): MapWords {
  const controls = phaseOf(deck, phase).controls;
  const plain = outcomes.filter(({ overriding }) => !overriding);
  const varies = (control: string): boolean => new Set(plain.map(({ actions }) => actions[control])).size > 1;
  const differing = controls.filter(varies);
  const say = (control: string, action: string): string =>
    instructionOf(actionOf(controlOf(deck, control), action));
  const isNeutral = (control: string, action: string | undefined): boolean =>
    action === neutralOf(controlOf(deck, control)).id;
  const isQuiet = ({ overriding, actions }: MapOutcome): boolean =>
    !overriding && differing.every((control) => isNeutral(control, actions[control]));

  const phrasesOf = (outcome: MapOutcome): string[] => {
    const { actions, overriding } = outcome;
    if (overriding) return Object.entries(actions).map(([control, action]) => say(control, action));
    const [only] = differing;
    if (isQuiet(outcome)) return [differing.length === 1 && only ? say(only, actions[only]!) : 'hold'];
    return differing.flatMap((control) => {
      const action = actions[control];
      if (action === undefined) return [`no answer on ${inSentence(controlOf(deck, control).label)}`];
      return isNeutral(control, action) ? [] : [say(control, action)];
    });
  };

  return {
    outcomes: outcomes.map(phrasesOf),
    everywhere: controls.flatMap((control) => {
      const action = plain[0]?.actions[control];
      return varies(control) || action === undefined || isNeutral(control, action)
        ? []
        : [say(control, action)];
    }),
    isQuiet: outcomes.map(isQuiet),
  };
}

/** The outcome that holds at a place of the map; -1 outside of it. */
export function outcomeAt({ cells }: DecisionMap, x: number, y: number): number {
  return cells.find((cell) => holds(cell.x, x) && holds(cell.y, y))?.outcome ?? -1;
}

/** What holds along a line through the map, as stretches from low to high: neighbours that ask for the same are one. */
function stretches(cells: readonly MapCell[], axis: 'x' | 'y', across: number) {
  const other = axis === 'x' ? 'y' : 'x';
  const met = cells.filter((cell) => holds(cell[other], across));
  met.sort((one, next) => one[axis].lo - next[axis].lo || one[axis].hi - next[axis].hi);
  const joined: { interval: Interval; outcome: number }[] = [];
  for (const cell of met) {
    const last = joined.at(-1);
    if (last?.outcome === cell.outcome) {
      const { hi, hiOpen } = cell[axis];
      joined[joined.length - 1] = { ...last, interval: { ...last.interval, hi, hiOpen } };
    } else joined.push({ interval: cell[axis], outcome: cell.outcome });
  }
  return joined;
}

/**
 * The map as sentences, exact: what the state asks for, and what would be asked for with more or less of
 * each of the two inputs. "At altitude 180 ft, closure: under 12 kt nose down; 12 kt or more hold the nose."
 */
export function sayMap(deck: Deck, map: DecisionMap, words: MapWords, state: State): readonly string[] {
  const said = (outcome: number): string => sayList(words.outcomes[outcome] ?? ['no answer']);
  const at = (id: string): string => {
    const quantity = quantityOf(deck, id);
    return `${spokenOf(quantity)} ${sayValue(state[id]!, quantity)}`;
  };
  const walk = (axis: 'x' | 'y'): string => {
    const [id, other] = axis === 'x' ? [map.x, map.y] : [map.y, map.x];
    const quantity = quantityOf(deck, id);
    const range = axis === 'x' ? map.xRange : map.yRange;
    const parts = stretches(map.cells, axis, state[other]!).map(
      ({ interval, outcome }) => `${sayIntervals([interval], quantity, range)} ${said(outcome)}`,
    );
    return `At ${at(other)}, ${spokenOf(quantity)}: ${parts.join('; ')}.`;
  };
  const here = outcomeAt(map, state[map.x]!, state[map.y]!);
  return [
    `You were at ${at(map.x)} and ${at(map.y)}: ${said(here)}.`,
    walk('x'),
    walk('y'),
    ...(words.everywhere.length > 0
      ? [`Asked for all over this map, short of what overrides it: ${sayList(words.everywhere)}.`]
      : []),
  ];
}

/** An axis with its unit: "Altitude, ft". */
export function axisName({ label, unit }: Quantity): string {
  const { symbol } = units[unit];
  if (symbol === '') return label;
  return `${label}, ${symbol === '°' ? 'degrees' : symbol}`;
}
