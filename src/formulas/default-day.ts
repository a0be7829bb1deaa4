/** What the formulas come to on the deck's default day, and whether they still do on others. */
import { bandWith, whyNoBand } from '../day/band-of-day.ts';
import { valuesOfDay, type DaySources, type ValuesOfDay } from '../day/day-of.ts';
import { grouped } from '../day/deck-of-day.ts';
import { evaluate, quantitiesIn } from '../day/evaluate.ts';
import { spokenName } from '../day/spoken-name.ts';
import type { ComputedNumber, Expression } from '../deck/computed.ts';
import type { Draft } from '../deck/draft.ts';
import type { DeckParts } from '../deck/parts.ts';
import { sayList, sayValue } from '../deck/say.ts';
import type { AuthoredBand, Band, Quantity } from '../deck/types.ts';
import type { CompiledQuantity } from './day-quantities.ts';
import { outermostDays, type OtherDay } from './outermost-days.ts';

/** A band as written, with the formulas in it. */
interface FormulaBand {
  readonly band: AuthoredBand;
  readonly quantity: Quantity;
  readonly numbers: readonly ComputedNumber[];
}

/** Every result that the default day lacks, told of where it goes wrong and not again behind that. */
export function checkQuantities(
  quantities: readonly CompiledQuantity[],
  parts: DeckParts,
  day: ValuesOfDay,
): Draft[] {
  const why = new Map(day.missing.map(({ quantity, why }) => [quantity, why] as const));
  return quantities.flatMap(({ quantity, expression, formula }): Draft[] => {
    const reason = why.get(quantity);
    if (reason === undefined || !hasInputs(expression, day)) return [];
    const outside = evaluate(expression, day.surroundings).ok;
    return [
      {
        code: outside ? 'formula-outside-range' : 'formula-no-value',
        message: outside
          ? `A result must lie inside its quantity’s range on the deck’s own day, ${reason}; change the formula or widen the range.`
          : `A formula must have a result on the deck’s own day, this one has none: ${reason}; change it, or the day’s defaults.`,
        path: parts.pathOf(formula, 'expression'),
      },
    ];
  });
}

/** What lacks an input is told of where that input goes wrong. */
export const hasInputs = (expression: Expression, day: ValuesOfDay): boolean =>
  quantitiesIn(expression).every((id) => day.values[id] !== undefined);

/** Bands with formulas in them whose quantity is sound; without those that lack one of their formulas. */
export function formulaBands(parts: DeckParts, computed: readonly ComputedNumber[]): FormulaBand[] {
  const byGate = grouped(computed, 'gate');
  return parts.authoredGates.flatMap((gate) => {
    const byQuantity = grouped(byGate.get(gate.id) ?? [], 'quantity');
    return [...byQuantity].map(([id, numbers]) => ({
      band: gate.values[id]!,
      quantity: parts.known.quantity.get(id)!,
      numbers,
    }));
  });
}

/** The bands of the default day, and what keeps the others from being one. */
export function bandsOfDefaultDay(
  bands: readonly FormulaBand[],
  parts: DeckParts,
  day: ValuesOfDay,
  drafts: Draft[],
): Map<AuthoredBand, Band> {
  const made = new Map<AuthoredBand, Band>();
  for (const { band, quantity, numbers } of bands) {
    const faults = numbers.flatMap(({ expression, number }): Draft[] => {
      const worked = evaluate(expression, day.surroundings);
      if (worked.ok || !hasInputs(expression, day)) return [];
      return [
        {
          code: 'formula-no-value',
          message: `A number of a band must have a result on the deck’s own day, this formula has none: ${worked.why}; change it, or the day’s defaults.`,
          path: parts.pathOf(band, ...number),
        },
      ];
    });
    drafts.push(...faults.slice(0, 1));
    const result = bandWith(band as Band, numbers, quantity, day.surroundings);
    if (result.ok) made.set(band, result.band);
  }
  return made;
}

/** Warns once of each band of the default day that one of the outermost days leaves without numbers. */
export function checkOtherDays(
  bands: readonly FormulaBand[],
  made: ReadonlyMap<AuthoredBand, Band>,
  parts: DeckParts,
  sources: DaySources,
): Draft[] {
  const drafts: Draft[] = [];
  const left = new Set(
    bands.filter(({ band, quantity }) => {
      const usual = made.get(band);
      return usual !== undefined && whyNoBand(usual, quantity) === null;
    }),
  );
  for (const other of outermostDays(parts)) {
    const day = valuesOfDay(sources, other.changed);
    for (const one of left) {
      const result = bandWith(one.band as Band, one.numbers, one.quantity, day.surroundings);
      const why = result.ok ? whyNoBand(result.band, one.quantity) : result.why;
      if (why === null) continue;
      left.delete(one);
      drafts.push({
        code: 'day-without-value',
        severity: 'warning',
        message: `A band should hold on every day that can be set, this one has no value with ${sayDay(other)}: ${why}; change its formulas, or narrow the range of what is set.`,
        path: parts.pathOf(one.band),
      });
    }
  }
  return drafts;
}

export const sayDay = ({ quantities, changed }: OtherDay): string =>
  sayList(
    quantities.map((quantity) => `${spokenName(quantity)} ${sayValue(changed[quantity.id]!, quantity)}`),
  );
