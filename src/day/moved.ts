/** What of the day moved a value, in words. */
import type { ComputedNumber } from '../deck/computed.ts';
import { quantityOf } from '../deck/lookup.ts';
import { sayList, sayNumber, sayRange, sayValue } from '../deck/say.ts';
import { spokenName } from './spoken-name.ts';
import type { Band, Deck, Quantity } from '../deck/types.ts';
import { onStep } from './band-of-day.ts';
import { quantitiesIn } from './evaluate.ts';
import type { State } from './types.ts';

/** "8 kt more wind over deck: 52 instead of 60 kt" */
export function becauseOf(
  deck: Deck,
  numbers: readonly ComputedNumber[],
  quantity: Quantity,
  bands: { readonly before: Band; readonly after: Band },
  days: { readonly before: State; readonly after: State },
): string {
  const named = rootsOf(deck, new Set(numbers.flatMap(({ expression }) => quantitiesIn(expression))));
  const changes = [...named].flatMap((id) =>
    sayChange(quantityOf(deck, id), days.before[id], days.after[id]),
  );
  const what = changes.length > 0 ? sayList(changes) : 'the day';
  return `${what}: ${sayMove(bands.before, bands.after, quantity)}`;
}

/** What is set for the day, or felt of its wind, behind quantities that formulas work out of each other. */
function rootsOf({ computed }: Deck, named: ReadonlySet<string>): ReadonlySet<string> {
  const formulas = new Map(computed?.quantities.map((made) => [made.quantity, made.expression] as const));
  const roots = new Set<string>();
  const seen = new Set<string>();
  const look = (id: string): void => {
    if (seen.has(id)) return;
    seen.add(id);
    const expression = formulas.get(id);
    if (expression) quantitiesIn(expression).forEach(look);
    else roots.add(id);
  };
  named.forEach(look);
  return roots;
}

/** "8 kt more wind over deck"; nothing when it is the same, to a step. */
function sayChange(quantity: Quantity, before: number | undefined, after: number | undefined): string[] {
  const name = spokenName(quantity);
  if (before === undefined || after === undefined)
    return before === after ? [] : [`${name} ${after === undefined ? 'without a value' : 'with a value'}`];
  const change = after - before;
  if (Math.abs(change) < 1e-9 * Math.max(1, Math.abs(before))) return [];
  const size = onStep(Math.abs(change), quantity.step) || Math.abs(change);
  return [`${sayValue(Number(size.toPrecision(3)), quantity)} ${change > 0 ? 'more' : 'less'} ${name}`];
}

/** "52 instead of 60 kt": by the target, else by the first part that differs. */
function sayMove(before: Band, after: Band, quantity: Quantity): string {
  const number = (now: number, then: number): string =>
    `${sayNumber(now, quantity.step)} instead of ${sayValue(then, quantity)}`;
  if (before.target !== after.target) return number(after.target, before.target);
  for (const key of ['desired', 'adequate'] as const)
    if (before[key].join() !== after[key].join())
      return `${key} ${sayRange(after[key], quantity)} instead of ${sayRange(before[key], quantity)}`;
  for (const key of ['floor', 'ceiling'] as const)
    if (before[key] !== after[key]) return `${key} ${number(after[key] ?? 0, before[key] ?? 0)}`;
  return number(after.target, before.target);
}
