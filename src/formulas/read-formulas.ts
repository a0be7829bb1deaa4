/** All formulas of a deck: compiled, put in order, and worked out for its default day. */
import { valuesOfDay, type DaySources } from '../day/day-of.ts';
import type { Computed } from '../deck/computed.ts';
import type { Draft } from '../deck/draft.ts';
import type { FormulaReader } from '../deck/formula-reader.ts';
import type { Chart } from '../deck/types.ts';
import { compileNumbers } from './band-numbers.ts';
import { checkPositions, compilePositions, positionsOfDefaultDay } from './gate-positions.ts';
import { compileQuantities } from './day-quantities.ts';
import { bandsOfDefaultDay, checkOtherDays, checkQuantities, formulaBands } from './default-day.ts';
import { scopeOf } from './scope.ts';

export const readFormulas: FormulaReader = (parts) => {
  const drafts: Draft[] = [];
  const scope = scopeOf(parts);
  const quantities = compileQuantities(parts, scope, drafts);
  const numbers = compileNumbers(parts, scope, drafts);
  const computed: Computed = {
    quantities: quantities.map(({ quantity, text, expression }) => ({ quantity, text, expression })),
    numbers,
    positions: compilePositions(parts, scope, drafts),
  };
  // What is broken is told of by itself; what would come of it is nobody's fault.
  const canWorkOut = parts.whole && parts.charts.every(isComplete);
  if (!canWorkOut) return { drafts, computed, bands: new Map(), positions: new Map() };

  const sources: DaySources = {
    day: parts.day,
    wind: parts.wind ?? undefined,
    quantities: parts.quantities,
    charts: parts.charts,
    computed,
  };
  const day = valuesOfDay(sources);
  drafts.push(...checkQuantities(quantities, parts, day));
  const withFormulas = formulaBands(parts, numbers);
  const bands = bandsOfDefaultDay(withFormulas, parts, day, drafts);
  const positions = positionsOfDefaultDay(computed.positions, parts, day, drafts);
  if (drafts.length === 0)
    drafts.push(
      ...checkOtherDays(withFormulas, bands, parts, sources),
      ...checkPositions(computed.positions, parts, sources),
    );
  return { drafts, computed, bands, positions };
};

/** Has a number for every place that can be asked for. */
function isComplete({ inputs, values, rows }: Chart): boolean {
  const [first, second] = inputs;
  if (!second) return values?.length === first!.at.length;
  return rows?.length === first!.at.length && rows.every((row) => row.length === second.at.length);
}
