/** Where the day stands on the charts of a deck. */
import type { Expression } from '../deck/computed.ts';
import { quantityOf } from '../deck/lookup.ts';
import type { Chart, Deck } from '../deck/types.ts';
import { valuesOfDay } from './day-of.ts';
import { evaluate, partsOf, type Surroundings } from './evaluate.ts';

export interface ChartOfDay {
  readonly chart: Chart;
  /** The inputs in the chart's order and units, inside the chart or not; null where the day has none. */
  readonly inputs: readonly number[] | null;
  /** The quantities of the day that are worked out from it. */
  readonly quantities: readonly string[];
  /** The step of the quantity that is the chart's value itself, when there is one. */
  readonly step: number | undefined;
}

/**
 * Every chart with the places where formulas read it on a day, each place once; a chart that no formula
 * reads stands there without inputs.
 * @param changed quantity -> value in place of the deck's, as for `dayOf`.
 */
export function chartsOfDay(
  deck: Deck,
  changed: Readonly<Record<string, number>> = {},
): readonly ChartOfDay[] {
  const { surroundings } = valuesOfDay(deck, changed);
  const calls = (deck.computed?.quantities ?? []).flatMap(({ quantity, expression }) =>
    callsIn(expression).map((call) => ({ ...call, quantity, isAll: call.at === unscaled(expression) })),
  );
  return (deck.charts ?? []).flatMap((chart): ChartOfDay[] => {
    const places = new Map<string, ChartOfDay>();
    for (const { at, quantity, isAll } of calls) {
      if (at.chart !== chart.id) continue;
      const inputs = inputsOf(at.of, surroundings);
      const key = JSON.stringify(inputs);
      const before = places.get(key);
      const step =
        isAll && quantityOf(deck, quantity).unit === chart.unit ? quantityOf(deck, quantity).step : undefined;
      places.set(key, {
        chart,
        inputs,
        quantities: [...new Set([...(before?.quantities ?? []), quantity])],
        step: before?.step ?? step,
      });
    }
    return places.size > 0
      ? [...places.values()]
      : [{ chart, inputs: null, quantities: [], step: undefined }];
  });
}

type ChartCall = Extract<Expression, { kind: 'chart' }>;

function callsIn(expression: Expression): { readonly at: ChartCall }[] {
  const below = partsOf(expression).flatMap(callsIn);
  return expression.kind === 'chart' ? [{ at: expression }, ...below] : below;
}

const unscaled = (expression: Expression): Expression =>
  expression.kind === 'scaled' ? unscaled(expression.of) : expression;

function inputsOf(parts: readonly Expression[], surroundings: Surroundings): readonly number[] | null {
  const values: number[] = [];
  for (const part of parts) {
    const worked = evaluate(part, surroundings);
    if (!worked.ok) return null;
    values.push(worked.value);
  }
  return values;
}
