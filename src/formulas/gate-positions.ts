/** Positions of gates that move with the day: compiled, and worked out for the deck's own day. */
import { valuesOfDay, type DaySources, type ValuesOfDay } from '../day/day-of.ts';
import { evaluate } from '../day/evaluate.ts';
import type { ComputedPosition } from '../deck/computed.ts';
import type { Draft } from '../deck/draft.ts';
import type { DeckParts } from '../deck/parts.ts';
import type { AuthoredGate, Position } from '../deck/types.ts';
import { compileFormula } from './compile.ts';
import { hasInputs, sayDay } from './default-day.ts';
import { draftOf, draftOfUnits } from './drafts.ts';
import { areAlike, unitOf } from './formula-units.ts';
import { outermostDays } from './outermost-days.ts';
import { brought } from './same-kind.ts';
import { namesIn, type Scope } from './scope.ts';

const sides = { aheadFt: 'The distance ahead', rightFt: 'The distance to the right' } as const;
type Side = keyof typeof sides;

export function compilePositions(parts: DeckParts, scope: Scope, drafts: Draft[]): ComputedPosition[] {
  return parts.authoredGates.flatMap(({ id: gate, position }) =>
    (Object.keys(sides) as Side[]).flatMap((side): ComputedPosition[] => {
      const text = position[side];
      if (typeof text !== 'string') return [];
      const made = compileFormula(text, namesIn(scope, text));
      const path = parts.pathOf(position, side);
      if (!made.ok) {
        if (!made.follows) drafts.push(draftOf(made, path));
        return [];
      }
      if (!areAlike(made.unit, unitOf('ft'))) {
        drafts.push(draftOfUnits({ label: sides[side], unit: 'ft' }, made, path));
        return [];
      }
      return [{ gate, side, text, expression: brought(made, unitOf('ft')) }];
    }),
  );
}

/** The positions of the default day, whole ones only. */
export function positionsOfDefaultDay(
  computed: readonly ComputedPosition[],
  parts: DeckParts,
  day: ValuesOfDay,
  drafts: Draft[],
): Map<AuthoredGate['position'], Position> {
  const made = new Map<AuthoredGate['position'], Position>();
  for (const { id, position } of parts.authoredGates) {
    const place: Record<Side, number | string> = { aheadFt: position.aheadFt, rightFt: position.rightFt };
    for (const { side, expression } of computed.filter(({ gate }) => gate === id)) {
      const worked = evaluate(expression, day.surroundings);
      if (worked.ok) place[side] = worked.value;
      else if (hasInputs(expression, day))
        drafts.push({
          code: 'formula-no-value',
          message: `A place must have a result on the deck’s own day, this formula has none: ${worked.why}; change it, or the day’s defaults.`,
          path: parts.pathOf(position, side),
        });
    }
    const { aheadFt, rightFt } = place;
    if (typeof aheadFt === 'number' && typeof rightFt === 'number')
      made.set(position, { ...position, aheadFt, rightFt });
  }
  return made;
}

/** Warns once of each place that one of the outermost days leaves without a number. */
export function checkPositions(
  computed: readonly ComputedPosition[],
  parts: DeckParts,
  sources: DaySources,
): Draft[] {
  const days = computed.length > 0 ? outermostDays(parts) : [];
  return computed.flatMap(({ gate: id, side, expression }): Draft[] => {
    const gate = parts.authoredGates.find((one) => one.id === id)!;
    for (const other of days) {
      const worked = evaluate(expression, valuesOfDay(sources, other.changed).surroundings);
      if (worked.ok) continue;
      return [
        {
          code: 'day-without-value',
          severity: 'warning',
          message: `A gate should have a place on every day that can be set, this one has none with ${sayDay(other)}: ${worked.why}; change its formula, or narrow the range of what is set.`,
          path: parts.pathOf(gate.position, side),
        },
      ];
    }
    return [];
  });
}
