/** Numbers to be worked out: what is asked for can be worked out, from what can be drawn. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import type { WorkedValue } from '../types.ts';
import { ifNoRange, ifNotPositive, isOrdered, liesWithin } from './ranges.ts';
import { ifUnknown, mendOf } from './unknown-name.ts';

export function* checkWorked(parts: DeckParts): Generator<Draft> {
  for (const worked of parts.worked) {
    if (worked.gate !== undefined) yield* ifUnknown(parts, 'gate', worked.gate, parts.pathOf(worked, 'gate'));
    yield* checkQuantity(parts, worked);
    yield* checkDraw(parts, worked);
    yield* checkTolerances(parts, worked);
    if (worked.windowS !== undefined)
      yield* ifNotPositive(worked.windowS, 'The time to work it out in', parts.pathOf(worked, 'windowS'));
  }
}

function* checkQuantity(parts: DeckParts, worked: WorkedValue): Generator<Draft> {
  const path = parts.pathOf(worked, 'quantity');
  const { quantity } = worked;
  if (!parts.known.quantity.has(quantity)) return yield* ifUnknown(parts, 'quantity', quantity, path);
  const { wind } = parts;
  const made = [wind?.along, wind?.across, ...parts.formulas.map((formula) => formula.quantity)];
  if (made.includes(quantity) || !parts.isComplete('formulas') || !parts.isComplete('wind')) return;
  const known = new Set(made.filter((id) => id !== undefined));
  yield {
    code: 'not-worked-out',
    message: `What is to be worked out is a quantity that a formula gives or the wind makes, found ${quoted(quantity)}; ${mendOf(parts, quantity, known, 'add a formula for it')}.`,
    path,
  };
}

function* checkDraw(parts: DeckParts, worked: WorkedValue): Generator<Draft> {
  const set = new Set(parts.day.map(({ quantity }) => quantity));
  const entries = Object.entries(worked.draw);
  if (entries.length === 0 && !parts.isBroken(worked))
    yield {
      code: 'too-few',
      message:
        '“draw” needs at least one setting of the day, it has none; add one with the lowest and highest value to draw.',
      path: parts.pathOf(worked, 'draw'),
    };
  for (const [id, ends] of entries) {
    const path = parts.pathOf(worked, 'draw', id);
    if (parts.isComplete('day') && !set.has(id)) {
      yield {
        code: 'quantity-not-of-day',
        message: `What is drawn anew is a quantity that is set for the day, found ${quoted(id)}; ${mendOf(parts, id, set, 'add it to “day”')}.`,
        path,
        onKey: true,
      };
      continue;
    }
    yield* ifNoRange(ends, path);
    const range = parts.known.quantity.get(id)?.range;
    if (range && isOrdered(range) && isOrdered(ends) && !liesWithin(ends, range))
      yield {
        code: 'value-outside-range',
        message: `Values are drawn from inside their quantity’s range ${sayInterval(range)}, found ${sayInterval(ends)}; narrow one or widen the other.`,
        path,
      };
  }
}

function* checkTolerances(parts: DeckParts, worked: WorkedValue): Generator<Draft> {
  const { desired, adequate } = worked;
  yield* ifNotPositive(desired, 'How far off desired reaches', parts.pathOf(worked, 'desired'));
  yield* ifNotPositive(adequate, 'How far off adequate reaches', parts.pathOf(worked, 'adequate'));
  if (desired > adequate)
    yield {
      code: 'band-not-nested',
      message: `Desired must lie inside adequate, within ${sayFigure(adequate)}, found ${sayFigure(desired)}; narrow desired or widen adequate.`,
      path: parts.pathOf(worked, 'desired'),
    };
}
