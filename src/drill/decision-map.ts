/** A slice through a phase: two inputs free, the others held, cut into rectangles by what is asked for. */
import { decideIn, inputsOf, rulesOfPhase } from '../rules/decide.ts';
import { edgesOf, stretchesOf } from '../rules/edges.ts';
import { inside } from '../rules/sample.ts';
import type { Decision, Edge, EdgeDistance, Interval, PhaseRules, Procedure, State } from '../rules/types.ts';
import type { DecisionMap, MapCell, MapOutcome } from './types.ts';

/**
 * The map of two different quantities of the phase. Exact: the range of each is cut at every edge of
 * every rule into points and what lies between them, all states of such a rectangle are decided alike,
 * and neighbours that ask for the same are joined. Each state of the slice lies in one cell.
 * @param state the values of the other quantities.
 */
export function decisionMap(
  procedure: Procedure,
  phaseId: string,
  state: State,
  x: string,
  y: string,
): DecisionMap {
  const rules = rulesOfPhase(procedure, phaseId);
  const xRange = rules.box.get(x);
  const yRange = rules.box.get(y);
  if (!xRange || !yRange || x === y) throw new Error(`“${x}” and “${y}” span no map of “${phaseId}”.`);
  const outcomes = new Outcomes();
  const columns = standing(stretchesOf(rules, x)!);
  const rows = standing(stretchesOf(rules, y)!).map(({ stretch, value }) => ({
    y: stretch,
    cells: joined(
      columns.map((column) => ({
        x: column.stretch,
        outcome: outcomes.numberOf(decideIn(rules, { ...state, [x]: column.value, [y]: value })),
      })),
    ),
  }));
  return { x, y, xRange, yRange, cells: stacked(rows), outcomes: outcomes.list() };
}

/** Each stretch with a value to stand for it; those between which the machine has none are left out. */
function standing(stretches: readonly Interval[]): { stretch: Interval; value: number }[] {
  return stretches.flatMap((stretch) => {
    const value = inside(stretch);
    return value === null ? [] : [{ stretch, value }];
  });
}

class Outcomes {
  readonly #known = new Map<string, { outcome: MapOutcome; rules: Set<string>; number: number }>();

  numberOf({ actions, overriding, reasons }: Decision): number {
    const asked = Object.entries(actions).sort(([one], [other]) => (one < other ? -1 : 1));
    const key = JSON.stringify([overriding !== null, asked]);
    let there = this.#known.get(key);
    if (!there) {
      const outcome = { actions, overriding: overriding !== null, rules: [] };
      there = { outcome, rules: new Set(), number: this.#known.size };
      this.#known.set(key, there);
    }
    for (const { table, rule } of reasons) there.rules.add(`${table}/${rule}`);
    return there.number;
  }

  list(): MapOutcome[] {
    return [...this.#known.values()].map(({ outcome, rules }) => ({ ...outcome, rules: [...rules] }));
  }
}

type RowCell = Pick<MapCell, 'x' | 'outcome'>;

const joinedEnds = (low: Interval, high: Interval): Interval => ({
  lo: low.lo,
  loOpen: low.loOpen,
  hi: high.hi,
  hiOpen: high.hiOpen,
});

function joined(cells: readonly RowCell[]): RowCell[] {
  const result: RowCell[] = [];
  for (const cell of cells) {
    const last = result[result.length - 1];
    if (last?.outcome === cell.outcome)
      result[result.length - 1] = { ...last, x: joinedEnds(last.x, cell.x) };
    else result.push(cell);
  }
  return result;
}

/** Joins a cell with the one above it where both have the same ends and the same outcome. */
function stacked(rows: readonly { y: Interval; cells: readonly RowCell[] }[]): MapCell[] {
  const done: MapCell[] = [];
  let open: MapCell[] = [];
  for (const { y, cells } of rows) {
    const next = cells.map((cell): MapCell => {
      const below = open.find((one) => one.outcome === cell.outcome && sameEnds(one.x, cell.x));
      return { ...cell, y: below ? joinedEnds(below.y, y) : y };
    });
    done.push(
      ...open.filter(
        (one) =>
          !next.some(
            (cell) => cell.y.lo === one.y.lo && cell.y.loOpen === one.y.loOpen && sameEnds(cell.x, one.x),
          ),
      ),
    );
    open = next;
  }
  return [...done, ...open];
}

const sameEnds = (one: Interval, other: Interval): boolean =>
  one.lo === other.lo && one.hi === other.hi && one.loOpen === other.loOpen && one.hiOpen === other.hiOpen;

/**
 * The two inputs that matter most in a state: those whose nearest edge is nearest, measured in the spans
 * they have in the phase; then those that some rule of the phase tests. Of a control those at whose edge
 * it is asked for something else, or overridden, then those that its own rules test, come before. The height, where it is one of
 * them, comes second: it is the map's upward axis. Null where the phase shows fewer than two quantities.
 */
export function tellingInputs(
  procedure: Procedure,
  phaseId: string,
  state: State,
  control: string | null = null,
): readonly [x: string, y: string] | null {
  const rules = rulesOfPhase(procedure, phaseId);
  const here = decideIn(rules, state).actions;
  const found = edgesOf(procedure, phaseId, state);
  const changes = (edge: Edge | null): boolean =>
    edge !== null && control !== null && edge.actions[control] !== here[control];
  const own = found.filter(({ below, above }) => changes(below) || changes(above));
  const tested = [...rules.overriding, ...rules.base]
    .filter((table) => table.control === control)
    .flatMap((table) => table.rules.flatMap(({ when }) => [...when.keys()]));
  const [x, y] = new Set([
    ...nearestFirst(rules, own),
    ...inputsOf(rules).filter((id) => tested.includes(id)),
    ...nearestFirst(rules, found),
    ...inputsOf(rules),
    ...rules.box.keys(),
  ]);
  if (x === undefined || y === undefined) return null;
  return x === procedure.deck.reference.height ? [y, x] : [x, y];
}

function nearestFirst(rules: PhaseRules, found: readonly EdgeDistance[]): string[] {
  return found
    .map(({ quantity, below, above }) => {
      const { lo, hi } = rules.box.get(quantity)!;
      const distance = Math.min(below?.distance ?? Infinity, above?.distance ?? Infinity);
      return { quantity, share: hi > lo ? distance / (hi - lo) : Infinity };
    })
    .filter(({ share }) => share < Infinity)
    .sort((one, other) => one.share - other.share)
    .map(({ quantity }) => quantity);
}
