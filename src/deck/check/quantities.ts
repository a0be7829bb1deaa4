/** Quantities and the settings of the day. */
import type { Draft } from '../draft.ts';
import type { DeckParts } from '../parts.ts';
import { quoted, sayFigure, sayInterval } from '../quoting.ts';
import { ifNoRange, ifNotPositive, isOrdered, lies } from './ranges.ts';
import { ifUnknown } from './unknown-name.ts';

export function* checkQuantities(parts: DeckParts): Generator<Draft> {
  for (const quantity of parts.quantities) {
    yield* ifNoRange(quantity.range, parts.pathOf(quantity, 'range'));
    yield* ifNotPositive(
      quantity.step,
      'The step in which a quantity is called',
      parts.pathOf(quantity, 'step'),
    );
  }
  yield* checkDay(parts);
}

function* checkDay(parts: DeckParts): Generator<Draft> {
  const seen = new Set<string>();
  for (const setting of parts.day) {
    const path = parts.pathOf(setting, 'quantity');
    yield* ifUnknown(parts, 'quantity', setting.quantity, path);
    if (seen.has(setting.quantity))
      yield {
        code: 'repeated-entry',
        message: `A quantity is set once for the day, ${quoted(setting.quantity)} is set here again; take one of the two out.`,
        path,
      };
    seen.add(setting.quantity);
    const range = parts.known.quantity.get(setting.quantity)?.range;
    if (range && isOrdered(range) && !lies(setting.default, range))
      yield {
        code: 'value-outside-range',
        message: `A default must lie inside its quantity’s range ${sayInterval(range)}, found ${sayFigure(setting.default)}; move it or widen the range.`,
        path: parts.pathOf(setting, 'default'),
      };
  }
}
