/** What the names in a deck's formulas stand for. */
import { quantitiesOfDay } from '../deck/check/quantities-of-day.ts';
import type { DeckParts } from '../deck/parts.ts';
import { quoted } from '../deck/quoting.ts';
import type { Quantity } from '../deck/types.ts';
import type { Typed } from './compile.ts';
import { unitOf } from './formula-units.ts';
import { constantNames, nameOf, type NamedChart, type Names } from './names.ts';

export interface Scope {
  readonly quantityNamed: (name: string) => Quantity | undefined;
  readonly isOfDay: (id: string) => boolean;
  readonly chartNamed: (name: string) => NamedChart | null;
  /** Names of the day's quantities and of charts, for suggestions. */
  readonly known: ReadonlySet<string>;
}

export function scopeOf(parts: DeckParts): Scope {
  const byName = new Map(parts.quantities.map((quantity) => [nameOf(quantity.id), quantity] as const));
  const ofDay = new Set(quantitiesOfDay(parts));
  const charts = new Map(
    parts.charts.map(({ id, unit, inputs }): [string, NamedChart] => [
      nameOf(id),
      {
        id,
        unit: unitOf(unit),
        inputs: inputs.map((input) => ({ label: input.label, unit: unitOf(input.unit) })),
      },
    ]),
  );
  // A broken list may have held what is missing in it.
  const isComplete = ['day', 'formulas', 'wind'].every(parts.isComplete);
  return {
    quantityNamed: (name) => byName.get(name),
    isOfDay: (id) => !isComplete || ofDay.has(id),
    chartNamed: (name) => charts.get(name) ?? null,
    known: new Set([...[...ofDay].map(nameOf), ...charts.keys(), ...constantNames]),
  };
}

/**
 * The names that a formula can use.
 * @param beside what a quantity that isn't of the day stands for at the gate of a band.
 */
export function namesIn(
  scope: Scope,
  text: string,
  beside: (quantity: Quantity) => Typed | null = () => null,
): Names {
  return {
    text,
    known: scope.known,
    has: (name) => scope.quantityNamed(name) !== undefined,
    chart: scope.chartNamed,
    quantity: (name) => {
      const quantity = scope.quantityNamed(name);
      if (!quantity) return null;
      if (scope.isOfDay(quantity.id))
        return {
          expression: { kind: 'quantity', quantity: quantity.id },
          unit: unitOf(quantity.unit),
        };
      return (
        beside(quantity) ?? {
          code: 'quantity-not-of-day',
          why: `A formula is made from quantities that have one value for the day, found ${quoted(quantity.id)}`,
          mend: 'add it to “day”, give it a formula of its own, or write the number',
        }
      );
    },
  };
}
